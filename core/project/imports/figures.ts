import { BASES, figureSchema, type Figure, type Finding } from '../../base';
import { tankSchema, type Project, type Vessel } from '../schema';
import { dateOf, keyOf, numberOf } from './cells';
import type { ImportMapping } from './mapping';
import { isLumpSum, priceUnit, unitNotKnown } from './price-units';
import { cellOf, mapTable, type MappedRow, type TextTable } from './table';

/** What a file gives, and what of it could not be read. */
export interface Imported<R> {
  readonly rows: readonly R[];
  readonly findings: readonly Finding[];
}

/** A price of a price list or bid tabulation. */
export interface PriceRow {
  readonly item: string;
  readonly title: string;
  readonly vendor: string;
  readonly unit: string;
  readonly quantity?: string;
  /** The day of the offer and the last day it holds, where the file gives them. */
  readonly dated?: string;
  readonly validUntil?: string;
  readonly price: Figure;
}

type Read<R> = (row: MappedRow, figure: (field: string, unit: string) => Figure | undefined) => R | undefined;

/** Entries with a key each: a title that comes again gets a number behind it, so that no row hides another. */
function withOwnKeys<R extends { readonly id: string }>(read: Imported<R>): Imported<R> {
  const seen = new Map<string, number>();
  const rows = read.rows.map(row => {
    const count = (seen.get(row.id) ?? 0) + 1;
    seen.set(row.id, count);
    return count === 1 ? row : { ...row, id: `${row.id}-${count}` };
  });
  return { ...read, rows };
}

/** Reads each mapped row; one without a number where one is needed is left out with a finding, never taken as zero. */
function importRows<R>(
  table: TextTable,
  mapping: ImportMapping,
  basis: Figure['basis'],
  read: Read<R>,
): Imported<R> {
  const mapped = mapTable(table, mapping);
  const rows = mapped.rows.map(row => ({
    row,
    value: read(row, (field, unit) => {
      const value = numberOf(row.fields[field], mapping);
      if (value === undefined) return undefined;
      return { value, unit, basis, source: sourceOf(mapping), ...priceYear(row.fields['year']) };
    }),
  }));
  return {
    rows: rows.flatMap(({ value }) => (value === undefined ? [] : [value])),
    findings: [
      ...mapped.findings,
      ...rows.flatMap(({ row, value }) => (value === undefined ? [notRead(row, mapping)] : [])),
    ],
  };
}

/** The year whose prices a row speaks of, where it says one. */
function priceYear(written: string | undefined): Pick<Figure, 'year'> {
  const { data } = figureSchema.shape.year.safeParse(
    /^\d{4}$/.test(written ?? '') ? Number(written) : undefined,
  );
  return data === undefined ? {} : { year: data };
}

/** The source of what a table gives: its title, and that it is a table where the title alone is too short to say. */
export function sourceOf({ title }: Pick<ImportMapping, 'title'>): string {
  return figureSchema.shape.source.safeParse(title).success ? title : `Table ${title}`;
}

function notRead({ place, fields }: MappedRow, mapping: ImportMapping): Finding {
  const isWithComma = Object.values(fields).some(text => isNumberWithComma(text, mapping));
  return {
    code: 'imports/row-not-read',
    weight: 'warns',
    place,
    message: `The row "${Object.values(fields).join(' · ')}" has no number where one is needed.`,
    meaning: 'It is left out; an empty cell is never zero.',
    remedy: isWithComma
      ? 'Where a comma stands before the decimals, say so: “Decimals follow a comma” in the window, `--decimals comma` on the command line.'
      : 'Complete the row in the file, or enter it by hand.',
  };
}

/** Whether a text would be a number if a comma stood before its decimals. */
function isNumberWithComma(text: string, mapping: ImportMapping): boolean {
  return (
    text.includes(',') &&
    numberOf(text, mapping) === undefined &&
    numberOf(text, { ...mapping, decimals: 'comma' }) !== undefined
  );
}

/** A tank table: title, capacity, contents, sounding. Contents that are no kind of the list are unknown. */
export function importTanks(table: TextTable, mapping: ImportMapping): Imported<Vessel['tanks'][number]> {
  const read = importRows(
    table,
    mapping,
    'surveyed',
    ({ fields }, figure): Vessel['tanks'][number] | undefined => {
      const unit = cellOf(fields, 'unit');
      const capacity = figure('capacity', unit);
      const sounding = figure('sounding', unit);
      const contents = tankSchema.shape.contents.safeParse((fields['contents'] ?? '').toLowerCase());
      const title = cellOf(fields, 'title');
      if (capacity === undefined || title === '') return undefined;
      return {
        id: keyOf(title),
        title,
        capacity,
        contents: contents.success ? contents.data : 'unknown',
        ...(sounding === undefined ? {} : { sounding }),
      };
    },
  );
  return withOwnKeys(read);
}

/** A weight list: item, mass and centre. */
export function importWeights(table: TextTable, mapping: ImportMapping): Imported<Vessel['weights'][number]> {
  const read = importRows(
    table,
    mapping,
    'surveyed',
    ({ fields }, figure): Vessel['weights'][number] | undefined => {
      const title = cellOf(fields, 'title');
      const lengthUnit = cellOf(fields, 'lengthUnit');
      const mass = figure('mass', cellOf(fields, 'massUnit'));
      const [vcg, lcg, tcg] = ['vcg', 'lcg', 'tcg'].map(field => figure(field, lengthUnit));
      if (mass === undefined || vcg === undefined || lcg === undefined || tcg === undefined || title === '')
        return undefined;
      return { id: keyOf(title), title, mass, vcg, lcg, tcg };
    },
  );
  return withOwnKeys(read);
}

/** A price list or bid tabulation: a price per unit for an item. */
export function importPrices(table: TextTable, mapping: ImportMapping): Imported<PriceRow> {
  const strange: Finding[] = [];
  const read = importRows(table, mapping, 'quoted', (row, figure): PriceRow | 'left out' | undefined => {
    const { fields } = row;
    const item = cellOf(fields, 'item');
    const written = cellOf(fields, 'unit');
    const unit = isLumpSum(written) ? 'lump sum' : priceUnit(written);
    const price = figure('price', unit === 'lump sum' ? 'USD' : `USD/${unit ?? '1'}`);
    const quantity = numberOf(fields['quantity'], mapping);
    if (price === undefined || item === '') return undefined;
    if (unit === undefined) {
      strange.push(unitNotKnown(row));
      return 'left out';
    }
    return {
      item,
      title: fields['title'] ?? '',
      vendor: fields['vendor'] ?? '',
      unit,
      price,
      ...(quantity === undefined ? {} : { quantity }),
      ...dates(fields, mapping),
    };
  });
  return {
    rows: read.rows.filter(row => row !== 'left out'),
    findings: [...read.findings, ...strange],
  };
}

function dates(fields: MappedRow['fields'], mapping: ImportMapping): Pick<PriceRow, 'dated' | 'validUntil'> {
  const [dated, validUntil] = [fields['dated'], fields['validUntil']].map(cell =>
    dateOf(cell ?? '', mapping),
  );
  return { ...(dated === undefined ? {} : { dated }), ...(validUntil === undefined ? {} : { validUntil }) };
}

/**
 * A wage table: dollars an hour by trade. It is somebody's own table and rests on judgement, unless it says by a column,
 * or the mapping for all of it, on what it rests and where it comes from.
 */
export function importWages(
  table: TextTable,
  mapping: ImportMapping,
): Imported<Project['rates']['wages'][number]> {
  const unknown: Finding[] = [];
  const read = importRows<Project['rates']['wages'][number]>(
    table,
    mapping,
    'judgement',
    ({ fields, place }, figure) => {
      const [trade, wage] = [cellOf(fields, 'trade'), figure('wage', 'USD/h')];
      if (wage === undefined || trade === '') return undefined;
      const said = (fields['basis'] ?? '').trim();
      const basis = BASES.find(known => known === said.toLowerCase());
      if (basis === undefined && said !== '') unknown.push(basisNotKnown(place, trade, said));
      const source = figureSchema.shape.source.safeParse((fields['source'] ?? '').trim());
      return {
        trade,
        figure: { ...wage, ...(basis && { basis }), ...(source.success && { source: source.data }) },
      };
    },
  );
  return { ...read, findings: [...read.findings, ...unknown] };
}

function basisNotKnown(place: string, trade: string, said: string): Finding {
  return {
    code: 'imports/basis-not-known',
    weight: 'warns',
    place,
    message: `The wage of ${trade} is said to rest on “${said.slice(0, 40)}”, which is no basis.`,
    meaning: 'It is taken as judgement.',
    remedy: `Write one of these in the table: ${BASES.join(', ')}.`,
  };
}
