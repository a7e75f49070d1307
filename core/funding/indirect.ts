import { allocateOver, shareOf, sumCents, type Cents, type Part } from '../cash-flow';

/** What a big contract is in the eyes of the cost rules. The user decides; it moves the base by most of its price. */
export const CONTRACT_CLASSES = ['service procurement', 'subaward', 'capital'] as const;
export type ContractClass = (typeof CONTRACT_CLASSES)[number];

/** The grantee's indirect cost. */
export type IndirectChoice =
  | { readonly kind: 'none' }
  | { readonly kind: 'de minimis'; readonly rate?: number }
  | { readonly kind: 'negotiated'; readonly rate: number; readonly agreement: string };

/** A direct cost as the base of indirect cost sees it. */
export interface BaseItem {
  readonly id: string;
  readonly amount: Cents;
  /** Part of a contract, whose class decides. */
  readonly contractId?: string;
  /** Outside the base by its nature. */
  readonly excluded?: 'equipment' | 'rent' | 'in kind' | 'contingency';
}

/** The base with what each item gives to it, and the contracts that still have no class. */
export interface IndirectBase {
  readonly base: Cents;
  readonly parts: readonly { readonly id: string; readonly inBase: Cents }[];
  readonly unclassed: readonly string[];
}

/**
 * Modified total direct cost: all direct cost but equipment, capital, rent and contributions in kind; of each
 * subaward only the part up to the cap, once for its whole period. A service procurement stays whole.
 * @param cap of the award date, cents.
 * @source 2 CFR 200.1, modified total direct cost.
 */
export function modifiedTotalDirectCost(
  items: readonly BaseItem[],
  classes: Readonly<Record<string, ContractClass>>,
  cap: Cents,
): IndirectBase {
  const contractIds = [...new Set(items.flatMap(item => item.contractId ?? []))];
  const unclassed = contractIds.filter(id => classes[id] === undefined);
  const counted = new Map<string, Cents>();
  for (const item of items) {
    const isInBase = item.excluded === undefined && item.contractId === undefined;
    counted.set(item.id, isInBase ? item.amount : 0);
  }
  for (const id of contractIds) {
    const ofContract = items.filter(item => item.contractId === id);
    for (const { item, amount } of contractInBase(ofContract, classes[id], cap)) counted.set(item.id, amount);
  }
  const parts = [...counted].map(([id, inBase]) => ({ id, inBase }));
  return { base: sumCents(parts.map(part => part.inBase)), parts, unclassed };
}

function contractInBase(
  items: readonly BaseItem[],
  kind: ContractClass | undefined,
  cap: Cents,
): Part<BaseItem>[] {
  const total = sumCents(items.map(item => item.amount));
  if (kind === 'service procurement') return items.map(item => ({ item, amount: item.amount }));
  if (kind !== 'subaward' || total <= 0) return items.map(item => ({ item, amount: 0 }));
  return allocateOver(Math.min(total, cap), items, item => item.amount);
}

/** The base and the indirect cost under one class of a contract. */
export interface ClassResult {
  readonly contractClass: ContractClass;
  readonly base: Cents;
  readonly indirect: Cents;
}

/**
 * The three results side by side for one contract; other contracts keep their class, and those without one
 * take the class that is tried.
 */
export function indirectSideBySide(
  items: readonly BaseItem[],
  contractId: string,
  classes: Readonly<Record<string, ContractClass>>,
  cap: Cents,
  rate: number,
): ClassResult[] {
  const contractIds = [...new Set(items.flatMap(item => item.contractId ?? []))];
  return CONTRACT_CLASSES.map(contractClass => {
    const tried = Object.fromEntries(contractIds.map(id => [id, classes[id] ?? contractClass]));
    const { base } = modifiedTotalDirectCost(items, { ...tried, [contractId]: contractClass }, cap);
    return { contractClass, base, indirect: shareOf(base, rate) };
  });
}
