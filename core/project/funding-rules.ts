import type { Figure } from '../base';
import { isUnit, type Unit } from '../units';
import type { Benefits, BidChoices, Funding } from './funding-schema';
import type { Quote } from './schema';
import type { ReceivedBid } from './sections/received-bids';
import type { ProjectRecord } from './sections/record';

/** A given of the funding, bid or benefit section with its place, its unit and the limit beyond which it is a mistake. */
export interface SectionGiven {
  readonly place: string;
  readonly figure: Figure;
  readonly rule: {
    readonly title: string;
    readonly unit: Unit;
    readonly above?: string;
    readonly from?: string;
    readonly to: string;
  };
}

const MOST_MONEY = '1000000000';

const money = (title: string) => ({ title, unit: 'USD', from: '0', to: MOST_MONEY }) as const;
const signedMoney = (title: string) => ({ ...money(title), from: `-${MOST_MONEY}` }) as const;
const share = (title: string) =>
  ({
    title,
    unit: '1',
    from: '0',
    to: '1',
    remedy: 'A share is a number from 0 to 1: for 5 per cent, write 0.05.',
  }) as const;

function at(place: string, figure: Figure | undefined, rule: SectionGiven['rule']): SectionGiven[] {
  return figure === undefined ? [] : [{ place, figure, rule }];
}

/** Every given of the funding section. */
export function fundingGivens(funding: Funding): SectionGiven[] {
  const { indirect, programIncome, county, payment } = funding;
  return [
    ...funding.sources.flatMap(source => [
      ...at(`/funding/sources/${source.id}/share`, source.share, share(`Share of ${source.title}`)),
      ...at(`/funding/sources/${source.id}/cap`, source.cap, money(`Cap of ${source.title}`)),
      ...source.stageCaps.flatMap(({ stage, cap }) =>
        at(
          `/funding/sources/${source.id}/stageCaps/${stage}`,
          cap,
          money(`Cap of ${source.title}, ${stage}`),
        ),
      ),
    ]),
    ...at(
      '/funding/indirect/rate',
      indirect.kind === 'none' ? undefined : indirect.rate,
      share('Rate of indirect cost'),
    ),
    ...at(
      '/funding/programIncome/costOfEarning',
      programIncome.costOfEarning,
      money('Cost of earning the income'),
    ),
    ...funding.notAllowable.flatMap(({ item, amount }) =>
      at(`/funding/notAllowable/${item}`, amount, money(`Cost of ${item} that is not allowable`)),
    ),
    ...(funding.lineFacts ?? []).flatMap(({ item, unitPrice }) =>
      at(`/funding/lineFacts/${item}/unitPrice`, unitPrice, money(`Price of one piece, ${item}`)),
    ),
    ...at('/funding/county/microPurchase', county.microPurchase, money('Micro-purchase limit of the county')),
    ...at(
      '/funding/county/simplified',
      county.simplified,
      money('Simplified acquisition limit of the county'),
    ),
    ...at('/funding/county/equipment', county.equipment, money('Equipment threshold of the county')),
    ...at('/funding/payment/retainage', payment.retainage, share('Retainage')),
    ...at('/funding/carryingRate', funding.carryingRate, share('Yearly rate of carrying the cash gap')),
  ];
}

/** Every given of the bid section; an alternate may take away as well as add. */
export function bidGivens(bid: BidChoices): SectionGiven[] {
  return [
    ...bid.items.flatMap(item =>
      at(`/bid/items/${item.id}/allowance`, item.allowance, money(`Allowance of ${item.title}`)),
    ),
    ...bid.alternates.flatMap(one => at(`/bid/alternates/${one.id}`, one.amount, signedMoney(one.title))),
  ];
}

/** Every given of the bids received; an alternate may take away as well as add. */
export function receivedBidGivens(bids: readonly ReceivedBid[]): SectionGiven[] {
  return bids.flatMap(({ id, bidder, prices, alternates }) => [
    ...prices.flatMap(price => [
      ...at(
        `/receivedBids/${id}/prices/${price.item}/unitPrice`,
        price.unitPrice,
        money(`Unit price of ${bidder} for ${price.item}`),
      ),
      ...at(
        `/receivedBids/${id}/prices/${price.item}/amount`,
        price.amount,
        money(`Amount of ${bidder} for ${price.item}`),
      ),
    ]),
    ...alternates.flatMap(one =>
      at(
        `/receivedBids/${id}/alternates/${one.item}`,
        one.amount,
        signedMoney(`Alternate ${one.item} of ${bidder}`),
      ),
    ),
  ]);
}

/** The quotes, each a lump sum or a price for a unit, and what brings them to one scope. */
export function quoteGivens(quotes: readonly Quote[]): SectionGiven[] {
  return quotes.flatMap(({ id, vendor, amount: whole, adjustments = [] }) => [
    // A unit that cannot be put in place of the lines is told where the quote is spread over them.
    ...(isUnit(whole.unit)
      ? at(`/quotes/${id}/amount`, whole, { ...money(`Quote of ${vendor}`), unit: whole.unit })
      : []),
    ...adjustments.flatMap(({ title, amount }, index) =>
      at(`/quotes/${id}/adjustments/${index}`, amount, signedMoney(`${title}, quote of ${vendor}`)),
    ),
  ]);
}

/** Every given of the record. */
export function recordGivens({ baseline, independent, earlier, crossChecks }: ProjectRecord): SectionGiven[] {
  return [
    ...at('/record/baseline/total', baseline?.total, money('Total of the plan kept')),
    ...at('/record/independent/total', independent?.total, money('Independent estimate')),
    ...at('/record/earlier/total', earlier?.total, money('Earlier estimate')),
    ...(earlier?.steps ?? []).flatMap(({ title, amount }, index) =>
      at(`/record/earlier/steps/${index}`, amount, signedMoney(title)),
    ),
    ...crossChecks.flatMap(({ item, amount }) =>
      at(`/record/crossChecks/${item}`, amount, money(`Second way of ${item}`)),
    ),
  ];
}

/** Every given of the benefit section. */
export function benefitGivens(benefits: Benefits): SectionGiven[] {
  const { plateThickness, discountRate, uses, obligations = [] } = benefits;
  return [
    ...at('/benefits/plateThickness', plateThickness, {
      title: 'Plate thickness',
      unit: 'm',
      above: '0',
      to: '0.2',
    }),
    ...at('/benefits/discountRate', discountRate, share('Discount rate')),
    ...uses.flatMap(use => [
      ...at(`/benefits/uses/${use.id}/visitsPerYear`, use.visitsPerYear, {
        title: `Visits, ${use.title}`,
        unit: 'each/year',
        from: '0',
        to: '10000000',
      }),
      ...at(`/benefits/uses/${use.id}/valuePerVisit`, use.valuePerVisit, {
        title: `Value of a visit, ${use.title}`,
        unit: 'USD/each',
        from: '0',
        to: '100000',
      }),
    ]),
    ...obligations.flatMap(one =>
      at(`/benefits/obligations/${one.id}/costPerYear`, one.costPerYear, {
        title: `Cost of ${one.title}`,
        unit: 'USD/year',
        from: '0',
        to: MOST_MONEY,
      }),
    ),
    ...at(
      '/benefits/removalIfItMoves/amount',
      benefits.removalIfItMoves?.amount,
      money('Removal if the ship moves'),
    ),
  ];
}
