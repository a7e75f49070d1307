import type { Provenance } from '../base';
import type { Cents, EstimateLine, PaymentTerms, Stage } from '../cash-flow';
import type { Activity, FormKind, MappingRow } from './forms';
import type { ContractClass, IndirectChoice } from './indirect';
import type { IncomeMethod } from './program-income';
import type { CountyLimits } from './rules';

/** A source of funding. Exactly the sources with a form carry a budget of their own; the others match it. */
export interface FundingSource {
  readonly id: string;
  readonly title: string;
  readonly kind: 'federal' | 'state' | 'applicant' | 'other';
  /** The form its funding notice asks for; `none` for a source that only matches. */
  readonly form: FormKind | 'none';
  readonly support: 'cash' | 'in kind';
  /** The largest share of the allowable cost it bears, 0 to 1. A source without one bears what is left. */
  readonly share?: number;
  /** The most it gives. */
  readonly cap?: Cents;
  /** The most it gives to a stage. */
  readonly stageCaps?: Partial<Readonly<Record<Stage, Cents>>>;
  /** The stages it may pay for; all when absent. */
  readonly stages?: readonly Stage[];
  /** The lines that are its contribution in kind. */
  readonly lineIds?: readonly string[];
  /** How a contribution in kind is valued. */
  readonly valuation?: Provenance;
  /** When cost must fall to be borne by it; required of a source with a form. */
  readonly period?: { readonly start: string; readonly finish: string };
  /** Whether the grantor agreed to cost before the start. */
  readonly preAwardApproved?: boolean;
  readonly mode: 'advance' | 'reimbursement' | 'own';
  /** Months from payment to reimbursement. */
  readonly lagMonths: number;
  /** The programme's name and listing number, as the form prints them. */
  readonly programme?: { readonly title: string; readonly listingNumber: string };
  /** On SF-424C: the line where this grantor wants indirect cost. There is no default: ask. */
  readonly indirectLine?: string;
}

/** Contingency as it enters the books. */
export interface Contingency {
  readonly amount: Cents;
  /** What the whole of it is and where that comes from, in words, for the narrative. */
  readonly method?: string;
  /** Estimated by a broadly accepted method (a percentage by class, a simulation). */
  readonly isByAcceptedMethod: boolean;
  readonly isDocumented: boolean;
  readonly isAcceptedByAgency: boolean;
  /** Meant for what cannot be foreseen or for another scope. */
  readonly isReserve: boolean;
  /** First month whose work is not yet spent. */
  readonly fromMonth?: string;
}

/** Scrap of the ship: whose it is decides whether it is a lower price or program income. */
export interface Scrap {
  readonly amount: Cents;
  readonly keptBy: 'contractor' | 'owner';
  /** The month in which its price comes in. */
  readonly month?: string;
}

/** Cost the grantor does not allow, by the user's own choice. */
export interface NotAllowable {
  readonly lineId: string;
  /** The part not allowed; the whole line when absent. */
  readonly amount?: Cents;
  readonly reason: string;
}

/** Everything the user decides about the funding. */
export interface FundingPlan {
  readonly awardDate: string;
  readonly sources: readonly FundingSource[];
  /** The class of each contract by its id; there is no default. */
  readonly contractClasses: Readonly<Record<string, ContractClass>>;
  readonly indirect: IndirectChoice;
  readonly income: { readonly method?: IncomeMethod; readonly costOfEarning?: Cents };
  readonly notAllowable: readonly NotAllowable[];
  readonly county: CountyLimits;
  /** The user's own mapping and columns; those of the forms file when absent. */
  readonly mapping?: Partial<Readonly<Record<FormKind, readonly MappingRow[]>>>;
  readonly activities?: readonly Activity[];
  readonly payment: PaymentTerms;
}

/** What a grant budget is made from. */
export interface GrantInput {
  readonly lines: readonly EstimateLine[];
  readonly contingency?: Contingency;
  readonly scrap?: Scrap;
  readonly plan: FundingPlan;
}
