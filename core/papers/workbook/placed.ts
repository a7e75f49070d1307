import { BugError, withId } from '../../base';
import {
  emitWorkbook,
  placeApart,
  type EmittedWorkbook,
  type Placement,
  type SheetResult,
} from '../../sheet';

/** What the calculation sheets are called; a heading that is not listed keeps its own name. */
const SHEET_NAMES: Readonly<Record<string, string>> = {
  Inputs: 'Single figures',
  Tables: 'Price index',
  Tank: 'Tanks',
  Driver: 'Drivers',
  'Set of conditions': 'Conditions',
  'Crew member': 'Crew members',
  Crew: 'Crews',
  'Work item': 'Work',
  Waste: 'Waste by item',
  'Waste stream': 'Waste by stream',
  'Waste hauled': 'Waste hauled',
  'Weight removed': 'Weights removed',
  'Price year': 'Price years',
  Trade: 'Trades',
  'Grade of scrap': 'Scrap grades',
  Line: 'Lines',
  Stage: 'Stages',
};

/** The calculation sheets as cells, each with a name a reader knows. */
export function emitNamed(results: readonly SheetResult[]): EmittedWorkbook {
  const apart = placeApart(results);
  const taken = new Set([...apart.values()].map(place => place.sheet));
  const nameOf = (sheet: string) => {
    const name = SHEET_NAMES[sheet] ?? sheet;
    return name !== sheet && taken.has(name) ? sheet : name;
  };
  const placement: Placement = new Map(
    [...apart].map(([id, place]) => [id, { ...place, sheet: nameOf(place.sheet) }]),
  );
  return emitWorkbook(results, { placement });
}

/** The range of a column of a table, its guard row included, as a formula writes it. */
export function columnRange(emitted: EmittedWorkbook, table: string, key: string): string {
  const { sheet, columns, firstRow, guardRow } = withId(emitted.regions, table);
  const column = columns.find(candidate => candidate.key === key);
  if (column === undefined || guardRow === undefined) throw new BugError(`${table} has no column ${key}`);
  return `'${sheet}'!$${column.letter}$${firstRow}:$${column.letter}$${guardRow}`;
}
