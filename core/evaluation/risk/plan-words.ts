import { evenlySafe, type GapPart, type PlanGap, type SimulationResult } from '../../risk';

/** The budget and the date that hold together with a confidence, and that in words. */
export function safeView(result: SimulationResult, confidence: number, date: (day: number) => string) {
  const point = evenlySafe(result, confidence);
  if (point === undefined) return undefined;
  const finish = date(point.finish);
  const sentence = `${Math.round(100 * point.joint)} in 100 runs end inside ${dollars(point.budget)} and by ${finish}.`;
  return { budget: point.budget, date: finish, joint: point.joint, sentence };
}

/** Why the mean of the runs is not the plan, in words: the plan has every figure at its likely value. */
export function gapSentence({ whole, events, drivers, ranges, rest }: PlanGap): string {
  const part = ({ cost, days }: GapPart, what: string) => `${signed(cost)} and ${dayWords(days)} by ${what}`;
  return (
    'The plan takes every figure at its likely value, no event, and the usual allowance for weather. ' +
    `The runs cost ${amount(Math.abs(whole.cost))} ${whole.cost < 0 ? 'less' : 'more'} in the mean and end ` +
    `${Math.abs(Math.round(whole.days))} calendar days ${whole.days < 0 ? 'earlier' : 'later'}: ` +
    `${part(ranges, 'ranges that reach further up than down')}, ` +
    `${part(drivers, 'drivers')}, ${part(events, 'events of the register')}, ` +
    `${part(rest, 'waiting for weather and what follows from it')}. ` +
    'Likely values seldom all come true at once: that is why the plan holds in so few runs.'
  );
}

function dollars(amount: number): string {
  return amount.toLocaleString('en-US', { style: 'currency', currency: 'USD', maximumFractionDigits: 0 });
}

/** To the nearest thousand: a mean of a few thousand runs is not known better. */
function amount(cost: number): string {
  return dollars(Math.round(cost / 1000) * 1000);
}

function signed(cost: number): string {
  return `${cost < 0 ? '' : '+'}${amount(cost)}`;
}

function dayWords(days: number): string {
  const whole = Math.round(days);
  return `${whole < 0 ? '' : '+'}${whole} calendar day${Math.abs(whole) === 1 ? '' : 's'}`;
}
