import fc from 'fast-check';
import {
  sumCents,
  STAGES,
  allocateCents,
  type EstimateLine,
  type MonthAmount,
} from '../../../core/cash-flow';
import { BASES } from '../../../core/base';

/** A line with everything filled in; what a test is about is given, the rest is plain. */
export function line(given: Partial<EstimateLine> & { id: string }): EstimateLine {
  const amounts = {
    labour: 0,
    equipment: 0,
    material: 0,
    disposal: 0,
    subcontract: 0,
    fee: 0,
    markUp: 0,
    ...given.amounts,
  };
  const total = sumCents(Object.values(amounts));
  return {
    stage: 'clean-up',
    title: given.id,
    contract: false,
    basis: 'judgement',
    source: 'invented for the test',
    months: [{ month: '2027-03', amount: total }],
    ...given,
    amounts,
    total,
  };
}

/** Whole dollars as cents. */
export const usd = (amount: number): number => Math.round(amount * 100);

const cents = fc.integer({ min: 0, max: 50_000_000 });
const months = fc.array(fc.integer({ min: 0, max: 17 }), { minLength: 1, maxLength: 5 });

function monthName(index: number): string {
  return `${2027 + Math.floor(index / 12)}-${String((index % 12) + 1).padStart(2, '0')}`;
}

function monthsOf(total: number, at: readonly number[]): MonthAmount[] {
  const names = [...new Set(at)].sort((a, b) => a - b).map(monthName);
  const parts = allocateCents(
    total,
    names.map((_, index) => index + 1),
  );
  return names.map((month, index) => ({ month, amount: parts[index] ?? 0 }));
}

/** Random estimate lines: contract work and the owner's own, every element, spread over some months. */
export const randomLines: fc.Arbitrary<EstimateLine[]> = fc
  .array(
    fc.record({
      stage: fc.constantFrom(...STAGES),
      contract: fc.boolean(),
      basis: fc.constantFrom(...BASES),
      elements: fc.tuple(cents, cents, cents, cents, cents, cents),
      markUp: cents,
      credit: fc.oneof({ weight: 6, arbitrary: fc.constant(0) }, { weight: 1, arbitrary: cents }),
      months,
    }),
    { minLength: 1, maxLength: 14 },
  )
  .map(drafts =>
    drafts.map((draft, index) => {
      const [labour, equipment, material, disposal, subcontract, fee] = draft.elements;
      const amounts = {
        labour,
        equipment,
        material: material - draft.credit,
        disposal,
        subcontract,
        fee,
        markUp: draft.contract ? draft.markUp : 0,
      };
      const id = `L${index + 1}`;
      const made = line({ id, amounts, stage: draft.stage, contract: draft.contract, basis: draft.basis });
      return {
        ...made,
        months: monthsOf(made.total, draft.months),
        ...(draft.contract
          ? { contractId: index % 2 ? 'tow' : 'preparation' }
          : { fringe: Math.floor(labour / 3) }),
      };
    }),
  );
