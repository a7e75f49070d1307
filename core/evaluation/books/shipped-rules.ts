import benefit from '../../../templates/benefit.json';
import bid from '../../../templates/bid.json';
import forms from '../../../templates/forms.json';
import funding from '../../../templates/funding.json';
import growth from '../../../templates/growth.json';
import { readBenefitRules, type BenefitRules } from '../../benefit';
import { readBidRules, type BidRules } from '../../bid';
import { readForms, readFundingRules, type FormsData, type FundingRules } from '../../funding';
import { readGrowthData, type GrowthData } from '../../review';

/** The rules and data of the books. */
export interface BookRules {
  readonly funding: FundingRules;
  readonly forms: FormsData;
  readonly bid: BidRules;
  readonly benefit: BenefitRules;
  readonly growth: GrowthData;
}

let shipped: BookRules | undefined;

/** The rules of the books as they are shipped. @throws ZodError when a template does not fit: the tests see to it. */
export function shippedBookRules(): BookRules {
  shipped ??= {
    funding: readFundingRules(funding),
    forms: readForms(forms),
    bid: readBidRules(bid),
    benefit: readBenefitRules(benefit),
    growth: readGrowthData(growth),
  };
  return shipped;
}
