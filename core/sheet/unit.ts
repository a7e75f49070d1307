import { isPlainUnit, type PlainUnit } from '../units';
import { BugError } from '../base';

/** A plain unit, or `own`: the unit of the row in hand, bound once per row. */
export type BaseUnit = PlainUnit | 'own';

/** A unit of a step with a number: a plain unit, `own`, or a rate of two. */
export type SheetUnit = BaseUnit | `${BaseUnit}/${BaseUnit}`;

/** A unit of any step: `text` for the keys that rows name one another by. */
export type StepUnit = SheetUnit | 'text';

/** Products of measures that have a unit of their own: first × second = third. */
const PRODUCTS = [
  ['m', 'm', 'm2'],
  ['m2', 'm', 'm3'],
  ['ft', 'ft', 'ft2'],
  ['ft2', 'ft', 'ft3'],
  ['kn', 'h', 'nmi'],
] as const;

type Products = (typeof PRODUCTS)[number];

/** The unit of a product of two measures: `m2` for `m` and `m`. */
export type Product<A, B> =
  Extract<Products, readonly [A, B, unknown]>[2] | Extract<Products, readonly [B, A, unknown]>[2];

/** The unit of a measure divided by one of its two sides: `m` for `m2` over `m`. */
export type Side<C, A> =
  Extract<Products, readonly [A, unknown, C]>[1] | Extract<Products, readonly [unknown, A, C]>[0];

/** What a rate is of: `USD` for `USD/h`. */
export type Top<R> = R extends `${infer A extends BaseUnit}/${string}` ? A : never;

/** What a rate is for: `h` for `USD/h`. */
export type Bottom<R> = R extends `${string}/${infer B extends BaseUnit}` ? B : never;

/** The unit of a product of measures when a recipe is built. @throws BugError when it has no unit of its own. */
export function productUnit(a: StepUnit, b: StepUnit): SheetUnit {
  const row = PRODUCTS.find(([x, y]) => (x === a && y === b) || (x === b && y === a));
  if (!row) throw new BugError(`${a} times ${b} has no unit of its own: use priced with a rate`);
  return row[2];
}

/** The unit of a quotient when a recipe is built. @throws BugError when it has none. */
export function quotientUnit(a: StepUnit, b: StepUnit): SheetUnit {
  if (a === 'text' || b === 'text') throw new BugError('text cannot be divided');
  if (b === '1') return a;
  if (a === b) return '1';
  const [top, bottom] = parts(b);
  if (bottom !== undefined && top === a) return bottom;
  const row = PRODUCTS.find(([x, y, product]) => product === a && (x === b || y === b));
  if (row) return row[0] === b ? row[1] : row[0];
  const [plain, per] = parts(a);
  if (per === undefined && bottom === undefined) return `${plain}/${top}`;
  throw new BugError(`${a} over ${b} has no unit in the list`);
}

/** The unit of quantity times rate. @throws BugError unless the rate is for one of the quantity. */
export function pricedUnit(quantity: StepUnit, rate: StepUnit): SheetUnit {
  if (rate === 'text') throw new BugError('text is not a rate');
  const [top, bottom] = parts(rate);
  if (bottom === undefined || bottom !== quantity)
    throw new BugError(`${rate} is not a rate for ${quantity}`);
  return top;
}

/** The unit that a row gives to a unit of the recipe: `USD/m2` for `USD/own` in a row of its own unit `m2`. */
export function boundUnit(unit: StepUnit, own: PlainUnit | undefined): string {
  if (own === undefined || !unit.includes('own')) return unit;
  if (unit === 'own') return own;
  const cut = unit.indexOf('/');
  const [top, bottom] = [unit.slice(0, cut), unit.slice(cut + 1)];
  return `${top === 'own' ? own : top}/${bottom === 'own' ? own : bottom}`;
}

function parts(unit: SheetUnit): readonly [BaseUnit, BaseUnit | undefined] {
  const [top, bottom] = unit.split('/');
  return [base(top), bottom === undefined ? undefined : base(bottom)];
}

function base(text: string | undefined): BaseUnit {
  if (text === 'own' || (text !== undefined && isPlainUnit(text))) return text;
  throw new BugError(`${text ?? ''} is not a unit`);
}
