/** The answer of work done in steps, all of them taken at once. */
export function drained<R>(steps: Generator<unknown, R>): R {
  let step = steps.next();
  while (step.done !== true) step = steps.next();
  return step.value;
}
