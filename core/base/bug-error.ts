/**
 * A fault of this program, never of the user's data. It is thrown, caught at one boundary (the worker or
 * the command line), and nothing of the user's work is lost. Faults of the data are findings instead.
 */
export class BugError extends Error {
  override readonly name = 'BugError';
}

/** Throws a {@link BugError} unless the condition holds. For what only our own mistake can break. */
export function assertNever(condition: boolean, message: string): asserts condition {
  if (!condition) throw new BugError(message);
}
