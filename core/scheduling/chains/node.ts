import { at } from '../../base';
import type { Compiled } from '../compile/compiled';
import type { SearchRelationship } from '../search';
import type { Arc } from './resource-chains';

/** What a pass knows of one activity, in the order it is passed. */
export interface Node {
  readonly activity: number;
  /** Activities it starts after, by finish to start without a lag. */
  readonly after: Int32Array;
  readonly lagged: readonly SearchRelationship[];
  readonly fixedStart: number;
  readonly notBefore: number;
  readonly indexOfDay: Int32Array | undefined;
  readonly dayOfIndex: Int32Array;
  /** Open days on end from each day on, for activities that need them; moments allowed, for milestones. */
  readonly openRun: Int32Array | undefined;
}

/** The node of an activity, with the chains that lead to it. */
export function nodeOf({ search, activities }: Compiled, activity: number, chains: readonly Arc[]): Node {
  const { calendar, fixedStart, notBefore, startAllowed } = at(search.activities, activity);
  const into = search.relationships.filter(r => r.to === activity);
  const isPlain = (r: SearchRelationship) => r.kind === 'FS' && r.minimumLag === 0;
  const table = calendar === undefined ? undefined : search.calendars[calendar];
  const flags = activities[activity]?.isMilestone === true ? startAllowed : activities[activity]?.open.flags;
  return {
    activity,
    after: Int32Array.from([
      ...new Set([
        ...into.filter(isPlain).map(r => r.from),
        ...chains.flatMap(([from, to]) => (to === activity ? [from] : [])),
      ]),
    ]),
    lagged: into.filter(r => !isPlain(r)),
    fixedStart: fixedStart ?? -1,
    notBefore: notBefore ?? 0,
    indexOfDay: table?.indexOfDay,
    dayOfIndex: table?.dayOfIndex ?? new Int32Array(0),
    openRun: startAllowed === undefined || flags === undefined ? undefined : openRuns(flags),
  };
}

/** Open days on end from each day on. */
export function openRuns(flags: Uint8Array): Int32Array {
  const runs = new Int32Array(flags.length);
  for (let day = flags.length - 1, run = 0; day >= 0; day--) {
    run = flags[day] === 1 ? run + 1 : 0;
    runs[day] = run;
  }
  return runs;
}
