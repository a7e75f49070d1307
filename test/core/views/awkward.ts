import type { Figure } from '../../../core/base';
import { evaluate, shippedLibrary, type Evaluation } from '../../../core/evaluation';
import { startingProject, type Project } from '../../../core/project';
import { demoProject } from '../evaluation/demo';

/** The invented example, and what is taken from it or added to it so that a view meets what it seldom meets. */
export const DEMO = demoProject();
export const TODAY = '2026-11-24';
export const LIBRARY = shippedLibrary();

export const figure = (value: string, unit: string, more: Partial<Figure> = {}): Figure => ({
  value,
  unit,
  basis: 'surveyed',
  source: 'Invented for this test',
  ...more,
});

/** An evaluation with a small search: what is tested is what is shown of it. */
export function evaluatedAs(
  project: Project,
  more: { scenario?: string; upright?: boolean } = {},
): Evaluation {
  return evaluate(project, { today: TODAY, seed: 1, schedules: 5, upright: false, ...more });
}

const { statusDate: _status, funding: _funding, bid: _bid, record: _record, ...rest } = DEMO;
const { decision: _decision, risk: _risk, benefits: _benefits, receivedBids: _bids, ...plainRest } = rest;
const { deadline: _deadline, ...calendars } = DEMO.calendars;

/** Without grant, bid, record, risk, vote, deadline, quotes and compartments. */
export const BARE: Project = {
  ...plainRest,
  calendars,
  quotes: [],
  vessel: { ...DEMO.vessel, compartments: [] },
};

/** As a new document begins. */
export const BEGUN: Project = startingProject(LIBRARY, {
  reader: 'comparison',
  hullType: 'freighter',
  title: 'New',
  start: TODAY,
});

/** Nothing can be worked in the yard for longer than any plan reaches. */
export const NO_SCHEDULE: Project = {
  ...DEMO,
  calendars: {
    ...DEMO.calendars,
    closures: [
      { id: 'for-good', title: 'Closed for good', from: '2027-01-04', to: '2090-12-31', calendars: ['yard'] },
    ],
  },
};

/** A lightship that no scale can read: what follows from it is absent. */
export const ABSENT_LIGHTSHIP: Project = {
  ...DEMO,
  vessel: { ...DEMO.vessel, lightship: figure('5150', 'ft') },
};

/** A hull type that the library does not have leaves nothing to work out. */
export const NOTHING: Project = { ...DEMO, vessel: { ...DEMO.vessel, hullType: 'airship' } };

/** Prices held at the mean of a year. */
export const FIXED_PRICES: Project = { ...DEMO, rates: { ...DEMO.rates, fixedPriceYear: 2026 } };

/** A length that is no length: beam, depth and draught that stand in for missing ones are absent too. */
export const NO_SHIP: Project = {
  ...BEGUN,
  vessel: { ...BEGUN.vessel, length: figure('100', 't') },
};

const [firstQuote, ...otherQuotes] = DEMO.quotes;
const [firstBid, secondBid] = DEMO.receivedBids ?? [];
const [firstTank] = DEMO.vessel.tanks;
const [hold, ...spaces] = DEMO.vessel.compartments;
const fundingOfDemo = DEMO.funding;
if (
  firstQuote === undefined ||
  firstBid === undefined ||
  secondBid === undefined ||
  firstTank === undefined ||
  hold === undefined ||
  fundingOfDemo === undefined
)
  throw new Error('the example has quotes, bids, tanks, compartments and a grant');

const result = (sample: string, analyte: string, text: string, unit: string, more: object = {}) => ({
  sample,
  space: 'Hold one',
  material: 'pcb-cable',
  analyte,
  result: text,
  unit,
  qualifier: '',
  date: '2026-10-01',
  ...more,
});

/** Everything that a document may hold and the example leaves out. */
export const FULL: Project = {
  ...DEMO,
  statusDate: '2026-12-01',
  vessel: {
    ...DEMO.vessel,
    compartments: [
      {
        ...hold,
        openings: [
          {
            id: 'side-door',
            side: 'port',
            area: figure('2', 'm2'),
            height: figure('2', 'm'),
            centre: figure('6', 'm'),
            count: 2,
          },
          {
            id: 'sea-chest',
            side: 'bottom',
            area: figure('0.5', 'm2'),
            height: figure('0.5', 'm'),
            centre: figure('0', 'm'),
            count: 1,
          },
        ],
        vents: [{ area: figure('0.2', 'm2'), centre: figure('11', 'm') }],
      },
      ...spaces,
    ],
  },
  calendars: { ...DEMO.calendars, federalHolidays: false, deadline: '2039-03-31' },
  options: {
    ...DEMO.options,
    'episodic-event': 'planned',
    'topside-extent': 'most',
    'scrap-keeper': 'owner',
    season: 'any-month',
  },
  items: [
    {
      item: 'cable-stripping',
      hoursPerUnit: figure('0.2', 'h/m'),
      crews: figure('3', 'each'),
      notBefore: '2027-03-01',
      note: 'A gang that has done it before',
    },
  ],
  rates: {
    ...DEMO.rates,
    overrides: [
      { at: 'trades/burner/wage', figure: figure('41', 'USD/h', { note: 'As agreed in the yard' }) },
    ],
  },
  quotes: [
    {
      ...firstQuote,
      chosen: true,
      covers: [
        { item: 'tow-tug', share: '0.9' },
        { item: 'cable-stripping', share: '0.1' },
      ],
      attachment: 'tug.pdf',
    },
    ...otherQuotes,
  ],
  attachments: [
    { name: 'tug.pdf', sha256: '0123456789abcdef0123456789abcdef', page: 3, note: 'Signed offer' },
    { name: 'plan.pdf', sha256: 'fedcba9876543210fedcba9876543210' },
  ],
  survey: {
    ...DEMO.survey,
    measured: [{ driver: 'oily-water-volume', figure: figure('300', 'm3') }],
    laboratory: [
      result('L-1', 'PCB total', '340', 'mg/kg'),
      result('L-2', 'PCB total', '12', 'mg/kg', { reportingLimit: '5' }),
      result('L-3', 'PCB total', '<200', 'mg/kg'),
      result('L-4', 'Chrysotile', '3', '%', { material: 'thermal-insulation' }),
      result('L-5', 'Lead TCLP', '<100', 'ug/L', { material: 'flaking-paint' }),
      result('L-6', 'Lead TCLP', 'see note', 'mg/L', { material: 'flaking-paint' }),
      result('L-7', 'Lead TCLP', '6', 'grains', { material: 'flaking-paint' }),
      result('L-8', 'Mould', '6', '%'),
    ],
  },
  funding: {
    ...fundingOfDemo,
    programIncome: { method: 'addition' },
    sources: fundingOfDemo.sources.map(source =>
      source.form === 'none'
        ? source
        : { ...source, form: 'SF-424C', mode: 'reimbursement', lagMonths: 1, indirectLine: '2' },
    ),
  },
  receivedBids: [
    firstBid,
    {
      ...secondBid,
      prices: secondBid.prices.slice(1).map(price => ({ ...price, ...doubled(price.amount) })),
    },
  ],
  record: {
    crossChecks: [],
    leftOut: [],
    reasons: [],
    lessons: [],
    approval: { by: 'Board', on: '2026-11-01' },
    baseline: { keptOn: '2026-11-02', finish: '2029-01-31', total: figure('5000000', 'USD') },
  },
};

/** The price of one unit of a lump sum is its amount. */
function doubled(amount: Figure | undefined): { unitPrice?: Figure } {
  return amount === undefined ? {} : { unitPrice: amount };
}

/** The grant is paid in advance and bears all of the work it may. */
export const PAID_AHEAD: Project = {
  ...DEMO,
  funding: {
    ...fundingOfDemo,
    sources: [
      ...fundingOfDemo.sources
        .filter(source => source.form !== 'none')
        .map(({ cap: _cap, ...source }) => ({ ...source, mode: 'advance' as const, lagMonths: 0 })),
      ...fundingOfDemo.sources.filter(source => source.kind === 'applicant'),
    ],
  },
};

export const AWKWARD = {
  'the example': DEMO,
  'without grant, bid, record, deadline, quotes and compartments': BARE,
  'as it begins': BEGUN,
  'with all that a document may hold': FULL,
  'with a grant paid in advance': PAID_AHEAD,
  'at fixed prices': FIXED_PRICES,
  'without a schedule': NO_SCHEDULE,
  'with a lightship that is no weight': ABSENT_LIGHTSHIP,
  'with a length that is no length': NO_SHIP,
  'with a hull that nobody knows': NOTHING,
} as const satisfies Record<string, Project>;

export type AwkwardName = keyof typeof AWKWARD;
export const AWKWARD_NAMES = Object.keys(AWKWARD).filter((name): name is AwkwardName => name in AWKWARD);

const evaluations = new Map<AwkwardName, Evaluation>();

/** The evaluation of one of them, made once for each test file. */
export function awkward(name: AwkwardName): Evaluation {
  const found = evaluations.get(name) ?? evaluatedAs(AWKWARD[name]);
  evaluations.set(name, found);
  return found;
}
