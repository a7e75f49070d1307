import { BASES, UNCHECKED_BASES, type Basis } from '../base';
import { idOf } from '../sheet';

import type { LineBases } from './bases';
import { buildUpTable, elementTable, materialTable, monthTable, stageTable } from './budget-tables';
import type { EstimateContext } from './context';
import { ELEMENTS } from './elements';
import { dollars, roundText } from './number-text';
import type { Sentence } from './rows';
import type { ShownMoney } from './shown-money';
import { wasteTable } from './waste';
import { wholeDollars } from './whole-dollars';
import type { BasisPart, BudgetView } from './window-rows';

/** The budget: rolled up every way, with the basis of the money and the waste. */
export function budgetView(context: EstimateContext, money: ShownMoney, bases: LineBases): BudgetView {
  const basis = basisParts(money, bases);
  const most = Math.max(1, ...money.stages.map(stage => money.stage(stage.id, 'total') ?? 0));
  return {
    sentence: sentence(context, money),
    byStage: stageTable(money),
    bars: Object.fromEntries(
      money.stages.map(stage => [stage.id, Math.max(0, money.stage(stage.id, 'total') ?? 0) / most]),
    ),
    byElement: elementTable(money),
    byMaterial: materialTable(context, money),
    byMonth: monthTable(context, money),
    buildUp: buildUpTable(context),
    basisHead: basisHead(basis),
    basis: basis.parts,
    waste: wasteTable(context),
    generator: { id: 'generator', caption: '', columns: [], rows: [] },
  };
}

function sentence(context: EstimateContext, money: ShownMoney): Sentence {
  const total = money.total('total');
  const sums = context.parts.money?.sums;
  const { priceDate, fixedPriceYear } = context.evaluation.project.rates;
  if (total === undefined || sums === undefined) return ['The total leaves something out; Review says what.'];
  const prices =
    fixedPriceYear === undefined
      ? 'at the prices of the months in which it is spent'
      : `at the prices of ${fixedPriceYear}`;
  return [
    { text: dollars(total * 100), why: idOf(sums.total) },
    ` ${prices}, without contingency; rates are those of ${priceDate.slice(0, 4)}.`,
  ];
}

interface Basics {
  readonly parts: readonly BasisPart[];
  readonly unchecked: string | undefined;
}

/** Cents of the total by basis. */
export function centsByBasis(money: ShownMoney, bases: LineBases): ReadonlyMap<Basis, number> {
  const sums = new Map<Basis, number>();
  for (const line of money.lines) {
    for (const element of ELEMENTS) {
      const cents = line.cents[element];
      const basis = bases.element(line.id, element);
      if (cents === undefined || cents === 0 || basis === undefined) continue;
      sums.set(basis, (sums.get(basis) ?? 0) + cents);
    }
  }
  return sums;
}

/** The share of the total that rests on figures nobody has checked, 0 to 1; undefined without a total. */
export function uncheckedShare(money: ShownMoney, bases: LineBases): number | undefined {
  const sums = centsByBasis(money, bases);
  const all = [...sums.values()].reduce((sum, cents) => sum + cents, 0);
  if (money.total('total') === undefined || all === 0) return undefined;
  return UNCHECKED_BASES.reduce((sum, basis) => sum + (sums.get(basis) ?? 0), 0) / all;
}

function basisParts(money: ShownMoney, bases: LineBases): Basics {
  const sums = centsByBasis(money, bases);
  const present = BASES.filter(basis => (sums.get(basis) ?? 0) !== 0);
  const all = present.reduce((sum, basis) => sum + (sums.get(basis) ?? 0), 0);
  const shares = tenths(present.map(basis => sums.get(basis) ?? 0));
  const shown = wholeDollars(
    present.map(basis => sums.get(basis) ?? 0),
    money.total('total'),
  );
  const parts = present.map((basis, at): BasisPart => ({
    basis,
    share: { text: `${shares[at] ?? '0.0'} %`, why: `basis:${basis}` },
    amount: { text: dollars((shown[at] ?? 0) * 100), why: `basis:${basis}` },
    part: Math.max(0, (sums.get(basis) ?? 0) / (all === 0 ? 1 : all)),
  }));
  const unchecked = uncheckedShare(money, bases);
  return {
    parts,
    unchecked: unchecked === undefined ? undefined : roundText((unchecked * 100).toFixed(4), 1),
  };
}

/** Shares in tenths of a per cent that add up to 100.0. */
export function tenths(amounts: readonly number[]): readonly string[] {
  const all = amounts.reduce((sum, amount) => sum + amount, 0);
  if (all === 0) return amounts.map(() => '0.0');
  const scaled = amounts.map(amount => Math.round((amount / all) * 100_000));
  return wholeDollars(scaled, 1000).map(tenth => `${Math.trunc(tenth / 10)}.${Math.abs(tenth % 10)}`);
}

function basisHead({ unchecked }: Basics): string {
  return unchecked === undefined
    ? 'Where the money’s basis lies'
    : `Where the money’s basis lies: ${unchecked} % of the total is not yet checked`;
}
