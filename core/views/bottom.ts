import { known, upperFirst } from '../base';
import { dayOf } from '../calendar';
import type { EstimateParts } from '../evaluation';
import type { Money } from '../money';
import type { EstimateContext } from './context';
import { dollarChange, dollars, roundText, shownNumber, tenthsText } from './number-text';
import type { OpenFindings } from './open-findings';
import { dateWords } from './schedule-axis';
import type { BottomCell } from './rows';
import type { ShownMoney } from './shown-money';
import { isStartingShip } from '../project';
import { roundedDollars } from './whole-dollars';

/** The figures of the bottom line as amounts, to tell how an edit moved them. */
export interface BottomAmounts {
  readonly total: number | undefined;
  readonly finish: number | undefined;
  /** In tenths of a per cent. */
  readonly unchecked: number | undefined;
  /** Absent until all of them are known. */
  readonly findings: number | undefined;
}

export interface Bottom {
  readonly cells: readonly BottomCell[];
  readonly amounts: BottomAmounts;
}

/** The bottom line. A figure whose module is not there is not shown at all. */
export function bottomLine(context: EstimateContext, money: ShownMoney, open: OpenFindings): Bottom {
  const { parts } = context;
  const total = money.total('total');
  const { finish } = parts.schedule;
  const share = context.summary?.uncheckedShare;
  const unchecked = share === undefined ? undefined : Number(roundText((share * 1000).toFixed(4), 0));
  const cells: BottomCell[] = [
    totalCell(context, total),
    ...budgetCell(context),
    {
      key: 'finish',
      label: 'Finish',
      value:
        finish === undefined
          ? { text: 'no schedule yet', absent: true }
          : { text: dateWords(finish), why: 'schedule:finish' },
    },
    ...uprightCell(context),
    ...(unchecked === undefined
      ? []
      : [
          {
            key: 'unchecked',
            label: 'Not yet checked',
            value: { text: `${tenthsText(unchecked)} %`, why: 'basis:unchecked' },
            beside: 'of the total',
          },
        ]),
    findingsCell(open),
  ];
  return {
    cells,
    amounts: {
      total,
      finish: finish === undefined ? undefined : dayOf(finish),
      unchecked,
      findings: open.standing === 'known' ? open.findings.length : undefined,
    },
  };
}

/** How many findings are open; those of the grant budget are of the plan before until it is made anew. */
function findingsCell({ findings, standing, blocks }: OpenFindings): BottomCell {
  const frame = { key: 'findings', label: 'Findings' } as const;
  if (standing === 'not known')
    return { ...frame, value: { text: SETTLING, absent: true }, isSettling: true };
  const value = { text: `${findings.length} open` };
  if (standing === 'held') return { ...frame, value, beside: SETTLING, isSettling: true };
  return { ...frame, value, ...(blocks ? { beside: 'some withhold a figure' } : {}) };
}

function totalCell({ parts, evaluation }: EstimateContext, total: number | undefined): BottomCell {
  const label = isStartingShip(evaluation.project) ? 'Total of the starting ship' : 'Total';
  if (total !== undefined)
    return { key: 'total', label, value: { text: dollars(total * 100), why: 'sums/total' } };
  const soFar = parts.money === undefined ? undefined : parts.money.result.money(parts.money.sums.knownSoFar);
  if (soFar === undefined || soFar.cents === 0)
    return { key: 'total', label: 'Total', value: { text: 'no total yet', absent: true } };
  return {
    key: 'total',
    label: 'Known so far, not the total',
    value: { text: dollars(soFar.cents), why: 'sums/known-so-far', accent: true },
  };
}

/** What stands beside a figure, or in its place, until schedule and upright screen are settled. */
const SETTLING = 'settling';

/**
 * The bottom line of an evaluation that is not settled: the new total, at the dates held from the plan before where the
 * plan changed, the finish where it was scheduled anew, and everything that is not known yet in words.
 * @param before the cells shown so far, in their order.
 */
export function settlingLine(parts: EstimateParts, before: readonly BottomCell[]): readonly BottomCell[] {
  const told = new Map([...settlingAmounts(parts), ...settlingFinish(parts)]);
  const beside = parts.datesHeld === true ? 'dates settling' : SETTLING;
  return before.map(cell => {
    const text = told.get(cell.key);
    const { verdict: _verdict, beside: _beside, ...rest } = cell;
    if (text === undefined) return { ...rest, value: { text: SETTLING, absent: true }, isSettling: true };
    return { ...rest, value: { ...cell.value, text }, beside, isSettling: true };
  });
}

function settlingAmounts({ money }: EstimateParts): [string, string][] {
  if (money === undefined) return [];
  const amounts: [string, Money | undefined][] = [
    ['total', money.result.money(money.sums.total)],
    ['budget', money.result.money(money.sums.budget)],
  ];
  return amounts.flatMap(([key, amount]) =>
    amount === undefined ? [] : [[key, dollars(roundedDollars(amount.cents) * 100)]],
  );
}

/** The finish of a plan that was scheduled: dates held from another plan are not its own. */
function settlingFinish({ schedule: { finish }, datesHeld }: EstimateParts): [string, string][] {
  return finish === undefined || datesHeld === true ? [] : [['finish', dateWords(finish)]];
}

/** The bottom line of a document just opened: what the upright screen adds to is not told before it. */
export function unscreenedLine(cells: readonly BottomCell[]): readonly BottomCell[] {
  return cells.map(({ key, label, value, ...rest }) =>
    key === 'findings'
      ? { key, label, value: { text: SETTLING, absent: true }, isSettling: true }
      : { key, label, value, ...rest },
  );
}

/** The verdict of the upright screen, when it was run. */
function uprightCell({ evaluation }: EstimateContext): BottomCell[] {
  const { upright } = evaluation;
  if (upright === undefined) return [];
  const heel = upright.greatestHeelDegrees;
  const value = {
    text: upperFirst(upright.verdict),
    why: 'upright:verdict',
  };
  const beside = heel === undefined ? 'screening' : `heel ${shownNumber(heel.toFixed(4), 0)}°, screening`;
  return [{ key: 'upright', label: 'Upright screen', value, beside, verdict: upright.verdict }];
}

/** Total and contingency, when a contingency is set. */
function budgetCell({ summary }: EstimateContext): BottomCell[] {
  const budget = summary?.budget;
  if (budget === undefined || summary?.contingency === undefined || summary.contingency.cents === 0)
    return [];
  return [
    { key: 'budget', label: 'With contingency', value: { text: dollars(budget.cents), why: 'sums/budget' } },
  ];
}

/** How the bottom line moved, by cell and in one sentence; cells that did not move say so only when another did. */
export function bottomChanges(
  before: BottomAmounts | undefined,
  after: BottomAmounts,
): { changes: Record<string, string>; words: string } {
  if (before === undefined) return { changes: {}, words: '' };
  const moved: Record<string, string> = {};
  if (before.total !== undefined && after.total !== undefined)
    moved['total'] = dollarChange((after.total - before.total) * 100);
  if (before.finish !== undefined && after.finish !== undefined)
    moved['finish'] = dayChange(after.finish - before.finish);
  if (before.unchecked !== undefined && after.unchecked !== undefined)
    moved['unchecked'] = signed(after.unchecked - before.unchecked, tenthsText, ' points');
  if (before.findings !== undefined && after.findings !== undefined)
    moved['findings'] = signed(after.findings - before.findings, String, '');
  const changed = Object.entries(moved).filter(([, text]) => text !== NONE);
  if (changed.length === 0) return { changes: {}, words: 'Worked out; the bottom line did not move.' };
  return {
    changes: moved,
    words: `Worked out: ${changed.map(([key, text]) => `${known(LABELS, key)} ${text}`).join(', ')}.`,
  };
}

const NONE = 'no change';
const LABELS: ReadonlyMap<string, string> = new Map([
  ['total', 'total'],
  ['finish', 'finish'],
  ['unchecked', 'share not yet checked'],
  ['findings', 'findings'],
]);

function signed(amount: number, text: (amount: number) => string, unit: string): string {
  if (amount === 0) return NONE;
  return `${amount > 0 ? '+' : '\u2212'}${text(Math.abs(amount))}${unit}`;
}

function dayChange(days: number): string {
  const count = Math.abs(days);
  return signed(days, String, count === 1 ? ' calendar day' : ' calendar days');
}
