import type { Sentence, TableRows, WhyRows } from '../../../core/views';

/** Laws that hold for whatever a view shows, each as the list of places that break it. */

export function isRecord(value: unknown): value is Record<string, unknown> {
  return value !== null && typeof value === 'object' && !Array.isArray(value);
}

/** Everything inside a value with the path to it. */
export function* inside(value: unknown, path = ''): Generator<readonly [path: string, held: unknown]> {
  yield [path, value];
  if (Array.isArray(value)) {
    for (const [place, one] of value.entries()) yield* inside(one, `${path}/${place}`);
  } else if (isRecord(value)) {
    for (const [key, one] of Object.entries(value)) yield* inside(one, `${path}/${key}`);
  }
}

const BROKEN = /\bundefined\b|\bNaN\b|Infinity|\[object |\$\{/;

/** Words in which the program shows through, and numbers that are none. */
export function brokenWords(shown: unknown): string[] {
  return [...inside(shown)]
    .filter(([, held]) => (typeof held === 'string' ? BROKEN.test(held) : Number.isNaN(held)))
    .map(([path, held]) => `${path}: ${String(held)}`);
}

function isTable(value: unknown): value is TableRows {
  return (
    isRecord(value) &&
    Array.isArray(value['columns']) &&
    Array.isArray(value['rows']) &&
    typeof value['caption'] === 'string'
  );
}

/** All tables of some rows, wherever they stand. */
export function tablesIn(shown: unknown): TableRows[] {
  return [...inside(shown)].flatMap(([, held]) => (isTable(held) ? [held] : []));
}

/** Rows that two of a table have one name for, groups that stand nowhere, and cells of no column. */
export function looseRows(shown: unknown): string[] {
  return tablesIn(shown).flatMap(({ id, rows, columns }) => {
    const ids = rows.map(row => row.id);
    const keys = new Set(columns.map(column => column.key));
    return [
      ...ids.filter((row, place) => ids.indexOf(row) !== place).map(row => `${id}: ${row} twice`),
      ...rows.flatMap(row =>
        row.under === undefined || ids.includes(row.under) ? [] : [`${id}: ${row.id} under nothing`],
      ),
      ...rows.flatMap(row =>
        Object.keys(row.cells)
          .filter(key => !keys.has(key))
          .map(key => `${id}: ${row.id} has a cell ${key}`),
      ),
    ];
  });
}

/** Figures said to be absent that show a number all the same. */
export function absentNumbers(shown: unknown): string[] {
  return [...inside(shown)].flatMap(([path, held]) =>
    isRecord(held) && held['absent'] === true && /\d/.test(String(held['text'])) ? [path] : [],
  );
}

/** The names of all figures, wherever they stand. */
export function whysIn(shown: unknown): string[] {
  const found = new Set<string>();
  for (const [, held] of inside(shown)) {
    if (isRecord(held) && typeof held['why'] === 'string' && ('text' in held || 'words' in held))
      found.add(held['why']);
  }
  return [...found];
}

/** Figures that open no derivation, or one that breaks a law itself. */
export function silentFigures(
  names: readonly string[],
  answer: (name: string) => WhyRows | undefined,
): string[] {
  return names.flatMap(name => {
    const told = answer(name);
    if (told === undefined || told.rows.length === 0) return [`${name} opens nothing`];
    return [
      ...(told.id === name ? [] : [`${name} opens ${told.id}`]),
      ...brokenWords(told).map(broken => `${name}: ${broken}`),
    ];
  });
}

/** Whole dollars of a cell; 0 for a dash, undefined where there is no amount. */
export function amountOf(text: string | undefined): number | undefined {
  if (text === '–') return 0;
  if (text === undefined || !/^[\u2212-]?\$?[\d,]+(\.\d+)?$/.test(text)) return undefined;
  return Number(text.replace(/[,$]/g, '').replace('\u2212', '-'));
}

/** Columns of money whose lines do not add up to their total row. */
export function wrongSums({ id, columns, rows }: TableRows): string[] {
  const total = rows.find(row => row.kind === 'total');
  const lines = rows.filter(row => row.kind === 'line');
  return columns
    .filter(column => column.unit === '$' || column.unit === '%')
    .flatMap(({ key, unit }) => {
      const amounts = lines.map(row => amountOf(row.cells[key]?.text));
      const said = amountOf(total?.cells[key]?.text);
      if (said === undefined || amounts.includes(undefined)) return [];
      const sum = amounts.reduce<number>((all, one) => all + (one ?? 0), 0);
      return Math.abs(sum - said) < (unit === '%' ? 0.001 : 0.5) ? [] : [`${id} ${key}: ${sum} for ${said}`];
    });
}

/** Units of the other system, where a reader wants one of them. */
export function foreignUnits(shown: unknown, measures: 'us' | 'metric'): string[] {
  const foreign =
    measures === 'metric'
      ? /^(ft|mi|gal|long tons?|short tons?|sq ft|cu ft|lb)( |\/|$)/
      : /^(m|km|m²|m³|t|kg)( |\/|$)/;
  return [...inside(shown)].flatMap(([path, held]) =>
    isRecord(held) && typeof held['unit'] === 'string' && 'text' in held && foreign.test(held['unit'])
      ? [`${path}: ${held['unit']}`]
      : [],
  );
}

/** A sentence as it is read. */
export function plain(sentence: Sentence | undefined): string {
  return (sentence ?? []).map(part => (typeof part === 'string' ? part : part.text)).join('');
}

/** Cells of money whose derivation comes to another amount, or is known where the cell is not. */
export function otherAmounts(
  tables: readonly TableRows[],
  answer: (name: string) => WhyRows | undefined,
  apart = 1,
): string[] {
  return tables.flatMap(({ id, columns, rows }) =>
    columns
      .filter(column => column.unit === '$')
      .flatMap(({ key }) =>
        rows.flatMap(row => {
          const cell = row.cells[key];
          if (cell?.why === undefined || cell.why.startsWith('lines/')) return [];
          const told = answer(cell.why)?.value;
          const [said, opened] = [amountOf(cell.text), amountOf(told?.text)];
          const isSame =
            said === undefined || opened === undefined ? said === opened : Math.abs(said - opened) <= apart;
          return isSame ? [] : [`${id} ${row.id} ${key}: ${cell.text} opens ${told?.text ?? 'nothing'}`];
        }),
      ),
  );
}
