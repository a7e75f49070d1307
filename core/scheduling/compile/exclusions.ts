import type { Exclusion, ScheduleProblem } from '../model';

/** Two activities that may not run at the same time, and the exclusion that says so. */
export interface ExcludedPair {
  readonly a: number;
  readonly b: number;
  readonly exclusion: string;
}

/** Every pair of activities that exclusions keep apart, each once. Positions in `problem.activities`. */
export function excludedPairs(
  problem: ScheduleProblem,
  position: ReadonlyMap<string, number>,
): ExcludedPair[] {
  const touches = touchingZones(problem);
  const seen = new Set<string>();
  return (problem.exclusions ?? []).flatMap(exclusion =>
    pairsOf(exclusion, problem, position, touches).filter(({ a, b }) => {
      const key = a < b ? `${a} ${b}` : `${b} ${a}`;
      if (seen.has(key)) return false;
      seen.add(key);
      return true;
    }),
  );
}

function pairsOf(
  exclusion: Exclusion,
  problem: ScheduleProblem,
  position: ReadonlyMap<string, number>,
  touches: (a: string, b: string) => boolean,
): ExcludedPair[] {
  const meets = (a: string | undefined, b: string | undefined) => {
    if (exclusion.reach === 'anywhere') return true;
    if (a === undefined || b === undefined) return false;
    return a === b || (exclusion.reach !== 'zone' && touches(a, b));
  };
  const at = (id: string) => position.get(id) ?? 0;
  return exclusion.first.flatMap(one =>
    exclusion.second.flatMap(other => {
      const [a, b] = [at(one), at(other)];
      const apart = a !== b && meets(problem.activities[a]?.place, problem.activities[b]?.place);
      return apart ? [{ a, b, exclusion: exclusion.id }] : [];
    }),
  );
}

/** Whether two zones share a boundary, named on either side. */
export function touchingZones(problem: ScheduleProblem): (a: string, b: string) => boolean {
  const touching = new Map((problem.zones ?? []).map(zone => [zone.id, new Set(zone.touches ?? [])]));
  return (a, b) => (touching.get(a)?.has(b) ?? false) || (touching.get(b)?.has(a) ?? false);
}
