import {
  estimateWorkbook,
  inputCells,
  otherCells,
  otherVersion,
  readInputs,
  stampText,
  takeBack,
  INPUTS,
  type FileCell,
  type PaperCell,
  type TypedContent,
  type TypedRow,
} from '../../../core/papers';
import { demoProject, estimated, evaluated } from '../../core/evaluation/demo';
import { examples, type Told } from './example';

const project = demoProject();
function madeOf() {
  const evaluation = evaluated(project);
  const whole = { ...evaluation, estimate: estimated(evaluation) };
  const paper = estimateWorkbook(evaluation);
  if (paper === undefined) throw new Error('the example has an estimate');
  return { whole, paper, cells: inputCells(whole) };
}
let kept: ReturnType<typeof madeOf> | undefined;
const made = () => (kept ??= madeOf());

const WAGE = '/rates/trades/abatement-worker/wage';
const typed = (key: string, value: TypedContent, more: Partial<TypedRow> = {}): TypedRow => ({
  address: 'Inputs!C9',
  key,
  value,
  unit: made().cells.find(cell => cell.key === key)?.unit ?? '',
  basis: '',
  source: '',
  ...more,
});
const taken =
  (rows: () => TypedRow[], more: object = {}) =>
  (): readonly Told[] =>
    takeBack(made().whole, rows(), {
      document: project,
      origin: { kind: 'workbook', dated: '2026-11-24' },
      seed: 1,
      schedules: 10,
      ...more,
    }).findings;
const number = (value: number): TypedContent => ({ kind: 'number', value });

/** One cell of the paper, or beside it, that came back with something else in it; all other cells came back as they were. */
const strange =
  (pick: (cell: PaperCell, sheet: string) => boolean, content: TypedContent) => (): readonly Told[] => {
    for (const { name, cells } of made().paper.sheets)
      for (const cell of cells)
        if (pick(cell, name))
          return otherCells(made().paper, [{ sheet: name, row: cell.row, column: cell.column, content }]);
    return [];
  };
const cellAt = (cell: Partial<FileCell>) => () =>
  otherCells(made().paper, [
    { sheet: 'Cover', row: 900, column: 1, content: { kind: 'text', text: 'my note' }, ...cell },
  ]);
const ofRole = (role: string) => (cell: PaperCell) =>
  'role' in cell.content && cell.content.role === role && 'value' in cell.content;
const inputsSheet =
  (...cells: FileCell[]) =>
  () =>
    readInputs([
      {
        sheet: INPUTS,
        row: 4,
        column: 1,
        content: { kind: 'text', text: stampText({ document: 'abc', scenario: 'a', dated: '2026-11-24' }) },
      },
      ...['Key', 'Amount', 'Unit'].map((text, i): FileCell => ({
        sheet: INPUTS,
        row: 5,
        column: i + 1,
        content: { kind: 'text', text },
      })),
      ...cells,
    ]).findings;

export const takeBackExamples = examples(
  ['take-back/beside-the-tables', 'a note far below the cover', cellAt({})],
  ['take-back/cell-emptied', 'a sheet that came back with one cell', cellAt({})],
  [
    'take-back/dates-moved',
    'twelve times the hours of the survey',
    taken(() => {
      const key = '/items/compartment-survey/hoursPerUnit';
      return [typed(key, number(12 * Number(made().cells.find(cell => cell.key === key)?.value)))];
    }),
  ],
  [
    'take-back/depends-on-dates',
    'a figure of the schedule typed over',
    strange(ofRole('schedule'), number(-1)),
  ],
  [
    'take-back/formula-changed',
    'a formula typed over',
    strange(cell => cell.content.kind === 'formula', number(1)),
  ],
  ['take-back/more-cells', 'a sheet that came back with one cell', cellAt({})],
  [
    'take-back/no-such-figure',
    'a row with a key that names no figure',
    taken(() => [typed('/vessel/name', number(1))]),
  ],
  [
    'take-back/no-total',
    'mark-ups of the whole price',
    taken(() =>
      made()
        .cells.filter(cell => /^\/rates\/markUps\//.test(cell.key))
        .map((cell, i) => typed(cell.key, number(0.9), { address: `Inputs!C${9 + i}` })),
    ),
  ],
  [
    'take-back/not-an-amount',
    '"31.50" pasted as text where a wage belongs',
    taken(() => [typed(WAGE, { kind: 'text', text: '31.50' })]),
  ],
  [
    'take-back/not-an-input',
    'a given typed over outside the sheet of inputs',
    strange(
      cell =>
        (cell.content.kind === 'number' || cell.content.kind === 'money') &&
        cell.content.role !== 'schedule' &&
        cell.content.role !== 'input',
      number(-77.7),
    ),
  ],
  ['take-back/not-ours', 'a workbook without the sheet of inputs', () => readInputs([]).findings],
  ['take-back/other-sheet', 'a sheet of somebody’s own', cellAt({ sheet: 'Mine' })],
  [
    'take-back/other-version',
    'a paper of another state of the project',
    () => otherVersion({ document: 'abc', scenario: 'a', dated: '2026-11-24' }, 'def'),
  ],
  [
    'take-back/quote-without-vendor',
    'an amount typed as a quote',
    taken(() => [
      typed('/quotes/stability-study/amount', number(40_000)),
      typed('/quotes/stability-study/share', number(1), { address: 'Inputs!C10' }),
    ]),
  ],
  [
    'take-back/row-without-key',
    'a row put in without a key',
    inputsSheet({ sheet: INPUTS, row: 6, column: 2, content: number(5) }),
  ],
  ['take-back/rows-missing', 'a paper that came back with one row', taken(() => [typed(WAGE, number(30))])],
  [
    'take-back/text-changed',
    'a title typed over',
    strange(cell => cell.content.kind === 'text' && cell.content.text !== '', {
      kind: 'text',
      text: 'another',
    }),
  ],
  ['take-back/total-differs', 'a workbook that shows a total of 1.00', taken(() => [], { totalOfPaper: 1 })],
);
