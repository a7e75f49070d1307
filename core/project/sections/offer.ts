import { z } from 'zod';
import { isoDate } from '../../base';
import { titleText, words } from './texts';

/** Who bids and until when: the bidder's own words. What is not given stays an empty line on the paper, to be filled by hand. */
export const offerSchema = z.strictObject({
  bidder: titleText.optional(),
  address: words.optional(),
  /** Who answers questions about the bid, and how he is reached. */
  contact: words.optional(),
  /** The last day on which the offer can be accepted. */
  validUntil: isoDate.optional(),
  /** The addenda to the invitation that the bidder has received, as he lists them. */
  addenda: words.optional(),
});

export type Offer = z.infer<typeof offerSchema>;
