import type { Evaluation } from '../../evaluation';
import { endOfSinking } from '../../flooding';
import { converted, measuresOf, saidIn, unitFor } from '../../units';
import { cautionRows, headingRow, number, text } from './cells';
import { inOrder } from './rows';
import type { PaperCell, PaperSheet } from './model';

/** The upright screen, stage by stage: values of the program, and what it is not. */
export function uprightSheet({ upright, project }: Evaluation): PaperSheet | undefined {
  if (upright === undefined) return undefined;
  const end = endOfSinking(upright);
  const { verdict, reasons, greatestHeelDegrees, lowestGmMetres, sinkMinutes, missingInputs, caution } =
    upright;
  const measures = measuresOf(project.vessel.length.unit);
  const length = unitFor('m', measures);
  const facts: readonly (readonly [string, number | undefined, string])[] = [
    ['Greatest heel over the ranges', greatestHeelDegrees, 'degrees'],
    ['Lowest metacentric height over the ranges', inLength(lowestGmMetres, length), length],
    [`From opening until the hull is ${end}`, sinkMinutes, 'minutes'],
  ];
  const lists = [
    ...reasons.map(reason => saidIn(reason, measures)),
    ...missingInputs.map(input => `Missing: ${input}`),
  ];
  const first = 3 + cautionRows(caution, 2).length;
  const top = first + 5 + lists.length;
  return {
    name: 'Upright screen',
    cells: [
      text(1, 1, `Does she sink upright? The screen says: ${verdict}`, 'title'),
      ...cautionRows(caution, 2),
      ...inOrder(facts, first, ([title, value, unit], row) => [
        text(row, 1, title),
        ...(value === undefined
          ? [text(row, 2, 'not reached in the simulation')]
          : [number(row, 2, value, 2, 'result'), text(row, 3, unit)]),
      ]),
      ...inOrder(lists, first + 4, (words, row) => [text(row, 1, words)]),
      ...headingRow(top, [
        'Flooding, minutes',
        `Level, ${length}`,
        `GM likely, ${length}`,
        'Heel worst of KG, degrees',
        'List likely, degrees',
        `Trim, ${length}`,
      ]),
      ...inOrder(upright.stages, top + 1, (stage, row) => stageRow(stage, row, length)),
    ],
    widths: [40, 14, 14, 14, 14, 14],
    headingRows: 1,
    landscape: false,
  };
}

type Stage = NonNullable<Evaluation['upright']>['stages'][number];

/** A length of the simulation, which counts in metres, in the unit in which the ship is told. */
function inLength(metres: number | undefined, unit: string): number | undefined {
  return metres === undefined ? undefined : Number(converted(metres.toFixed(6), 'm', unit).value);
}

function stageRow(
  { t, level, gm, heel, list, trim, isPastCheck }: Stage,
  row: number,
  unit: string,
): PaperCell[] {
  const [levelIn, gmIn, trimIn] = [level, gm, trim].map(metres => inLength(metres, unit));
  const isUnjudged = isPastCheck === true && heel !== undefined;
  const judged = isUnjudged ? [undefined, undefined] : [gmIn, heel];
  return [t / 60, levelIn, ...judged, list, trimIn].map((value, i) =>
    value === undefined
      ? text(row, i + 1, isUnjudged ? 'not judged' : 'none')
      : number(row, i + 1, Math.round(value * 100) / 100, 2, 'result'),
  );
}
