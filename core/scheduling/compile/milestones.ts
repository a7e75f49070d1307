import { at, known } from '../../base';
import type { ScheduleProblem } from '../model';

/**
 * Which milestones close their day: those that follow the finish of work, or another milestone that closes its
 * day. All others open theirs. So the acceptance of work that ends on a Friday is dated Friday, and a notice to
 * proceed on Monday lets work begin on Monday.
 * @param isMilestone by position in `problem.activities`.
 */
export function closingMilestones(
  problem: ScheduleProblem,
  position: ReadonlyMap<string, number>,
  isMilestone: readonly boolean[],
): boolean[] {
  const closing = isMilestone.map(() => false);
  const into: number[][] = isMilestone.map(() => []);
  const queue: number[] = [];
  const close = (at: number) => {
    if (isMilestone[at] !== true || closing[at] === true) return;
    closing[at] = true;
    queue.push(at);
  };
  for (const { from, to, kind } of problem.relationships) {
    const [a, b] = [known(position, from), known(position, to)];
    if (isMilestone[a] === true) into[a]?.push(b);
    else if (kind === 'FS' || kind === 'FF') close(b);
  }
  for (let head = 0; head < queue.length; head++) for (const next of at(into, at(queue, head))) close(next);
  return closing;
}
