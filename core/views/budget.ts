import { at, BASES } from '../base';
import { idOf } from '../sheet';

import { buildUpTable, elementTable, materialTable, monthTable, stageTable } from './budget-tables';
import type { EstimateContext } from './context';
import { dollars, roundText, tenthsText } from './number-text';
import type { Sentence } from './rows';
import type { ShownMoney } from './shown-money';
import { generatorTable, wasteTable } from './waste';
import { wholeDollars } from './whole-dollars';
import type { BasisPart, BudgetView } from './window-rows';

/** The budget: rolled up every way, with the basis of the money and the waste. */
export function budgetView(context: EstimateContext, money: ShownMoney): BudgetView {
  const basis = basisParts(context, money);
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
    generator: generatorTable(context),
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

function basisParts({ summary }: EstimateContext, money: ShownMoney): Basics {
  const byBasis = summary?.byBasis;
  const unchecked = summary?.uncheckedShare;
  if (byBasis === undefined || unchecked === undefined) return { parts: [], unchecked: undefined };
  const present = BASES.map(basis => ({ basis, amount: byBasis[basis].cents })).filter(
    one => one.amount !== 0,
  );
  const cents = present.map(one => one.amount);
  const all = cents.reduce((sum, amount) => sum + amount, 0);
  const shares = tenths(cents);
  const shown = wholeDollars(cents, money.total('total'));
  const parts = present.map(({ basis, amount }, place): BasisPart => ({
    basis,
    share: { text: `${at(shares, place)} %`, why: `basis:${basis}` },
    amount: { text: dollars(at(shown, place) * 100), why: `basis:${basis}` },
    part: Math.max(0, amount / (all === 0 ? 1 : all)),
  }));
  return { parts, unchecked: roundText((unchecked * 100).toFixed(4), 1) };
}

/** Shares in tenths of a per cent that add up to 100.0. */
export function tenths(amounts: readonly number[]): readonly string[] {
  const all = amounts.reduce((sum, amount) => sum + amount, 0);
  if (all === 0) return amounts.map(() => '0.0');
  const scaled = amounts.map(amount => Math.round((amount / all) * 100_000));
  return wholeDollars(scaled, 1000).map(tenthsText);
}

function basisHead({ unchecked }: Basics): string {
  return unchecked === undefined
    ? 'Where the money’s basis lies'
    : `Where the money’s basis lies: ${unchecked} % of the total is not yet checked`;
}
