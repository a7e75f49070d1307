import type { RiskView } from '../../evaluation';
import { dateWords } from '../schedule-axis';
import { dayNumber, moneyTicks, monthTicks } from './axis';
import type { CurveMark, CurvePicture } from './rows';
import { inHundred, simulatedDollars } from './words';

/** The share of the runs up to which a value of a curve reaches. */
function shareAt(points: readonly { readonly at: number; readonly share: number }[], at: number): number {
  return points.findLast(point => point.at <= at)?.share ?? 0;
}

/** The value of a curve at a share of the runs. */
export function valueAt(
  points: readonly { readonly at: number; readonly share: number }[],
  share: number,
): number | undefined {
  return points.find(point => point.share >= share - 1e-9)?.at;
}

/** Cost against the share of runs that stay within it, with plan, middle, confidence asked for and budget. */
export function costCurve(view: RiskView): CurvePicture {
  const points = view.cost.curve.map(({ share, value }) => ({ share, at: value }));
  const { plan, planShare } = view.cost;
  const { budget } = view.contingency;
  const marks: (CurveMark | undefined)[] = [
    plan === undefined
      ? undefined
      : { id: 'plan', at: plan, share: planShare ?? 0, text: `plan ${simulatedDollars(plan)}` },
    mark(points, 'p50', 0.5, value => `P50 ${simulatedDollars(value)}`),
    mark(
      points,
      'chosen',
      view.confidence,
      value => `P${inHundred(view.confidence)} ${simulatedDollars(value)}`,
    ),
    budget === undefined
      ? undefined
      : {
          id: 'limit',
          at: budget,
          share: shareAt(points, budget),
          text: `budget ${simulatedDollars(budget)}`,
        },
  ];
  const kept = marks.filter(one => one !== undefined);
  const ends = [...points.map(point => point.at), ...kept.map(one => one.at)];
  return {
    title: 'Cost, $ million',
    points,
    ticks: moneyTicks(...withRoom(ends)),
    marks: kept,
    words: `Cost of the runs as a rising curve. ${kept.map(one => one.text).join(', ')}.`,
  };
}

/** Finish against the share of runs that end by it, with plan, middle, confidence asked for and the last date. */
export function finishCurve(view: RiskView): CurvePicture {
  const points = view.finish.curve.map(({ share, date }) => ({ share, at: dayNumber(date) }));
  const { plan, planShare } = view.finish;
  const limit = view.deadline?.date ?? view.grantPeriod?.end;
  const dated = (lead: string) => (at: number) => `${lead} ${dateOf(view, at)}`;
  const marks: (CurveMark | undefined)[] = [
    plan === ''
      ? undefined
      : { id: 'plan', at: dayNumber(plan), share: planShare ?? 0, text: `plan ${dateWords(plan)}` },
    mark(points, 'p50', 0.5, dated('P50')),
    mark(points, 'chosen', view.confidence, dated(`P${inHundred(view.confidence)}`)),
    limit === undefined
      ? undefined
      : {
          id: 'limit',
          at: dayNumber(limit),
          share: shareAt(points, dayNumber(limit)),
          text: `${view.deadline === undefined ? 'end of the grant' : 'last date'} ${dateWords(limit)}`,
        },
  ];
  const kept = marks.filter(one => one !== undefined);
  const ends = [...points.map(point => point.at), ...kept.map(one => one.at)];
  return {
    title: 'Finish',
    points,
    ticks: monthTicks(...withRoom(ends)),
    marks: kept,
    words: `Finish of the runs as a rising curve. ${kept.map(one => one.text).join(', ')}.`,
  };
}

/** Part of the axis left free before the curve, for the name of the plan. */
const ROOM = 0.12;

function withRoom(ends: readonly number[]): [least: number, most: number] {
  const [least, most] = [Math.min(...ends), Math.max(...ends)];
  return [Math.floor(least - (most - least) * ROOM), most];
}

function dateOf({ finish }: RiskView, day: number): string {
  const date = finish.curve.find(point => dayNumber(point.date) === day)?.date;
  return date === undefined ? '' : dateWords(date);
}

function mark(
  points: CurvePicture['points'],
  id: CurveMark['id'],
  share: number,
  text: (value: number) => string,
): CurveMark | undefined {
  const at = valueAt(points, share);
  return at === undefined ? undefined : { id, at, share, text: text(at) };
}
