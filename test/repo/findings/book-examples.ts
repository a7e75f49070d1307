import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { benefitCase, readBenefitRules } from '../../../core/benefit';
import {
  compareBids,
  compareQuotes,
  readBidRules,
  scheduleOfValues,
  type BidItem,
  type OpenedBid,
  type TabulatedItem,
} from '../../../core/bid';
import {
  checkDrawdown,
  checkLines,
  differenceFindings,
  locateDifferences,
  type EstimateLine,
} from '../../../core/cash-flow';
import {
  bidView,
  bookBasis,
  contractorRun,
  grantView,
  marginView,
  prepareRisk,
  tabulationView,
  type Evaluation,
} from '../../../core/evaluation';
import { grantBook, type FundingSource } from '../../../core/funding';
import { PRACTICE_IDS, readGrowthData, readReviewData, review, reviewFindings } from '../../../core/review';
import { simulate } from '../../../core/risk';
import type { Project } from '../../../core/project';
import { line, usd } from '../../core/cash-flow/lines';
import { demoProject, evaluated } from '../../core/evaluation/demo';
import { COUNTY, FEDERAL, FORMS, PLAN, RULES } from '../../core/funding/plans';
import { cleanDraft } from '../../core/review/clean-project';
import { PLANTS } from '../../core/review/faults';
import { examples, type FindingExample, type Told } from './example';

const json = (name: string): unknown => JSON.parse(readFileSync(`templates/${name}.json`, 'utf8'));
const none = { labour: 0, equipment: 0, material: 0, disposal: 0, subcontract: 0, fee: 0, markUp: 0 };

const benefitRules = readBenefitRules(json('benefit'));
const benefits = () =>
  benefitCase({ uses: [], obligations: [], horizonYears: 30, firstBenefitYear: 1 }, benefitRules).findings;
export const benefitExamples = examples(
  ['benefit/cost-missing', 'a benefit case without the cost', benefits],
  ['benefit/plate-missing', 'a benefit case without a plate thickness', benefits],
  ['benefit/rate-missing', 'a benefit case without a discount rate', benefits],
  ['benefit/visits-missing', 'a benefit case without visits', benefits],
);

const bidRules = readBidRules(json('bid'));
const ITEMS: TabulatedItem[] = [
  { id: 'mob', title: 'Mobilisation', unit: 'lump sum', quantity: 1, estimate: usd(100) },
  {
    id: 'oil',
    title: 'Oil',
    unit: 'gal',
    quantity: 1000,
    lowQuantity: 500,
    highQuantity: 2000,
    estimate: usd(400),
  },
  { id: 'tow', title: 'Tow', unit: 'lump sum', quantity: 1, estimate: usd(500) },
];
const bid = (id: string, mob: number, oil: number, tow: number): OpenedBid => ({
  id,
  bidder: `Bidder ${id}`,
  prices: {
    mob: { amount: usd(mob) },
    oil: { unitPrice: Math.round(usd(oil) / 1000) },
    tow: { amount: usd(tow) },
  },
});
const FAIR = [bid('A', 105, 410, 515), bid('B', 110, 430, 530), bid('C', 98, 420, 520)];
const beside =
  (...bids: OpenedBid[]) =>
  () =>
    compareBids(ITEMS, [...FAIR, ...bids], bidRules).findings;
const allowance: TabulatedItem = {
  id: 'permits',
  title: 'Permits',
  unit: 'allowance',
  quantity: 1,
  estimate: usd(50),
  isAllowance: true,
};
const quote = (id: string, amount: number, more = {}) => ({
  id,
  supplier: `Supplier ${id}`,
  amount: usd(amount),
  adjustments: [],
  ...more,
});
const chosen = (choice: { quoteId: string } | undefined) => () =>
  compareQuotes('tow', [quote('a', 100), quote('b', 120, { validUntil: '2027-04-30' })], choice, '2027-05-01')
    .findings;
const prep = line({ id: 'prep', contract: true, amounts: { ...none, labour: usd(800) } });
const item = (change: Partial<BidItem>): BidItem => ({
  id: 'i',
  title: 'Preparation',
  unit: 'ft',
  quantity: 300,
  lineIds: ['prep'],
  isUnitPriced: true,
  ...change,
});
const valued =
  (...items: BidItem[]) =>
  () =>
    scheduleOfValues([prep], items).findings;

let first: Evaluation | undefined;
const plain: Project = { ...demoProject(), quotes: [], receivedBids: [] };
const evaluation = () => (first ??= evaluated(plain));
const under = (change: Partial<Project>): Evaluation => ({
  ...evaluation(),
  project: { ...evaluation().project, ...change },
});

export const bidExamples = examples(
  [
    'bid/alternate-without-price',
    'an alternate that is asked for and not priced',
    () => scheduleOfValues([prep], [item({})], [{ id: 'rail', title: 'Add a rail' }]).findings,
  ],
  [
    'bid/allowance-changed',
    'an allowance of 50 bid at 60',
    () =>
      compareBids(
        [...ITEMS, allowance],
        [{ ...bid('A', 105, 410, 515), prices: { ...FAIR[0]?.prices, permits: { amount: usd(60) } } }],
        bidRules,
      ).findings,
  ],
  ['bid/few-quotes', 'two quotes', chosen({ quoteId: 'a' })],
  ['bid/front-loaded', 'first work dear and last work cheap', beside(bid('D', 135, 530, 380))],
  [
    'bid/item-without-line',
    'a bid item of a line that is not there',
    valued(item({ lineIds: ['prep', 'gone'] })),
  ],
  ['bid/line-in-no-item', 'a contract line in no bid item', valued()],
  ['bid/line-in-two-items', 'a contract line in two bid items', valued(item({}), item({ id: 'j' }))],
  ['bid/low-total', 'a bid far below the estimate', beside(bid('D', 70, 290, 365))],
  [
    'bid/margin-gone',
    'the example simulated, which costs more than its price in 20 of 100 runs',
    () => {
      const run = contractorRun(evaluation(), preparedOf(evaluation()));
      return marginView(evaluation(), run && simulate(run, { trials: 200, seed: 3, ranksDrivers: false }))
        .findings;
    },
  ],
  [
    'bid/materially-unbalanced',
    'the lowest bid with oil at one and a half times its estimate',
    beside(bid('D', 80, 600, 340)),
  ],
  ['bid/mathematically-unbalanced', 'mobilisation at 40 of 100', beside(bid('D', 40, 500, 515))],
  [
    'bid/names-supplier',
    'a bid item called by the name of who quoted for it',
    () => {
      const bidChoices = plain.bid;
      if (bidChoices === undefined) return [];
      const [own, ...others] = bidChoices.items;
      const quotes = [
        {
          id: 'q',
          vendor: 'Brae Tank Cleaning',
          dated: '2026-11-01',
          validUntil: '2027-01-01',
          covers: [{ item: 'ocean-tow', share: '1' }],
          exclusions: [],
          amount: { value: '1', unit: 'USD', basis: 'quoted' as const, source: 'made up' },
          chosen: false,
        },
      ];
      return own === undefined
        ? []
        : bidView(
            under({
              quotes,
              bid: { ...bidChoices, items: [{ ...own, title: 'Tanks by Brae Tank Cleaning' }, ...others] },
            }),
          ).findings;
    },
  ],
  ['bid/one-bid', 'a lone bid', () => compareBids(ITEMS, FAIR.slice(0, 1), bidRules).findings],
  ['bid/outlier', 'a tow at twice its estimate', beside(bid('D', 100, 410, 1000))],
  [
    'bid/price-for-no-item',
    'a price for an item that is not in the bid form',
    () =>
      tabulationView(
        under({
          receivedBids: [
            {
              id: 'a',
              bidder: 'A',
              alternates: [],
              prices: [
                { item: 'no-such', amount: { value: '1', unit: 'USD', basis: 'quoted', source: 'made up' } },
              ],
            },
          ],
        }),
      ).findings,
  ],
  [
    'bid/price-missing',
    'a bid without a price for the tow',
    () =>
      compareBids(ITEMS, [...FAIR, { id: 'S', bidder: 'S', prices: { mob: { amount: usd(100) } } }], bidRules)
        .findings,
  ],
  ['bid/quantity', 'a unit price for a quantity of nothing', valued(item({ quantity: 0 }))],
  ['bid/quote-expired', 'a chosen quote that ended the day before', chosen({ quoteId: 'b' })],
  ['bid/quote-none-chosen', 'two quotes and no choice', chosen(undefined)],
  ['bid/quote-not-lowest', 'the dearer of two quotes without a reason', chosen({ quoteId: 'b' })],
  ['bid/quote-not-there', 'a choice of a quote that is not there', chosen({ quoteId: 'z' })],
  [
    'bid/rank-turns-on-quantity',
    'a lowest bid that is not the lowest at twice the oil',
    beside(bid('D', 90, 460, 470)),
  ],
  [
    'bid/wrong-extension',
    '1,000 gal at $0.41 written as $400',
    () =>
      compareBids(
        ITEMS,
        [
          {
            ...bid('A', 105, 410, 515),
            prices: { ...FAIR[0]?.prices, oil: { unitPrice: 41, amount: usd(400) } },
          },
        ],
        bidRules,
      ).findings,
  ],
);

function preparedOf(of: Evaluation) {
  const { prepared } = prepareRisk(of);
  if (prepared === undefined) throw new Error('the example can be simulated');
  return prepared;
}

const BOOK = { id: 'cash', title: 'cash', entries: [{ key: '2027-01', title: 'January', amount: 100 }] };
const bad = (change: Partial<EstimateLine>) => () =>
  checkLines([{ ...line({ id: 'a', amounts: { ...none, labour: 100 } }), ...change }]);
const absent = () => {
  const { rates } = plain;
  return bookBasis(
    evaluated({
      ...plain,
      rates: {
        ...rates,
        overrides: [
          {
            at: 'equipment/ocean-tug/rate',
            figure: { value: '30', unit: 'ft', basis: 'judgement', source: 'made up', year: 2026 },
          },
        ],
      },
    }),
  ).findings;
};
export const cashExamples = examples(
  [
    'books/figure-differs',
    'a book one cent off the estimate',
    () =>
      differenceFindings(
        locateDifferences(BOOK, { ...BOOK, entries: [{ key: '2027-01', title: 'January', amount: 101 }] }),
        'cash',
      ),
  ],
  ['books/line-absent', 'the rate of a tug in feet', absent],
  ['books/line-elements', 'elements of $1.00 and a total of $2.00', bad({ total: 200 })],
  ['books/line-fringe', 'fringe benefits of more than the labour', bad({ fringe: 101 })],
  [
    'books/line-months',
    'months of $0.50 and a total of $1.00',
    bad({ months: [{ month: '2027-03', amount: 50 }] }),
  ],
  ['books/line-twice', 'one line twice', () => checkLines([line({ id: 'a' }), line({ id: 'a' })])],
  ['books/line-without-month', 'a line without a month', bad({ months: [] })],
  [
    'books/no-estimate',
    'work that waits for itself in a circle',
    () =>
      bookBasis(
        evaluated({ ...plain, relationships: [{ from: 'ocean-tow', to: 'tank-washing', kind: 'FS' }] }),
      ).findings,
  ],
  [
    'cash/drawn-ahead-of-match',
    'half of the grant drawn with no match spent',
    () => checkDrawdown([{ month: '2027-01', draw: 50, drawn: 50, matchSpent: 0 }], 100, 100),
  ],
);

const own = (id: string, dollars: number, more: Partial<EstimateLine> = {}) =>
  line({ id, amounts: { ...none, labour: usd(dollars) }, ...more });
const granted =
  (plan: object, lines: readonly EstimateLine[] = [own('a', 10)], more: object = {}) =>
  (): readonly Told[] =>
    grantBook({ lines, plan: { ...PLAN, ...plan }, ...more }, RULES, FORMS).findings;
const gift: FundingSource = {
  ...COUNTY,
  id: 'partner',
  title: 'Dive club',
  kind: 'other',
  support: 'in kind',
  valuation: { basis: 'judgement', source: 'made up' },
  lineIds: ['gift'],
};
const donated = [own('gift', 100, { inKind: true }), own('a', 300)];
const price = line({ id: 'prep', contract: true, amounts: { ...none, subcontract: usd(500_000) } });

export const fundingExamples = examples(
  [
    'funding/personnel-without-fringe',
    'surveys of the example, done by a hired crew',
    () => grantView(evaluation()).findings,
  ],
  [
    'funding/award-before-agreement',
    'an award expected on the first day of the project, before its agreement',
    () => {
      const { project } = evaluation();
      const { funding, calendars } = project;
      if (funding === undefined) return [];
      return grantView({
        ...evaluation(),
        project: { ...project, funding: { ...funding, awardDate: calendars.start } },
      }).findings;
    },
  ],
  [
    'funding/before-award',
    'work of $100 in March for an award expected in April',
    granted({ awardDate: '2027-04-01' }, [own('a', 100)]),
  ],
  [
    'funding/contingency-absent',
    'contingency at a confidence before any simulation',
    () =>
      grantView(evaluated({ ...plain, contingency: { policy: 'confidence', confidence: '0.8' } })).findings,
  ],
  [
    'funding/contingency-not-allowable',
    'contingency that the agency has not accepted',
    granted({}, [own('a', 100)], {
      contingency: {
        amount: usd(100),
        isByAcceptedMethod: true,
        isDocumented: true,
        isAcceptedByAgency: false,
        isReserve: false,
      },
    }),
  ],
  [
    'funding/contract-class',
    'a contract of $500,000 without its class',
    granted({ indirect: { kind: 'de minimis' } }, [price]),
  ],
  [
    'funding/credits-above-cost',
    'a credit of $1 and no cost',
    granted({}, [line({ id: 'c', amounts: { ...none, material: -100 } })]),
  ],
  [
    'funding/federal-match',
    'federal money as match',
    granted({ sources: [FEDERAL, { ...COUNTY, kind: 'federal' }] }),
  ],
  [
    'funding/in-kind-lines',
    'a gift without its lines',
    granted({ sources: [FEDERAL, { ...COUNTY, support: 'in kind' }] }),
  ],
  [
    'funding/in-kind-paid',
    'a gift of a line that is paid for',
    granted({ sources: [FEDERAL, { ...COUNTY, support: 'in kind', lineIds: ['a'] }] }),
  ],
  [
    'funding/in-kind-source',
    'a donated line that nobody gives',
    granted({ sources: [FEDERAL, COUNTY] }, donated),
  ],
  [
    'funding/in-kind-twice',
    'a donated line given by two sources',
    granted({ sources: [FEDERAL, gift, { ...gift, id: 'other' }, COUNTY] }, donated),
  ],
  [
    'funding/income-not-used',
    'scrap of $900 as match of $250',
    granted({ income: { method: 'cost sharing' } }, [own('a', 1000)], {
      scrap: { amount: usd(900), keptBy: 'owner' },
    }),
  ],
  [
    'funding/indirect-line',
    'a construction form without a line for indirect cost',
    granted({ sources: [{ ...FEDERAL, form: 'SF-424C' }, COUNTY], indirect: { kind: 'de minimis' } }),
  ],
  [
    'funding/match-not-found',
    'a county with $100 for a match of $250',
    granted({ sources: [FEDERAL, { ...COUNTY, cap: usd(100) }] }, [own('a', 1000)]),
  ],
  ['funding/no-award', 'a county and no grant', granted({ sources: [COUNTY] })],
  ['funding/no-form-line', 'a mapping that takes nothing', granted({ mapping: { 'SF-424A': [] } })],
  [
    'funding/period-missing',
    'a grant without a period',
    granted({ sources: [{ ...FEDERAL, period: undefined }] }),
  ],
  [
    'funding/rate-above-de-minimis',
    'a de minimis rate of 0.20',
    granted({ indirect: { kind: 'de minimis', rate: 0.2 } }),
  ],
  [
    'funding/scrap-twice',
    'scrap kept by the owner and credited by the yard',
    granted(
      {},
      [
        own('a', 100),
        line({ id: 'credit', contract: true, scrapCredit: true, amounts: { ...none, subcontract: -100 } }),
      ],
      { scrap: { amount: usd(1), keptBy: 'owner' } },
    ),
  ],
  [
    'funding/section-missing',
    'a project without a funding section',
    () => {
      const { funding: _funding, ...rest } = evaluation().project;
      return grantView({ ...evaluation(), project: rest }).findings;
    },
  ],
  [
    'funding/share-missing',
    'a grant without a share',
    granted({ sources: [{ ...FEDERAL, share: undefined }] }),
  ],
  ['funding/share-range', 'a share of 1.5', granted({ sources: [{ ...FEDERAL, share: 1.5 }] })],
  ['funding/source-twice', 'the county twice', granted({ sources: [FEDERAL, COUNTY, COUNTY] })],
  [
    'funding/unknown-form-line',
    'a mapping to line z',
    granted({ mapping: { 'SF-424A': [{ when: {}, to: 'z' }] } }),
  ],
  [
    'funding/value-in-kind',
    'a gift without its valuation',
    granted({ sources: [FEDERAL, { ...COUNTY, support: 'in kind', lineIds: [] }] }),
  ],
);

const reviewData = readReviewData(json('review'));
const growth = readGrowthData(json('growth'));
/** A clean project in which the fault of one practice is planted. */
export const reviewExamples: FindingExample[] = PRACTICE_IDS.map(id => ({
  code: `review/${id}`,
  tiny: `a clean project with the fault of "${id}" planted in it`,
  make: () => {
    const [draft] = fc.sample(cleanDraft, { numRuns: 1, seed: 7 });
    return draft === undefined ? [] : reviewFindings(review(PLANTS[id](draft, 3), reviewData, growth));
  },
}));
