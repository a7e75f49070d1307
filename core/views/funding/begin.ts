import type { Figure } from '../../base';
import type { Funding, Project } from '../../project';
import { STAGES } from '../../work';

type Source = Funding['sources'][number];

/** The share of an award until its terms are known: a place to write, not a rule. */
const STARTING_SHARE: Figure = {
  value: '0.75',
  unit: '1',
  basis: 'judgement',
  source: 'Starting value, to be replaced by the terms of the award',
  year: 2026,
};

/**
 * A funding section to begin with: one award with a form, the applicant’s own share, one contract whose class is not
 * chosen, no indirect cost. All of it is there to be replaced by the terms of the award.
 */
export function beginFunding({ calendars, site }: Project): Funding {
  const source: Pick<Source, 'support' | 'stageCaps' | 'preAwardApproved'> = {
    support: 'cash',
    stageCaps: [],
    preAwardApproved: false,
  };
  return {
    awardDate: calendars.start,
    fiscalYearStart: 10,
    sources: [
      {
        ...source,
        id: 'grant',
        title: 'Grant',
        kind: 'federal',
        form: 'SF-424A',
        share: STARTING_SHARE,
        mode: 'reimbursement',
        lagMonths: 2,
      },
      {
        ...source,
        id: 'own-share',
        title: `Own share of ${site.county}`,
        kind: 'applicant',
        form: 'none',
        mode: 'own',
        lagMonths: 0,
      },
    ],
    contracts: [{ id: 'all-work', title: 'Preparation, tow and sinking', stages: [...STAGES] }],
    indirect: { kind: 'none' },
    programIncome: {},
    notAllowable: [],
    contingency: { byAcceptedMethod: false, documented: false, acceptedByAgency: false, reserve: false },
    county: {},
    mapping: {},
    payment: {},
  };
}
