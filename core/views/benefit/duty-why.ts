import { lowerFirst, sourceWithYear } from '../../base';
import { DAYS_A_YEAR, type Obligation } from '../../benefit';
import { idOf } from '../../sheet';
import type { EstimateContext } from '../context';
import type { WhyRows } from '../rows';
import { moneyLines } from '../shown-money';
import { benefitId, benefitOf } from './names';
import { money, row, told } from './told';

/** The years in which an obligation falls due, in words. */
export function yearsOf({ firstYear, years }: Obligation): string {
  return years === 1 ? `in year ${firstYear}` : `years ${firstYear} to ${firstYear + years - 1}`;
}

/** The yearly cost of an obligation, the year it falls due first and for how many, and where each comes from. */
export function dutyWhy(
  context: EstimateContext,
  id: string,
  duty: string,
  field: string,
): WhyRows | undefined {
  const { input, obligations } = benefitOf(context.evaluation);
  const one = input?.obligations.find(each => each.id === duty);
  if (one === undefined) return undefined;
  const isLine = obligations?.lineIds.includes(duty) === true;
  if (field === 'first') return firstWhy(one, id, isLine);
  if (field === 'years') return yearsWhy(context, one, id, isLine);
  const { basis } = one.basis;
  const source = sourceWithYear(one.basis);
  const years = { text: String(one.years), unit: 'years', why: benefitId('duty', duty, 'years') };
  const title = `A year of: ${lowerFirst(one.title)}`;
  const total = moneyLines(context).find(line => line.id === duty)?.total;
  return isLine && total !== undefined
    ? told(id, title, money(one.costPerYear), 'A line of the estimate, spread evenly over its years.', [
        row('=', { ...money(total, `lines/${duty}/total`), basis, source }, 'the line'),
        row('÷', years, `the line, ${yearsOf(one)}`),
      ])
    : told(
        id,
        title,
        money(one.costPerYear),
        'Beside the estimate: it is in no total and in no grant budget.',
        [row('=', { ...money(one.costPerYear), basis, source }, `a year, ${yearsOf(one)}`)],
      );
}

function firstWhy(one: Obligation, id: string, isLine: boolean): WhyRows {
  const value = { text: String(one.firstYear) };
  const words = isLine
    ? 'A line of the estimate that follows the sinking is taken to fall due from the first year on.'
    : 'Year 1 is the first year after the sinking.';
  return told(id, `First year of: ${lowerFirst(one.title)}`, value, words, [
    row('=', { ...value, basis: one.basis.basis, source: sourceWithYear(one.basis) }, 'first year due'),
  ]);
}

function yearsWhy({ parts }: EstimateContext, one: Obligation, id: string, isLine: boolean): WhyRows {
  const value = { text: String(one.years), unit: one.years === 1 ? 'year' : 'years' };
  const title = `Years of: ${lowerFirst(one.title)}`;
  const { basis } = one.basis;
  const source = sourceWithYear(one.basis);
  const days = parts.planned.find(plan => plan.item.id === one.id)?.days;
  if (!isLine || days === undefined)
    return told(id, title, value, 'For so many years it falls due.', [
      row('=', { ...value, basis, source }, 'for so many years'),
    ]);
  return told(id, title, value, 'The days it lasts in the schedule as whole years, at least one.', [
    row(
      '=',
      { text: String(days), unit: 'days', why: idOf(parts.work.items.columns.days, one.id) },
      'it lasts in the schedule',
    ),
    row(
      '÷',
      { text: String(DAYS_A_YEAR), unit: 'days', basis: 'common practice', source: 'Julian year' },
      'days of a year',
    ),
  ]);
}
