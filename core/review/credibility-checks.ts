import { dollars, monthsFrom, sumCents } from '../cash-flow';
import { inHundred } from '../units';
import { isBig, overLines } from './cost-checks';
import { limitOf } from './data';
import { growthView } from './growth';
import { likeBand, likeHulls } from './history';
import { cannotTell, met, notMet, type Assessment, type CheckContext, type Checks } from './standing';

/** Checks of upkeep and credibility of the estimate. @source GAO-20-195G, practices in our own words. */
export const CREDIBILITY_CHECKS: Checks<
  | 'refreshed'
  | 'variances'
  | 'lessons'
  | 'history'
  | 'sensitivity'
  | 'uncertainty'
  | 'cross-checks'
  | 'independent'
  | 'contingency-level'
  | 'contingency-growth'
> = {
  refreshed: ({ input, data }) => {
    if (input.statusDate === undefined) return cannotTell('no status date is given');
    const age = monthsFrom(input.madeOn.slice(0, 7), input.statusDate.slice(0, 7));
    const ground = `the estimate is ${age} month${age === 1 ? '' : 's'} old`;
    return age > limitOf(data, 'oldest-estimate') ? notMet(ground) : met(ground);
  },
  variances: ({ input }) => {
    const { earlier, total } = input;
    if (earlier === undefined) return cannotTell('whether there was an earlier estimate is not said');
    if (earlier === 'first') return met('this is the first estimate');
    const unexplained = total - earlier.total - sumCents(earlier.steps.map(step => step.amount));
    if (unexplained === 0)
      return met(`every dollar since the last estimate is in ${earlier.steps.length} named steps`);
    return notMet(`${dollars(unexplained)} of the change since the last estimate is not explained`);
  },
  lessons: checkLessons,
  history: checkHistory,
  sensitivity: ({ input, data }) => {
    const count = input.drivers?.length;
    if (count === undefined) return notMet('no ranking of drivers was made');
    const ground = `${count} drivers are ranked`;
    return count < limitOf(data, 'fewest-drivers') ? { ...notMet(ground), standing: 'partly' } : met(ground);
  },
  uncertainty: context => {
    const { planPercentile } = context.input;
    if (planPercentile === undefined) return notMet('no simulation was run');
    return overLines(
      context,
      line => line.total !== 0 && !line.isRanged,
      line => `${line.title} has no range around its amount`,
      `every line has a range; the plan figure is ${inHundred(planPercentile / 100)} in 100`,
    );
  },
  'cross-checks': context =>
    overLines(
      context,
      line => isBig(line, context) && !line.isCrossChecked,
      line => `${line.title}, ${dollars(line.total)}, is not checked a second way`,
      'every big line is checked a second way',
    ),
  independent: ({ input, data }) => {
    const { independent, total } = input;
    if (!independent) return notMet('nobody else has estimated it');
    const off = Math.abs(independent.total - total) / total;
    const ground = `an independent estimate of ${dollars(independent.total)} is ${(off * 100).toFixed(1)} per cent off`;
    const isExplained = independent.explanation !== undefined && independent.explanation.trim() !== '';
    if (off > limitOf(data, 'independent-difference') && !isExplained)
      return { ...notMet(`${ground}, and the difference is not explained`), standing: 'partly' };
    return met(ground);
  },
  'contingency-level': checkLevel,
  'contingency-growth': checkGrowth,
};

function checkLessons({ input }: CheckContext): Assessment {
  const done = (input.schedule?.activities ?? []).filter(one => one.actualFinish !== undefined);
  if (done.length === 0) return met('no work is finished yet, so there is nothing to learn from');
  if (input.lessons.length === 0)
    return notMet(
      `${done.length} activities are finished, and nothing is written down for the next estimate`,
    );
  return met(`lessons written down: ${input.lessons.join('; ')}`);
}

function checkLevel({ input, data }: CheckContext): Assessment {
  const { budgetPercentile, costAtP80, total, contingency } = input;
  if (budgetPercentile === undefined || contingency === undefined)
    return cannotTell('the contingency was not held against a simulation');
  const atP80 =
    costAtP80 === undefined
      ? ''
      : `; 80 in 100 need a contingency of ${dollars(Math.max(0, costAtP80 - total))}`;
  const ground = `the estimate with its contingency of ${dollars(contingency)} holds in ${Math.floor(budgetPercentile)} of 100 runs${atP80}`;
  if (budgetPercentile >= 100 * limitOf(data, 'budget-confidence')) return met(ground);
  const isBelowMiddle = budgetPercentile < 100 * limitOf(data, 'middle-confidence');
  return isBelowMiddle ? notMet(ground) : { ...notMet(ground), standing: 'partly' };
}

function checkHistory({ input, data, growth }: CheckContext): Assessment {
  const like = likeHulls(input, growth, limitOf(data, 'like-length'));
  const band = likeBand(like, data);
  if (band === undefined) return cannotTell('no past hull of like class and length is on record');
  const named = like.map(hull => `${hull.hullClass}, ${hull.sunkYear}: ${dollars(hull.today)}`).join('; ');
  if (input.total >= band.low && input.total <= band.high)
    return band.isWide
      ? cannotTell(
          `${dollars(input.total)} lies between ${dollars(band.low)} and ${dollars(band.high)}, which is too wide to tell much (${named})`,
        )
      : met(`${dollars(input.total)} beside ${named}`);
  const side = input.total < band.low ? 'below' : 'above';
  return notMet(`${dollars(input.total)} is far ${side} the past hulls alike (${named})`);
}

function checkGrowth({ input, growth }: CheckContext): Assessment {
  if (input.contingency === undefined) return cannotTell('the contingency is absent');
  const view = growthView(input.total, input.contingency, growth);
  const ground = `the budget is ${view.factor.toFixed(2)} times the estimate; past hulls grew by ${view.least} to ${view.most}, the middle is ${view.median}`;
  if (!view.isBelowMedian) return met(ground);
  return view.factor < view.leastGrowth ? notMet(ground) : { ...notMet(ground), standing: 'partly' };
}
