import { compartmentTitle, sinkingDay, type Evaluation } from '../evaluation';
import { endOfSinking, type UprightResult } from '../flooding';
import { amountIn, quantity, saidIn } from '../units';
import { aligned, words } from './cells';
import type { EstimateContext } from './context';
import { sunkWords } from './dates-said';
import { asSentence } from './finding-words';
import { shownNumber } from './number-text';
import type { Column, Row, Sentence, Shown, TableRows } from './rows';
import { drawn, inUnit, isWithoutCheck, picked, stripNote, timeWords } from './sinking-moments';
import type { SinkingView } from './sinking-rows';
import { choiceTable, openingWorkTable, settlesWords, yardstickTable } from './sinking-tables';

/** The sinking: verdict, ship through it, openings to size, choices. Undefined when the screen was not run. */
export function sinkingView(context: EstimateContext): SinkingView | undefined {
  const { upright } = context.evaluation;
  const { work } = context.parts;
  const [beam, depth] = [
    work.result.number(work.takeOff.measures.beam),
    work.result.number(work.takeOff.measures.depth),
  ];
  if (upright === undefined || beam === undefined || depth === undefined) return undefined;
  const curve = upright.stages.map(stage => drawn(context, stage));
  const strip = picked(curve);
  const unit = context.measures === 'us' ? 'ft' : 'm';
  const last = Math.max(60, ...curve.map(stage => stage.t));
  return {
    sentence: sentence(context.evaluation, upright),
    verdict: upright.verdict,
    reasons: upright.reasons.map(reason => asSentence(saidIn(reason, context.measures))),
    beam,
    depth,
    strip,
    stripNote: stripNote(upright),
    curve,
    timeTicks: ticks(last / 60, 8).map(minute => ({ at: minute * 60, text: String(minute) })),
    heelTicks: ticks(
      Math.max(
        10,
        ...curve.map(stage => Math.abs(stage.heel ?? 60)),
        ...curve.map(stage => Math.abs(stage.list)),
      ),
      4,
    ).map(tick => ({ at: tick, text: String(tick) })),
    levelTicks: ticks(amountIn(quantity(depth.toFixed(3), 'm'), unit), 4).map(tick => ({
      at: amountIn(quantity(String(tick), unit), 'm'),
      text: String(tick),
    })),
    levelUnit: unit,
    stages: stageTable(upright, context),
    sizing: sizingTable(upright, context),
    choices: choiceTable(upright, context.measures),
    openingWork: openingWorkTable(context),
    yardsticks: yardstickTable(upright),
    afterDeckEdge: (upright.afterDeckEdge?.notes ?? []).map(note => saidIn(note, context.measures)),
    missingInputs: upright.missingInputs,
    settles: saidIn(settlesWords(upright), context.measures),
    choicesMessage: saidIn(upright.choices?.message ?? '', context.measures),
    caution: upright.caution,
    cannotSee: upright.cannotSee,
    words: `The ship through the sinking in ${strip.length} sections: ${strip
      .map(stage => `${stage.time}, ${stage.worst === undefined ? '' : 'heel at worst '}${stage.heelWords}`)
      .join('; ')}.`,
  };
}

function sentence(evaluation: Evaluation, upright: UprightResult): Sentence {
  const verdict: Shown = { text: `The screen says: ${upright.verdict}`, why: 'upright:verdict' };
  const heel = upright.greatestHeelDegrees;
  const lean =
    heel === undefined
      ? 'no balance below 60° at the worst'
      : `greatest heel ${shownNumber(heel.toFixed(4), 0)}° at the worst`;
  const time =
    upright.sinkMinutes === undefined
      ? ''
      : `, ${endOfSinking(upright)} in ${timeWords(upright.sinkMinutes * 60)}`;
  const sunk = sunkWords(sinkingDay(evaluation));
  return [verdict, `; ${lean}${time}.${sunk.length === 0 ? '' : ' '}`, ...sunk];
}

/** Round ticks from nothing to at least the most. */
function ticks(most: number, count: number): readonly number[] {
  const step = [1, 2, 5, 10, 15, 20, 30, 60, 120].find(size => most / size <= count) ?? 240;
  return Array.from({ length: Math.ceil(most / step) + 1 }, (_, tick) => tick * step);
}

const COLUMNS: readonly Column[] = [
  { key: 'time', title: 'Time', kind: 'words' },
  { key: 'level', title: 'Flood level', kind: 'number' },
  { key: 'gm', title: 'GM, likely', kind: 'number' },
  { key: 'heel', title: 'Heel, worst', unit: 'degrees', kind: 'number' },
  { key: 'list', title: 'List, likely', unit: 'degrees', kind: 'number' },
  { key: 'event', title: 'What happens', kind: 'words' },
];

function number(value: number | undefined, decimals: number): Shown {
  return value === undefined
    ? words('none')
    : { text: shownNumber(value.toFixed(6), decimals), why: 'upright:verdict' };
}

const NOT_JUDGED = words('not judged');

/** What the columns and the pictures show: two angles that are told apart by what is worked out with. */
const WHICH_VALUES =
  'Heel, worst: the greatest angle at which she balances at this flood level, over the range of KG; the sections are drawn at it. ' +
  'List, likely: the angle at which the flooding simulation has her at this time, with the likely values and the water where it has run. ' +
  'GM is that of the likely values. ' +
  'Once the deck is awash the check ends: the level stays at its last, and GM and heel are not judged.';

/** The moments of the sinking as a table. */
function stageTable(upright: UprightResult, context: EstimateContext): TableRows {
  const unit = context.measures === 'us' ? 'ft' : 'm';
  const columns = COLUMNS.map(column =>
    column.key === 'level' || column.key === 'gm' ? { ...column, unit } : column,
  );
  const rows = upright.stages.map((stage, place): Row => ({
    id: String(place),
    kind: 'line',
    cells: {
      time: words(timeWords(stage.t)),
      level: { text: inUnit(context, stage.level), why: 'upright:verdict' },
      gm: isWithoutCheck(stage) ? NOT_JUDGED : { text: inUnit(context, stage.gm), why: 'upright:verdict' },
      heel: isWithoutCheck(stage) ? NOT_JUDGED : number(stage.heel, 1),
      list: number(stage.list, 1),
      event: words(stage.event ?? ''),
    },
  }));
  return {
    id: 'stages',
    caption: 'The sinking by time',
    columns,
    rows: aligned(columns, rows),
    note: [WHICH_VALUES],
  };
}

const SIZING: readonly Column[] = [
  { key: 'title', title: 'Compartment', kind: 'words' },
  { key: 'openings', title: 'Openings', kind: 'number' },
  { key: 'area', title: 'Area', kind: 'number' },
  { key: 'cut', title: 'Cut', kind: 'number' },
  { key: 'vents', title: 'Vents', kind: 'number' },
  { key: 'minutes', title: 'Fills in', unit: 'min', kind: 'number' },
  { key: 'note', title: 'Note', kind: 'words', wide: true },
];

/** What each compartment needs so that it fills in time. */
function sizingTable(upright: UprightResult, context: EstimateContext): TableRows {
  const isUs = context.measures === 'us';
  const columns = SIZING.map(column =>
    column.key === 'area'
      ? { ...column, unit: isUs ? 'sq ft' : 'm²' }
      : column.key === 'cut'
        ? { ...column, unit: isUs ? 'ft' : 'm' }
        : column,
  );
  const why = 'upright:verdict';
  const rows = upright.sizing.map((one): Row => ({
    id: one.compartment,
    kind: 'line',
    subject: one.compartment,
    cells: {
      title: words(compartmentTitle(context.evaluation.project, one.compartment)),
      openings: { text: String(one.openings), why },
      area: { text: inUnit(context, one.area, 'm2'), why },
      cut: { text: inUnit(context, one.cutLength), why },
      vents: { text: String(one.ventCount), why },
      minutes: number(one.fillMinutes, 1),
      note: words(saidIn(one.note ?? '', context.measures)),
    },
  }));
  return { id: 'sizing', caption: 'Openings for even flooding', columns, rows: aligned(columns, rows) };
}
