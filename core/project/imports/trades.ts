import type { Finding } from '../../base';
import type { Project } from '../schema';
import { keyOf } from './cells';
import type { Imported } from './figures';
import type { ImportMapping } from './mapping';

type Wage = Project['rates']['wages'][number];

interface Trade {
  readonly id: string;
  readonly title: string;
}

/**
 * The rows of a wage table under the trades of the rate book: a row names a trade by its key or by its title, in
 * capitals or not. A trade that the rate book does not have is left out with a finding that names those it has.
 */
export function underTrades(
  read: Imported<Wage>,
  mapping: ImportMapping,
  trades: readonly Trade[],
): Imported<Wage> {
  const known = new Map(trades.flatMap(({ id, title }) => [[keyOf(title), id] as const, [id, id] as const]));
  const rows = read.rows.map(row => ({ row, trade: known.get(keyOf(row.trade)) }));
  return {
    rows: rows.flatMap(({ row, trade }) => (trade === undefined ? [] : [{ ...row, trade }])),
    findings: [
      ...read.findings,
      ...rows.flatMap(({ row, trade }) => (trade === undefined ? [notKnown(row, mapping, trades)] : [])),
    ],
  };
}

function notKnown({ trade }: Wage, mapping: ImportMapping, trades: readonly Trade[]): Finding {
  return {
    code: 'imports/trade-not-known',
    weight: 'warns',
    place: `/imports/${mapping.id}`,
    message: `The rate book has no trade "${trade}".`,
    meaning: 'Its wage is left out.',
    remedy: `Write in the table, or in the words of the mapping, which of these it is: ${trades.map(one => one.title).join(', ')}.`,
  };
}
