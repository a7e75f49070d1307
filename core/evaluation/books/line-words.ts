import { lowerFirst, weakerBasis, type Basis } from '../../base';
import { idOf, why, type WhyStep } from '../../sheet';
import type { MoneySheet } from '../../estimate';
import { converted, countedUnit, decimalsFor, roundText, thousandsApart, unitFor } from '../../units';
import type { EstimateLine } from '../summary';

/** Where a line's figures come from, in the words of the givens behind it. */
export interface LineWords {
  readonly basis: Basis;
  readonly source: string;
  readonly year?: number;
  /** The sources of the line's own rates, or of the quote in their place: not of the quantity that they are multiplied by. */
  readonly rateSource?: string;
  /** The given that the basis is of, with its value: what is assumed where nobody has checked it. */
  readonly given?: string;
}

const KNOWN = new WeakMap<MoneySheet, Map<string, LineWords>>();

/** The weakest basis of a line's elements, and the source of the first given of that basis behind its direct cost. */
export function lineWords(line: EstimateLine, money: MoneySheet): LineWords {
  const ofSheet = KNOWN.get(money) ?? new Map<string, LineWords>();
  KNOWN.set(money, ofSheet);
  const words = ofSheet.get(line.id) ?? findWords(line, money);
  ofSheet.set(line.id, words);
  return words;
}

function findWords(line: EstimateLine, money: MoneySheet): LineWords {
  const basis = Object.values(line.bases).reduce<Basis | undefined>(
    (weakest, one) => (weakest === undefined ? one : weakerBasis(weakest, one)),
    undefined,
  );
  if (basis === undefined) return { basis: 'published', source: 'nothing is spent on this line' };
  const steps = [...why(money.result, idOf(money.lines.columns.direct, line.id)).steps.values()];
  const rateSource = ratesOf(line.id, steps);
  const rates = rateSource === '' ? {} : { rateSource };
  const step = steps.find(({ given }) => given?.basis === basis && given.source !== 'the calendar');
  if (step?.given === undefined) return { basis, source: 'the rate book', ...rates };
  const { source, year } = step.given;
  const unit = step.unit === '1' ? '' : ` ${step.unit}`;
  return {
    basis,
    source,
    ...(year !== undefined && { year }),
    ...rates,
    given: `${step.title}: ${step.value ?? 'absent'}${unit}`,
  };
}

/** Each source once of the hours and dollars that are given for this line and for no other. */
function ratesOf(lineId: string, steps: readonly WhyStep[]): string {
  const own = steps.filter(
    ({ id, unit, value }) =>
      (id.startsWith(`lines/${lineId}/`) || id.startsWith(`worked/${lineId}/`)) &&
      /^(USD|h)(\/|$)/.test(unit) &&
      Number(value ?? 0) !== 0,
  );
  const quote = own.find(({ id, given }) => id === `lines/${lineId}/quote` && given !== undefined);
  const isAllQuoted = steps.some(({ id, value }) => id === `lines/${lineId}/covered` && Number(value) === 1);
  const told = quote !== undefined && isAllQuoted ? [quote] : own;
  return [...new Set(told.flatMap(({ given }) => given?.source ?? []))].join('; ');
}

/**
 * Quantity and hours of a line in words, such as `1,450 ft, 312 h of work`; absent for a line of neither.
 * @param driver what the quantity is of: said of a quantity without a unit, which no reader could place otherwise.
 */
export function lineWorkings({ quantity, unit, hours }: EstimateLine, driver?: string): string | undefined {
  const parts = [
    ...(quantity === undefined || quantity === 0 ? [] : [quantityWords(quantity, unit, driver)]),
    ...(hours === undefined || hours === 0 ? [] : [`${thousandsApart(String(hours))} h of work`]),
  ];
  return parts.length === 0 ? undefined : parts.join(', ');
}

function quantityWords(quantity: number, unit: string, driver = 'size of the project'): string {
  const what = lowerFirst(driver);
  if (unit === 'each') return `${what}: ${thousandsApart(String(quantity))}`;
  return unit === '1' ? `${what}: ${lineQuantity(quantity, unit)}` : lineQuantity(quantity, unit);
}

/** The quantity of a line in the measures of the county, which are those of its grants: `6,458 sq ft`, `5 years`. */
export function lineQuantity(quantity: number, unit: string): string {
  if (unit === '1') return `${thousandsApart(String(quantity))} times`;
  const { value, unit: shown } = converted(String(quantity), unit, unitFor(unit, 'us'));
  const text = shown === unit ? value : roundText(value, decimalsFor(value));
  return `${thousandsApart(text)} ${countedUnit(shown, Number(text))}`.trim();
}
