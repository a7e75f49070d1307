import { readResult, tripPoint, verdictOf, type ReadResult, type TripPoint } from '../../materials';
import type { Survey } from '../../project';
import { aligned, editCell, REMOVE_COLUMN, removeCell, words } from '../cells';
import type { EstimateContext } from '../context';
import { decimalProduct } from '../../units';
import { limitWords } from './trip-point-table';
import type { Addition, Column, Edit, Row, Shown, TableRows } from '../rows';

type Result = Survey['laboratory'][number];

const COLUMNS: readonly Column[] = [
  { key: 'sample', title: 'Sample', kind: 'words' },
  { key: 'space', title: 'Space', kind: 'words' },
  { key: 'material', title: 'Material', kind: 'words' },
  { key: 'analyte', title: 'Analyte', kind: 'words' },
  { key: 'result', title: 'Result', kind: 'number' },
  { key: 'unit', title: 'Unit', kind: 'unit' },
  { key: 'qualifier', title: 'Qualifier', kind: 'words', wide: true },
  { key: 'reportingLimit', title: 'Reporting limit', kind: 'number' },
  { key: 'date', title: 'Date', kind: 'words' },
  { key: 'verdict', title: 'Against the trip-point', kind: 'words' },
  REMOVE_COLUMN,
];

/** The trip-point and the factors of units by which the survey decides: as the survey reads them. */
export interface Held {
  readonly point: TripPoint;
  readonly read: ReadResult;
  readonly words: string;
}

const POINTS: readonly (readonly [analyte: RegExp, point: string])[] = [
  [/pcb|aroclor|polychlorinated/i, 'pcb-bulk-product'],
  [/asbestos|chrysotile|amosite|crocidolite/i, 'asbestos-content'],
  [/tclp.*lead|lead.*tclp/i, 'leach-lead'],
  [/tclp.*chromium|chromium.*tclp/i, 'leach-chromium'],
  [/tclp.*cadmium|cadmium.*tclp/i, 'leach-cadmium'],
  [/tclp.*mercury|mercury.*tclp/i, 'leach-mercury'],
];

const MASS: Readonly<Record<string, string>> = {
  ppm: '1',
  'mg/kg': '1',
  'ug/g': '1',
  'µg/g': '1',
  'ug/kg': '0.001',
  'µg/kg': '0.001',
  '%': '10000',
};
const LEACH: Readonly<Record<string, string>> = { 'mg/l': '1', 'ug/l': '0.001', 'µg/l': '0.001' };

/** Units of results as factors to the unit of the trip-point, by its key. */
function factorTo(point: string, unit: string): string | undefined {
  const written = unit.trim().toLowerCase();
  if (point === 'pcb-bulk-product') return MASS[written];
  if (point === 'asbestos-content') return { '%': '0.01', percent: '0.01' }[written];
  return LEACH[written];
}

function inUnitOf(read: ReadResult, factor: string): ReadResult {
  if (read.kind === 'measured') return { kind: 'measured', value: decimalProduct(read.value, factor) };
  return read.kind === 'below' ? { kind: 'below', limit: decimalProduct(read.limit, factor) } : read;
}

/** A result beside the trip-point of its analyte; undefined when no trip-point speaks of it in its unit. */
export function heldAgainst(points: readonly TripPoint[], result: Result): Held | undefined {
  const id = POINTS.find(([analyte]) => analyte.test(result.analyte))?.[1];
  if (id === undefined) return undefined;
  const point = tripPoint(points, id);
  const factor = factorTo(id, result.unit);
  if (factor === undefined) return undefined;
  const read = inUnitOf(readResult(result), factor);
  const shown = limitWords(point);
  const limit = `${shown.text} ${shown.unit}`;
  const verdict = verdictOf(read, point);
  const said =
    verdict === 'trips' ? `trips at ${limit}` : verdict === 'clears' ? `clear of ${limit}` : 'cannot tell';
  return { point, read, words: said };
}

/** Laboratory results as they stood in the report, each beside the rule it is held against. */
export function laboratoryTable({ evaluation: { project, library } }: EstimateContext): TableRows {
  const materials = library.materials.map(({ id, title }) => ({ id, title }));
  const rows = project.survey.laboratory.map((result, index): Row => {
    const at = `/survey/laboratory/${index}`;
    const cell = (field: keyof Result, label: string, more: Partial<Edit> = {}): Shown =>
      editCell({
        at: `${at}/${field}`,
        kind: 'text',
        value: result[field] ?? '',
        label: `${label} of sample ${result.sample}`,
        ...more,
      });
    const held = heldAgainst(library.tripPoints, result);
    const verdict: Shown =
      held === undefined ? words('no trip-point') : { text: held.words, why: `laboratory:${index}` };
    return {
      id: `result-${index}`,
      kind: 'line',
      cells: {
        sample: cell('sample', 'Number'),
        space: cell('space', 'Space'),
        material: cell('material', 'Material', { kind: 'choice', choices: materials }),
        analyte: cell('analyte', 'Analyte'),
        result: cell('result', 'Result'),
        unit: cell('unit', 'Unit'),
        qualifier: cell('qualifier', 'Qualifier'),
        reportingLimit: cell('reportingLimit', 'Reporting limit', { kind: 'decimal', optional: true }),
        date: cell('date', 'Date', { kind: 'date' }),
        verdict,
        remove: removeCell(at, `the result of sample ${result.sample}`),
      },
    };
  });
  return {
    id: 'laboratory',
    caption: 'Laboratory results',
    columns: COLUMNS,
    rows: aligned(COLUMNS, rows),
    add: addition(materials),
  };
}

function addition(materials: NonNullable<Edit['choices']>): Addition {
  return {
    at: '/survey/laboratory',
    what: 'a result',
    entry: { qualifier: '' },
    fields: [
      { path: 'sample', kind: 'text', label: 'Sample' },
      { path: 'space', kind: 'text', label: 'Space' },
      { path: 'material', kind: 'choice', label: 'Material', choices: materials },
      { path: 'analyte', kind: 'text', label: 'Analyte' },
      { path: 'result', kind: 'text', label: 'Result, as the laboratory wrote it' },
      { path: 'unit', kind: 'text', label: 'Unit' },
      { path: 'reportingLimit', kind: 'decimal', label: 'Reporting limit', optional: true },
      { path: 'date', kind: 'date', label: 'Date' },
    ],
  };
}
