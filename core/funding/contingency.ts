import type { Finding } from '../base';
import { dollars } from '../cash-flow';
import type { Contingency } from './plan';

const RULE = '2 CFR 200.433';

/**
 * Whether a grant may bear the contingency, and if not, why: it must be estimated by an accepted method, be
 * documented and accepted by the agency, and must not be a reserve for the unforeseeable or for another scope.
 * @source 2 CFR 200.433.
 */
export function checkContingency(contingency: Contingency): Finding[] {
  if (contingency.amount === 0) return [];
  const reasons: readonly (readonly [boolean, string, string])[] = [
    [
      contingency.isReserve,
      'is a reserve for what cannot be foreseen',
      'leave the reserve out of the grant budget',
    ],
    [
      !contingency.isByAcceptedMethod,
      'is not estimated by a broadly accepted method',
      'take it from the estimate class or from the simulation',
    ],
    [!contingency.isDocumented, 'has no documentation', 'write down how it was estimated'],
    [!contingency.isAcceptedByAgency, 'is not accepted by the agency yet', 'ask the agency before applying'],
  ];
  return reasons
    .filter(([holds]) => holds)
    .map(([, what, remedy]) => ({
      code: 'funding/contingency-not-allowable',
      weight: 'warns',
      place: '/funding/contingency',
      message: `the contingency of ${dollars(contingency.amount)} ${what}; it stands in the budget as cost not allowable`,
      meaning: 'the grant does not bear it; the county does',
      remedy,
      rule: RULE,
    }));
}
