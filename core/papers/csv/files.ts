import { dollarsOf, fromCents, type Money } from '../../money';
import {
  ELEMENTS,
  summarise,
  type EstimateParts,
  type EstimateSummary,
  type Evaluation,
} from '../../evaluation';
import { documentHash } from '../document-hash';
import { inputCells, type WholeEvaluation } from '../take-back';
import { unitShown } from '../unit-shown';
import { INPUT_HEADS, stampText } from '../workbook/inputs';
import { monthlySpending, type MonthOfSpending } from '../monthly-spending';
import { csvFile, type CsvCell } from './rows';

/** One CSV file with the end of its name. */
export interface NamedCsv {
  readonly name: 'lines' | 'activities' | 'cash' | 'inputs';
  readonly text: string;
}

/**
 * The CSV files of a scenario: lines, activities, spending by month when every line is known, and the figures that may
 * be changed and taken back.
 */
export function csvFiles(evaluation: Evaluation): NamedCsv[] {
  const { estimate } = evaluation;
  if (estimate?.money === undefined) return [];
  const parts = { ...estimate, money: estimate.money };
  const summary = summarise(parts);
  const months = monthlySpending(parts, summary);
  return [
    { name: 'lines', text: csvFile(lineRows(summary)) },
    { name: 'activities', text: csvFile(activityRows(parts)) },
    ...(months === undefined ? [] : [{ name: 'cash' as const, text: csvFile(cashRows(months)) }]),
    { name: 'inputs', text: csvFile(inputRows({ ...evaluation, estimate: parts })) },
  ];
}

/** The rows of the sheet of inputs, with the paper they belong to in the last column of the first. */
function inputRows(evaluation: WholeEvaluation): CsvCell[][] {
  const paper = stampText({
    document: documentHash(evaluation.project),
    scenario: evaluation.scenario.id,
    dated: evaluation.today,
  });
  const [kind, figure, amount, unit] = INPUT_HEADS;
  const heads = [
    kind,
    figure,
    amount,
    unit,
    'Basis of a new amount',
    'Source of a new amount',
    'Key',
    'Paper',
  ];
  return [
    heads,
    ...inputCells(evaluation).map((cell, i): CsvCell[] => [
      cell.kind,
      cell.title,
      cell.value === undefined ? undefined : { value: Number(cell.value) },
      unitShown(cell.unit),
      '',
      '',
      cell.key,
      i === 0 ? paper : '',
    ]),
  ];
}

function lineRows(summary: EstimateSummary): CsvCell[][] {
  const heading = ['id', 'stage', 'title', 'work', 'quantity', 'unit', 'hours'];
  return [
    [...heading, ...ELEMENTS.map(element => `${element}, USD`), 'total, USD'],
    ...summary.lines.map(line => [
      line.id,
      line.stage,
      line.title,
      line.contract ? 'contract' : 'owner',
      plain(line.quantity),
      line.unit === '1' ? '' : line.unit,
      plain(line.hours),
      ...ELEMENTS.map(element => money(line.elements[element])),
      money(line.total),
    ]),
  ];
}

function activityRows({ schedule, items }: EstimateParts): CsvCell[][] {
  const stages = new Map<string, string>(items.map(item => [item.id, item.stage]));
  const heading = ['id', 'stage', 'title', 'start', 'finish', 'work days', 'total float, work days'];
  return [
    [...heading, 'holds the finish', 'crew, people'],
    ...schedule.activities.map(activity => [
      activity.id,
      stages.get(activity.id),
      activity.title,
      activity.start,
      activity.finish,
      plain(activity.workDays),
      plain(activity.totalFloat),
      activity.critical ? 'yes' : 'no',
      plain(activity.crewSize),
    ]),
  ];
}

function cashRows(months: readonly MonthOfSpending[]): CsvCell[][] {
  return [
    ['month', 'spending, USD', 'spending so far, USD'],
    ...months.map(({ month, amount, cumulative }) => [
      month,
      money(fromCents(amount)),
      money(fromCents(cumulative)),
    ]),
  ];
}

function plain(value: number | undefined): CsvCell {
  return value === undefined ? undefined : { value };
}

function money(amount: Money | undefined): CsvCell {
  return amount === undefined ? undefined : { value: dollarsOf(amount), decimals: 2 };
}
