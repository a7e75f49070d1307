import type { LastingOrders } from './ordered';
import type { SearchExclusion } from './problem';

/** A resource that stands for a part of an exclusion: whoever is at the centre holds all its units, the others one. */
export interface ExclusionUnits {
  /** Enough for as many of the others as can ever run at once. */
  readonly units: number;
  readonly centre: readonly number[];
  readonly around: readonly number[];
}

/**
 * Exclusions as resources. Activities that any two of an exclusion's lists share exclude each other and all others.
 * Of the rest, those on the shorter side are put into rows of which no two ever run at once: a row is one centre.
 */
export function exclusionUnits(exclusion: SearchExclusion, orders: LastingOrders): ExclusionUnits[] {
  const second = new Set(exclusion.second);
  const both = new Set(exclusion.first.filter(i => second.has(i)));
  const onlyFirst = exclusion.first.filter(i => !both.has(i));
  const onlySecond = exclusion.second.filter(i => !both.has(i));
  const isFirstShort = onlyFirst.length <= onlySecond.length;
  const [short, long] = isFirstShort ? [onlyFirst, onlySecond] : [onlySecond, onlyFirst];
  const atOnce = (activities: readonly number[]) => Math.max(1, rowsOf(activities, orders).length);
  const around = [...short, ...long];
  const shared = both.size === 0 ? [] : [{ units: atOnce(around), centre: [...both], around }];
  const units = atOnce(long);
  const rows = rowsOf(short, orders).map(centre => {
    const meeting = long.filter(i => centre.some(c => !orders.isApart(c, i)));
    return { units: Math.min(units, meeting.length), centre, around: meeting };
  });
  return [...shared, ...rows.filter(({ around }) => around.length > 0)];
}

/** Rows of activities of which no two ever run at once. */
function rowsOf(activities: readonly number[], orders: LastingOrders): number[][] {
  const rows: number[][] = [];
  for (const activity of activities) {
    const row = rows.find(members => members.every(member => orders.isApart(member, activity)));
    if (row) row.push(activity);
    else rows.push([activity]);
  }
  return rows;
}
