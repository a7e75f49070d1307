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
  const contracts = itemsByContract(items);
  const unclassed = [...contracts.keys()].filter(id => classes[id] === undefined);
  const counted = new Map(items.map(item => [item.id, isCounted(item) ? item.amount : 0]));
  for (const [id, ofContract] of contracts)
    for (const { item, amount } of contractInBase(ofContract, classes[id], cap)) counted.set(item.id, amount);
  const parts = [...counted].map(([id, inBase]) => ({ id, inBase }));
  return { base: sumCents(parts.map(part => part.inBase)), parts, unclassed };
}

/** Whether an item is in the base by itself, whatever the class of a contract. */
function isCounted({ excluded, contractId }: BaseItem): boolean {
  return excluded === undefined && contractId === undefined;
}

/** The items of each contract. */
export function itemsByContract<Item extends { readonly contractId?: string }>(
  items: readonly Item[],
): Map<string, Item[]> {
  const contracts = new Map<string, Item[]>();
  for (const item of items) {
    if (item.contractId === undefined) continue;
    const own = contracts.get(item.contractId);
    if (own === undefined) contracts.set(item.contractId, [item]);
    else own.push(item);
  }
  return contracts;
}

/** What a contract gives to the base: a service all of it, a subaward its part up to the cap, capital nothing. */
function contractPart(total: Cents, kind: ContractClass | undefined, cap: Cents): Cents {
  if (kind === 'service procurement') return total;
  return kind === 'subaward' && total > 0 ? Math.min(total, cap) : 0;
}

function contractInBase(
  items: readonly BaseItem[],
  kind: ContractClass | undefined,
  cap: Cents,
): Part<BaseItem>[] {
  if (kind === 'service procurement') return items.map(item => ({ item, amount: item.amount }));
  const part = contractPart(sumCents(items.map(item => item.amount)), kind, cap);
  if (part === 0) return items.map(item => ({ item, amount: 0 }));
  return allocateOver(part, items, item => item.amount);
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
  return classResults(items, classes, cap, rate)(contractId);
}

/** The three results for any contract: the whole base is added up once for all of them, and one contract exchanged. */
export function classResults(
  items: readonly BaseItem[],
  classes: Readonly<Record<string, ContractClass>>,
  cap: Cents,
  rate: number,
): (contractId: string) => ClassResult[] {
  const totals = new Map(
    [...itemsByContract(items)].map(([id, own]) => [id, sumCents(own.map(item => item.amount))]),
  );
  const part = (id: string, kind: ContractClass) => contractPart(totals.get(id) ?? 0, kind, cap);
  const byItself = sumCents(items.filter(isCounted).map(item => item.amount));
  const bases = CONTRACT_CLASSES.map(tried => {
    const ofContracts = sumCents([...totals.keys()].map(id => part(id, classes[id] ?? tried)));
    return { tried, base: byItself + ofContracts };
  });
  return contractId =>
    bases.map(({ tried, base: before }) => {
      const base = before - part(contractId, classes[contractId] ?? tried) + part(contractId, tried);
      return { contractClass: tried, base, indirect: shareOf(base, rate) };
    });
}
