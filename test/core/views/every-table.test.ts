import { describe, expect, test } from 'vitest';
import { BASES } from '../../../core/base';
import type { Column, Row, Sentence, Shown as Cell, TableRows } from '../../../core/views';
import { ALL_SHOWN, everything } from './everything';
import { inside, isRecord, plain, tablesIn } from './laws';

/** Words with one blank between them and none around them. */
const WORDS = /^\S+( \S+)*$/;
/** The same, with two blanks before the count of a group. */
const COUNTED = /^\S+( \S+)* {2}\d+$|^\d+[a-k]? {2}\S+( \S+)*$|^[a-k] {2}\S+( \S+)*$/;
const KINDS: readonly Column['kind'][] = ['words', 'number', 'range', 'unit', 'basis', 'share', 'action'];
const NUMBER = /^[+−]?\$?\d[\d,]*(\.\d+)?( %| in 100 runs)?$|^\d+ [A-Z][a-z]{2} \d{4}$/;
/** What stands in a column of numbers where there is none. */
const NO_NUMBER =
  /^(|–|not yet|not given|not known|none|no price|no total|no balance|not run|see note|<\d+|yes|no|fewer than 1|more than 99|no change|not judged|not seen|in the simulation|within the ranges)$/;
const VERDICTS = /^(stays up|leans|may roll over|does not sink|cannot tell)$/;

/** Columns that a row of a kind leaves out, by table. */
const LEFT_OUT: Readonly<Record<string, Readonly<Partial<Record<Row['kind'], readonly string[]>>>>> = {
  weights: { total: ['weight', 'share', 'reach', 'remove'] },
  work: { group: ['quantity', 'unit', 'rate', 'basis'], total: ['quantity', 'unit', 'rate', 'basis'] },
  payee: { group: ['stage', 'element'], total: ['stage', 'element'] },
  materials: {
    group: ['quantity', 'unit', 'range', 'presence', 'measured', 'from', 'basis'],
    total: ['quantity', 'unit', 'range', 'presence', 'measured', 'from', 'basis'],
    line: ['total'],
  },
  sources: { total: ['left', 'pays'] },
  'bid-sheet': { total: ['quantity', 'unit', 'unitPrice'] },
  bids: { total: ['quantity', 'unit', 'median'] },
  differences: { group: ['fishing-reef', 'diver-access'] },
};
/** Tables in which a cell is there only for what can be taken out, or only for a figure. */
const SOMETIMES: Readonly<Record<string, readonly string[]>> = {
  covers: ['remove'],
  'benefit-obligations': ['remove'],
  register: ['remove'],
  scenarios: ['remove'],
  approval: ['unit', 'basis', 'remove'],
  baseline: ['unit', 'basis', 'remove'],
  independent: ['unit', 'basis', 'remove'],
};

function wrongCells({ id, columns, rows }: TableRows): string[] {
  const sometimes = SOMETIMES[id] ?? [];
  return rows.flatMap(row => {
    const leftOut = LEFT_OUT[id]?.[row.kind] ?? [];
    return columns
      .filter(({ key }) => !sometimes.includes(key))
      .filter(({ key }) => (row.cells[key] === undefined) !== leftOut.includes(key))
      .map(({ key }) => `${id} ${row.id} ${key}`);
  });
}

function wrongHeads({ id, caption, columns, rows }: TableRows): string[] {
  const keys = columns.map(column => column.key);
  return [
    ...(WORDS.test(id) && WORDS.test(caption) ? [] : [`${id}: ${caption}`]),
    ...(columns.length > 1 && new Set(keys).size === keys.length && !keys.includes('')
      ? []
      : [`${id}: ${keys.join()}`]),
    ...columns
      .filter(({ title, unit, kind }) => !WORDS.test(title) || unit === '' || !KINDS.includes(kind))
      .map(column => `${id}: ${JSON.stringify(column)}`),
    ...rows
      .filter(row => row.id === '' || !['line', 'group', 'total'].includes(row.kind) || row.under === '')
      .map(row => `${id}: ${row.id} ${row.kind}`),
  ];
}

/** The digits behind the point, with those that are hidden. */
const decimalsOf = ({ text, pad = '' }: Cell) => /\.(\d*)$/.exec(`${text}${pad}`)?.[1]?.length ?? 0;

/** Numbers of a column that do not stand under one point, and what is neither a number nor a word for none. */
function wrongNumbers({ id, columns, rows }: TableRows): string[] {
  return columns
    .filter(({ kind }) => kind === 'number' || kind === 'share')
    .flatMap(({ key }) => {
      const cells = rows.flatMap(row => row.cells[key] ?? []);
      const odd = cells.filter(
        ({ text, edit }) =>
          !NUMBER.test(text) &&
          !NO_NUMBER.test(text) &&
          !VERDICTS.test(text) &&
          edit?.kind !== 'choice' &&
          edit?.kind !== 'date' &&
          edit?.kind !== 'switch' &&
          edit?.at !== '/vessel/hullType',
      );
      const decimals = new Set(cells.filter(({ text }) => /\d$/.test(text)).map(decimalsOf));
      return [
        ...odd.map(({ text }) => `${id} ${key}: ${text}`),
        ...(decimals.size > 1 && PADDED(id) ? [`${id} ${key}: ${[...decimals].join()}`] : []),
      ];
    });
}
/** Tables whose columns hold days or whole words beside their numbers stand as they are. */
const PADDED = (id: string) => !/^(scenarios|scenarios-side-by-side|decision-figures|differences)$/.test(id);

/** Units and bases told beside the figure of their row that are not its own. */
function wrongBeside({ id, columns, rows }: TableRows): string[] {
  return rows.flatMap(row =>
    columns.flatMap(({ key, kind }, place) => {
      const cell = row.cells[key];
      if (cell === undefined) return [];
      if (kind === 'basis') {
        const isBasis = BASES.some(basis => basis === cell.text) && cell.basis === cell.text;
        return isBasis || /^(|–|hull type)$/.test(cell.text) ? [] : [`${id} ${row.id}: ${cell.text}`];
      }
      if (kind !== 'unit') return [];
      const [before] = columns
        .slice(0, place)
        .toReversed()
        .flatMap(column => row.cells[column.key] ?? [])
        .filter(one => one.unit !== undefined);
      return before === undefined || before.unit === cell.text || SPELT_OUT.test(id)
        ? []
        : [`${id} ${row.id} ${key}: ${cell.text} for ${before.unit ?? ''}`];
    }),
  );
}
/** Tables whose shares are told with what they are shares of. */
const SPELT_OUT = /^(award-terms|contingency-terms|benefit-terms)$/;

/** Cells that may say nothing, by table and column. */
const SILENT =
  /^(particulars (unit|basis)|site unit|work unit|(burdens|crews|equipment|scrap|markUps|conditions) unit|wages own|waste unit|materials (measured|unit)|contracts method|source-terms (share|cap)|award-terms (unit|basis|value)|contingency-terms (unit|basis)|benefit-terms (unit|basis|value)|benefit-figures unit|benefit-uses \S+(Low|High)|bid-sheet number|bid-build-up (on|basis)|bid-items (quantity|allowance)|bid-prices \S+|attachments usedBy|stages event|sizing note|yardsticks unit|tanks sounding|connections height)$/;

function wrongTexts({ id, rows }: TableRows): string[] {
  return rows.flatMap(row =>
    Object.entries(row.cells)
      .filter(
        ([key, { text }]) =>
          !WORDS.test(text) &&
          !(row.kind === 'group' && COUNTED.test(text)) &&
          !(text === '' && SILENT.test(`${id} ${key}`)),
      )
      .map(([key, { text }]) => `${id} ${row.id} ${key}: “${text}”`),
  );
}

const isSentence = (value: unknown): value is Sentence =>
  Array.isArray(value) &&
  value.length > 0 &&
  value.every(part => typeof part === 'string' || (isRecord(part) && typeof part['text'] === 'string')) &&
  value.some(part => typeof part === 'string');

const SENTENCES = new Set([
  'sentence',
  'note',
  'says',
  'notes',
  'presence',
  'practicesSentence',
  'classSentence',
  'growthSentence',
  'recordSentence',
  'margin',
  'planWords',
  'pastHulls',
]);
const SAID = new Set([
  'words',
  'classNote',
  'openSentence',
  'intakeWords',
  'closing',
  'caution',
  'contingencyNote',
  'couldStartWords',
  'holds',
  'goal',
  'message',
  'remedy',
  'meaning',
]);
const STARTS = /^[A-Z0-9$“]/;
const BROKEN = / {2}| [.,;:](?!\d)|[,;:]\.|\.\.|,,|\( | \)|\$ |^[ .,;]|,[A-Za-z]|[a-z]\$\d/;

/** What is said that is no whole sentence. */
function wrongSentences(shown: unknown): string[] {
  return [...inside(shown)].flatMap(([path, held]) => {
    const key = path.split('/').at(-1) ?? '';
    if (isSentence(held) && (SENTENCES.has(key) || key === 'award')) {
      const text = plain(held);
      return STARTS.test(text) && text.endsWith('.') && !BROKEN.test(text) ? [] : [`${path}: ${text}`];
    }
    if (typeof held !== 'string' || !SAID.has(key) || /\/(cells|rows|says|materials)\//.test(path)) return [];
    if (held === '' && key === 'classNote') return [];
    return held !== '' && STARTS.test(held) && !BROKEN.test(held) ? [] : [`${path}: ${held}`];
  });
}

describe.each(ALL_SHOWN)('the tables and sentences of %s', name => {
  test('have heads, names and cells where they belong, and say nothing by halves', () => {
    const { shown } = everything(name);
    const tables = tablesIn(shown);
    expect(tables.length).toBeGreaterThan(10);
    expect(tables.flatMap(wrongHeads)).toEqual([]);
    expect(tables.flatMap(wrongCells)).toEqual([]);
    expect(tables.flatMap(wrongTexts)).toEqual([]);
    expect(tables.flatMap(wrongNumbers)).toEqual([]);
    expect(tables.flatMap(wrongBeside)).toEqual([]);
    expect(wrongSentences(shown)).toEqual([]);
  });
});
