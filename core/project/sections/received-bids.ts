import { z } from 'zod';
import { figureSchema, isoDate, key } from '../../base';
import { titleText, words } from './texts';

/** A bid as it was opened: what a bidder wrote for the items of the bid form. */
export const receivedBidSchema = z.strictObject({
  id: key,
  bidder: titleText,
  openedOn: isoDate.optional(),
  /** By item of the bid form: a price for one unit, an amount, or both, in USD. Where they disagree the unit price governs. */
  prices: z
    .array(
      z.strictObject({
        item: key,
        unitPrice: figureSchema.optional(),
        amount: figureSchema.optional(),
      }),
    )
    .default([]),
  /** By alternate of the bid form: what it adds to the base bid, or takes from it. */
  alternates: z.array(z.strictObject({ item: key, amount: figureSchema })).default([]),
  note: words.optional(),
});

export type ReceivedBid = z.infer<typeof receivedBidSchema>;
