import { openingWork, type OpeningWork } from '../evaluation';
import type { UprightChoiceResult, UprightResult } from '../flooding';
import { saidIn } from '../units';
import { aligned, NOT_APPLYING, words } from './cells';
import type { EstimateContext } from './context';
import { exactIn, unitWords, type Measures } from './measures';
import { decimalsFor, dollarChange, shownNumber } from './number-text';
import type { Column, Row, Shown, TableRows } from './rows';

const WHY = 'upright:verdict';

function number(value: number | undefined, decimals: number, otherwise: string): Shown {
  return value === undefined ? words(otherwise) : { text: shownNumber(value.toFixed(6), decimals), why: WHY };
}

function signed(value: number | undefined, decimals: number): Shown {
  if (value === undefined) return NOT_APPLYING;
  const text = shownNumber(value.toFixed(6), decimals);
  return { text: value > 0 ? `+${text}` : text, why: WHY };
}

const CHOICES: readonly Column[] = [
  { key: 'title', title: 'Choice', kind: 'words' },
  { key: 'cost', title: 'Direct cost', unit: '$', kind: 'number' },
  { key: 'days', title: 'Work days', kind: 'number' },
  { key: 'heel', title: 'Greatest heel', unit: 'degrees', kind: 'number' },
  { key: 'change', title: 'Change', unit: 'degrees', kind: 'number' },
  { key: 'list', title: 'List', unit: 'degrees', kind: 'number' },
  { key: 'uneven', title: 'Unevenness', unit: '%', kind: 'number' },
  { key: 'worst', title: 'At worst', kind: 'words' },
  { key: 'verdict', title: 'Verdict', kind: 'words' },
];

/**
 * The plan as it stands, each choice against it, and the cheapest set where there is one: direct cost, work days,
 * greatest heel, list of the simulation, evenness. Row ids: `now`, the id of the choice, `set`.
 */
export function choiceTable({ choices }: UprightResult, measures: Measures): TableRows {
  const rows =
    choices === undefined
      ? []
      : [
          choiceRow('now', choices.now, measures),
          ...choices.each.map(choice => choiceRow(choice.ids.join(' '), choice, measures)),
          ...(choices.cheapest !== undefined && choices.cheapest.ids.length > 1
            ? [choiceRow('set', choices.cheapest, measures)]
            : []),
        ];
  return {
    id: 'choices',
    caption: 'What would widen the margin',
    columns: CHOICES,
    rows: aligned(CHOICES, rows),
  };
}

function choiceRow(id: string, choice: UprightChoiceResult, measures: Measures): Row {
  const isNow = choice.ids.length === 0;
  const days = choice.days.toFixed(3);
  return {
    id,
    kind: 'line',
    cells: {
      title: words(isNow ? 'The plan as it stands' : choice.titles.join(' and ')),
      cost: isNow
        ? NOT_APPLYING
        : { text: dollarChange(Math.round(choice.cost * 100)).replace('$', ''), why: WHY },
      days: isNow || choice.days === 0 ? NOT_APPLYING : signed(choice.days, decimalsFor(days)),
      heel: number(choice.greatestHeelDegrees, 1, 'no balance'),
      change: isNow ? NOT_APPLYING : signed(choice.heelChangeDegrees, 1),
      list: number(choice.peakListDegrees, 1, 'not run'),
      uneven: number(100 * choice.unevenness, 1, 'not run'),
      worst: words(saidIn(choice.worst, measures)),
      verdict: words(choice.verdict),
    },
  };
}

const WORK: readonly Column[] = [
  { key: 'title', title: 'Work', kind: 'words' },
  { key: 'quantity', title: 'Quantity', kind: 'number' },
  { key: 'unit', title: 'Unit', kind: 'words' },
  { key: 'hours', title: 'Hours', kind: 'number' },
  { key: 'crews', title: 'Crews', kind: 'number' },
  { key: 'days', title: 'Work days', kind: 'number' },
  { key: 'cost', title: 'Direct cost', unit: '$', kind: 'number' },
];

/** Work items that follow from the openings, as the estimate has them. */
export function openingWorkTable({ parts, measures }: EstimateContext): TableRows {
  const rows = openingWork(parts).map((one): Row => openingRow(one, measures));
  return {
    id: 'opening-work',
    caption: 'Work that follows from the openings',
    columns: WORK,
    rows: aligned(WORK, rows),
  };
}

function openingRow(one: OpeningWork, measures: Measures): Row {
  const quantity = exactIn(one.quantity.toFixed(6), one.unit, measures);
  return {
    id: one.id,
    kind: 'line',
    subject: one.id,
    cells: {
      title: words(one.title),
      quantity: { text: shownNumber(quantity.value, 1), why: WHY },
      unit: words(one.unit === 'each' ? 'each' : unitWords(quantity.unit)),
      hours: number(one.hours, 1, 'none'),
      crews: number(one.crews, 0, 'none'),
      days: number(one.workDays, 0, 'none'),
      cost: number(one.cost, 0, 'none'),
    },
  };
}

const YARDSTICKS: readonly Column[] = [
  { key: 'rule', title: 'Rule', kind: 'words' },
  { key: 'condition', title: 'Measured', kind: 'words' },
  { key: 'asks', title: 'Asks for', kind: 'words', wide: true },
  { key: 'found', title: 'Has', kind: 'number' },
  { key: 'unit', title: 'Unit', kind: 'words' },
  { key: 'meets', title: 'Met', kind: 'words' },
];

/** Values of public rules beside those of the ship: context, never an approval. */
export function yardstickTable({ yardsticks }: UprightResult): TableRows {
  const rows = yardsticks.map((one, at): Row => ({
    id: String(at),
    kind: 'line',
    cells: {
      rule: words(one.rule),
      condition: words(one.condition),
      asks: words(one.asks),
      found: number(one.found, 2, 'no balance'),
      unit: words(one.unit === '1' ? '' : one.unit),
      meets: words(one.meets ? 'yes' : 'no'),
    },
  }));
  return {
    id: 'yardsticks',
    caption: 'Yardsticks of public rules, as context: no approval',
    columns: YARDSTICKS,
    rows: aligned(YARDSTICKS, rows),
  };
}

/** The one measurement that would settle "cannot tell", with what it costs; nothing where the verdict stands. */
export function settlesWords({ settles }: UprightResult): string {
  if (settles === undefined) return '';
  const { measurement, why, cost, days } = settles;
  const price =
    cost === undefined || days === undefined
      ? ''
      : ` It costs ${dollarChange(Math.round(cost * 100)).replace('+', '')} and takes ${days} work days.`;
  return `What would settle it: ${measurement}. ${why}${price}`;
}
