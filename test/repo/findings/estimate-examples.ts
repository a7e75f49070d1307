import { dayOf, isoOf } from '../../../core/calendar';
import { ruleFindings } from '../../../core/evaluation/rules';
import { evaluate, prepareRisk, shippedLibrary, type Evaluation } from '../../../core/evaluation';
import {
  resultFinding,
  sampledClasses,
  surveyedPresence,
  tripPoint,
  uncheckedTripPoints,
} from '../../../core/materials';
import {
  importMappingSchema,
  importTable,
  riskSchema,
  type ImportMapping,
  type Project,
} from '../../../core/project';
import { coverageFindings, distributionFindings, simulate, type Distribution } from '../../../core/risk';
import { over, Sheet, evaluateSheet, sheetFindings } from '../../../core/sheet';
import { demoProject } from '../../core/evaluation/demo';
import { prepare } from '../../core/risk/small-project';
import { give } from '../../core/sheet/example';
import { examples, type Told } from './example';

const base = demoProject();
const library = shippedLibrary();
const figure = (value: string, unit: string) =>
  ({ value, unit, basis: 'surveyed', source: 'made up for the example', year: 2026 }) as const;

/** An evaluation of the example after a change; a small search, since the schedule is not what is asked. */
function evaluated(change: Partial<Project>): Evaluation {
  return evaluate({ ...base, ...change }, { today: '2026-11-24', seed: 1, schedules: 10, upright: false });
}
const worked = (change: Partial<Project>) => (): readonly Told[] => evaluated(change).findings;
const vessel = (change: Partial<Project['vessel']>) => worked({ vessel: { ...base.vessel, ...change } });
const site = (change: Partial<Project['site']>, extent = 'half') =>
  worked({ site: { ...base.site, ...change }, options: { ...base.options, 'topside-extent': extent } });
const items = (...rows: Project['items']) => worked({ items: rows });
const simulated = (section: object) => (): readonly Told[] =>
  prepareRisk(evaluated({ risk: riskSchema.parse(section) })).findings;

const sample = (change: Partial<Project['survey']['laboratory'][number]>) => ({
  sample: 'S-1',
  space: 'Boiler room',
  material: 'flaking-paint',
  analyte: 'Lead TCLP',
  result: '5.0',
  unit: 'mg/L',
  qualifier: '',
  date: '2026-09-14',
  ...change,
});
const leached = (change: Partial<Project['survey']['laboratory'][number]>) => () =>
  sampledClasses([sample(change)], library.tripPoints).flatMap(one => one.findings);
const pcb = tripPoint(library.tripPoints, 'pcb-bulk-product');

export const surveyExamples = examples(
  ['survey/fails-leach-test', 'a leachate of 5.0 mg/L of lead', leached({})],
  ['survey/leach-result-unclear', 'a leachate of lead below 8 mg/L', leached({ result: '< 8' })],
  [
    'survey/leach-test-asked-for',
    'a total of 100 mg/kg of lead',
    leached({ analyte: 'Lead', result: '100', unit: 'mg/kg' }),
  ],
  [
    'survey/no-result',
    'a result cell that says "sample broken"',
    () =>
      [resultFinding({ kind: 'text', text: 'sample broken' }, pcb, '/survey/laboratory/0', 'S-1')].flatMap(
        found => found ?? [],
      ),
  ],
  [
    'survey/reporting-limit-too-high',
    'PCB not detected below 60 mg/kg',
    () =>
      [resultFinding({ kind: 'below', limit: '60' }, pcb, '/survey/laboratory/0', 'S-1')].flatMap(
        found => found ?? [],
      ),
  ],
  [
    'survey/wrong-unit',
    'PCB in a cable given in gallons',
    () =>
      surveyedPresence(
        library.materials,
        { built: 1957 },
        [sample({ material: 'pcb-cable', analyte: 'PCB, total', unit: 'gal' })],
        library.tripPoints,
        [],
      ).findings,
  ],
);

const planned = { ...base.options, 'episodic-event': 'planned' };
export const ruleExamples = examples(
  [
    'rules/checked-long-ago',
    'trip-points asked for on 1 January 2040',
    () => uncheckedTripPoints(library.tripPoints, '2040-01-01'),
  ],
  ['rules/clearance-asks', 'topside taken off for the clearance', site({}, 'clearance')],
  [
    'rules/clearance-too-small',
    'a clearance of 90 ft asked for',
    site({ clearanceRequired: figure('90', 'ft') }),
  ],
  [
    'rules/coating-date-unknown',
    'no year of the last coating',
    () => {
      const { lastCoating: _unknown, ...rest } = base.vessel;
      return evaluated({ vessel: rest }).findings;
    },
  ],
  [
    'rules/diver-far-from-exit',
    'a hold of 200 ft open to divers',
    () =>
      evaluated({
        options: { ...base.options, 'diver-access': 'open' },
        vessel: {
          ...base.vessel,
          compartments: [
            {
              id: 'hold',
              title: 'Hold',
              from: figure('0', 'ft'),
              to: figure('200', 'ft'),
              bottom: figure('0', 'ft'),
              top: figure('30', 'ft'),
              permeability: figure('0.9', '1'),
              openings: [],
              vents: [],
              connections: [],
            },
          ],
        },
      }).findings,
  ],
  [
    'rules/hull-too-old-to-release',
    'a hull of 1957 from a federal agency',
    () =>
      evaluated({
        options: { ...base.options, 'hull-source': 'federal-agency' },
        vessel: { ...base.vessel, built: 1957 },
      }).findings,
  ],
  ['rules/not-under-general-permit', 'a site 80 ft deep', site({ waterDepth: figure('80', 'ft') })],
  [
    'rules/notice-day-passed',
    'asbestos work begun before its notice',
    () =>
      evaluated({
        statusDate: '2027-02-08',
        items: [
          {
            item: 'asbestos-enclosure',
            actualStart: '2027-02-01',
            actualFinish: '2027-02-05',
            note: 'begun early',
          },
        ],
      }).findings,
  ],
  ['rules/notice-due', 'the example as it is', worked({})],
  [
    'rules/notice-missing',
    'the asbestos notice left out',
    items({ item: 'asbestos-notice', include: false, note: 'left out' }),
  ],
  [
    'rules/notice-too-late',
    'a schedule that gives the request for a safety zone the day before the sinking',
    () => {
      const { estimate, project } = evaluated({});
      if (estimate === undefined) return [];
      const sinking =
        estimate.schedule.activities.find(({ id }) => id === 'sinking-by-flooding')?.start ?? '';
      const late = isoOf(dayOf(sinking) - 1);
      const activities = estimate.schedule.activities.map(one =>
        one.id === 'safety-zone-request' ? { ...one, start: late, finish: late } : one,
      );
      return ruleFindings(project, { ...estimate, schedule: { ...estimate.schedule, activities } });
    },
  ],
  [
    'rules/pcb-approval-first',
    'the risk-based route without its application',
    () =>
      evaluated({
        options: { ...base.options, 'pcb-route': 'risk-based' },
        items: [{ item: 'risk-based-application', include: false, note: 'left out' }],
      }).findings,
  ],
  [
    'rules/pcb-equipment',
    'a liquid of 500 ppm PCB',
    () =>
      evaluated({
        survey: {
          ...base.survey,
          laboratory: [
            sample({ material: 'liquid-pcb', analyte: 'PCB total', result: '500', unit: 'mg/kg' }),
          ],
        },
      }).findings,
  ],
  ['rules/pcb-route', 'the example as it is', worked({})],
  [
    'rules/permit-expires',
    'a permit that ends before the sinking',
    () => {
      const { permit } = base.site;
      return permit === undefined
        ? []
        : evaluated({ site: { ...base.site, permit: { ...permit, expires: '2027-06-30' } } }).findings;
    },
  ],
  [
    'rules/plate-too-thin',
    'a plate of 6.3 mm',
    () =>
      evaluated({
        benefits: { ...base.benefits, plateThickness: figure('6.3', 'mm') } as Project['benefits'],
      }).findings,
  ],
  [
    'rules/second-event',
    'a planned episodic event, and waste of another category months later',
    worked({ options: planned }),
  ],
  ['rules/tbt-presumed', 'a last coating of 2002', vessel({ lastCoating: 2002 })],
  [
    'goals/unmet',
    'the stripping of cable left out',
    items({ item: 'cable-stripping', include: false, note: 'left out' }),
  ],
  [
    'estimate/outside-range',
    'a thousand times the oily water that was measured',
    () =>
      evaluated({
        survey: {
          ...base.survey,
          measured: base.survey.measured.map(row => ({
            ...row,
            figure: {
              ...row.figure,
              value: String(1000 * Number(row.figure.value)),
              low: undefined,
              high: undefined,
            },
          })),
        },
      }).findings,
  ],
  [
    'rates/below-wage-table',
    'a wage table of twice the rate book',
    () => {
      const [trade] = library.rateBook.trades;
      return trade === undefined
        ? []
        : evaluated({
            rates: { ...base.rates, wages: [{ trade: trade.id, figure: figure('500', 'USD/h') }] },
          }).findings;
    },
  ],
  [
    'document/deadline-before-start',
    'a last date in 2019',
    worked({ calendars: { ...base.calendars, deadline: '2019-01-01' } }),
  ],
  [
    'document/start-long-past',
    'a start in 2019',
    worked({ calendars: { ...base.calendars, start: '2019-03-01' } }),
  ],
  [
    'bid/offer-expired',
    'an offer that stood until yesterday',
    worked({ bid: { items: [], alternates: [], offer: { validUntil: '2026-11-23' } } }),
  ],
  ['rates/market-rate-out-of-date', 'the example in 2026 with scrap prices of an earlier year', worked({})],
  [
    'towing/days-differ',
    'a tow of 12 days where distance and speed ask for two',
    () =>
      evaluated({
        items: [{ item: 'ocean-tow', duration: figure('12', 'day'), note: 'too long' }] as Project['items'],
      }).findings,
  ],
  ['towing/route-limit', 'a bridge of 20 ft on the way', site({ lowestBridge: figure('20', 'ft') })],
);

const quote = (change: Partial<Project['quotes'][number]>): Project['quotes'][number] => ({
  id: 'q',
  vendor: 'Kestrel Marine (invented)',
  dated: '2026-10-01',
  validUntil: '2027-01-31',
  covers: [{ item: 'cable-stripping', share: '1' }],
  exclusions: [],
  amount: { value: '100000', unit: 'USD', basis: 'quoted', source: 'invented quote', year: 2026 },
  chosen: true,
  ...change,
});
export const quoteExamples = examples(
  [
    'quotes/carried-elsewhere',
    'a quote for the tow beside the line of its tug',
    worked({ quotes: [quote({ covers: [{ item: 'ocean-tow', share: '1' }] })] }),
  ],
  [
    'quotes/covered-twice',
    'two chosen quotes for one line',
    worked({ quotes: [quote({}), quote({ id: 'other' })] }),
  ],
  [
    'quotes/covers-in-part',
    'a quote without scaffolding',
    worked({ quotes: [quote({ exclusions: ['scaffolding'] })] }),
  ],
  [
    'quotes/covers-other-work',
    'a quote for work the scenario does not have',
    () =>
      evaluated({
        quotes: [quote({})],
        items: [{ item: 'cable-stripping', include: false, note: 'left out' }],
      }).findings,
  ],
  [
    'quotes/expired',
    'a quote that stood until yesterday',
    worked({ quotes: [quote({ validUntil: '2026-11-23' })] }),
  ],
  [
    'quotes/far-from-computed',
    'a price for a unit typed as a lump sum',
    worked({ quotes: [quote({ amount: { ...quote({}).amount, value: '4.25' } })] }),
  ],
  ['quotes/takes-scrap', 'a quote for stripping cable', worked({ quotes: [quote({})] })],
  [
    'quotes/no-amount',
    'a quote in dollars an hour',
    worked({ quotes: [quote({ amount: { ...quote({}).amount, unit: 'USD/h' } })] }),
  ],
);

const triangular: Distribution = { kind: 'triangular', low: 80, likely: 100, high: 180 };
const small = {
  ranges: { quantity: triangular, days: triangular },
  lines: { yard: (read: (id: string) => number) => read('quantity') },
};
const correlated =
  (...pairs: [string, string, number][]) =>
  () =>
    simulate(
      prepare({
        ranges: { a: triangular, b: triangular, c: triangular },
        correlations: pairs.map(([first, second, correlation]) => ({ first, second, correlation })),
      }),
      { trials: 100, seed: 1, ranksDrivers: false },
    )?.findings ?? [];

export const riskExamples = examples(
  [
    'risk/contingency-not-simulated',
    'contingency at a confidence before any simulation',
    worked({ contingency: { policy: 'confidence', confidence: '0.8' } }),
  ],
  ['risk/correlation', 'a correlation with a range that is not there', correlated(['a', 'z', 0.5])],
  [
    'risk/correlations-impossible',
    'three ranges, each against the other two',
    correlated(['a', 'b', -0.9], ['b', 'c', -0.9], ['a', 'c', -0.9]),
  ],
  [
    'risk/counted-twice',
    'a range that a driver moves too',
    () =>
      coverageFindings(
        prepare({
          ...small,
          moves: { quantity: ['yard'] },
          drivers: [
            {
              id: 'd',
              title: 'Access',
              probability: 1,
              factor: { kind: 'triangular', low: 1, likely: 1.1, high: 1.3 },
              inputs: ['quantity'],
            },
          ],
        }),
      ),
  ],
  [
    'risk/nothing-to-simulate',
    'an estimate without a schedule',
    () =>
      prepareRisk(evaluated({ relationships: [{ from: 'ocean-tow', to: 'tank-washing', kind: 'FS' }] }))
        .findings,
  ],
  [
    'risk/range-order',
    'a range from 2 down to 1',
    () => distributionFindings({ kind: 'uniform', low: 2, high: 1 }, '/risk/ranges/0'),
  ],
  [
    'risk/range-shape',
    'a lognormal range that starts below zero',
    simulated({
      ranges: [
        {
          given: 'locationFactor/location',
          low: '-0.5',
          high: '1.2',
          shape: 'lognormal',
          basis: 'judgement',
          source: 'made up',
          year: 2026,
        },
      ],
    }),
  ],
  [
    'risk/range-without-value',
    'a range from 2 to 3 around a location factor of 1',
    simulated({
      ranges: [
        {
          given: 'locationFactor/location',
          low: '2',
          high: '3',
          basis: 'judgement',
          source: 'made up',
          year: 2026,
        },
      ],
    }),
  ],
  [
    'risk/trials-without-answer',
    'a line that has no answer in one of ten trials',
    () =>
      simulate(
        prepare({
          ranges: { x: { kind: 'uniform', low: 0, high: 1 } },
          lines: { only: read => (read('x') > 0.9 ? Number.NaN : 1) },
        }),
        { trials: 100, seed: 1, ranksDrivers: false },
      )?.findings ?? [],
  ],
  [
    'risk/unknown-event',
    'an event left out that the library does not have',
    simulated({ leftOut: [{ event: 'no-such', reason: 'made up' }] }),
  ],
  [
    'risk/unknown-range',
    'a range of a given that is not there',
    simulated({
      ranges: [{ given: 'no/such', low: '1', high: '2', basis: 'judgement', source: 'made up', year: 2026 }],
    }),
  ],
);

const divided = (by: string | undefined) => () => {
  const sheet = new Sheet('s');
  const block = sheet.block('b', 'Block');
  block.place(
    'x',
    'Share',
    over(block.given('a', 'Part', 'h', give('1', 'h')), block.given('b', 'Whole', 'h', give(by, 'h'))),
  );
  return sheetFindings(evaluateSheet(sheet));
};
export const sheetExamples = examples(
  ['sheet/not-calculable', 'one hour over no hours', divided('0')],
  ['sheet/not-given', 'one hour over hours that nobody gave', divided(undefined)],
);

const mapping = (fields: Partial<ImportMapping> & Pick<ImportMapping, 'kind'>) =>
  importMappingSchema.parse({ id: 'lab', title: 'Invented table', columns: {}, ...fields });
const imported = (table: string[][], how: ImportMapping) => () =>
  importTable(base, library, table, how).findings;
const wages = mapping({ kind: 'wages', columns: { trade: 'Trade', wage: 'Wage' } });
const prices = mapping({ kind: 'prices', columns: { item: 'Item', unit: 'Unit', price: 'Price' } });
const priceOf = (item: string) => [
  ['Item', 'Unit', 'Price'],
  [item, 'each', '5'],
];
const twoTows: typeof library = {
  ...library,
  items: library.items.flatMap(one => (one.id === 'ocean-tow' ? [one, { ...one, id: 'second-tow' }] : [one])),
};
export const importExamples = examples(
  [
    'imports/item-not-known',
    'a price for a work item of no project',
    imported(priceOf('Keel polish'), prices),
  ],
  [
    'imports/item-not-unique',
    'a price for one of two work items of one title',
    () => importTable(base, twoTows, priceOf('Tow to the site'), prices).findings,
  ],
  [
    'imports/unit-not-known',
    'a price for one bucket',
    imported(
      [
        ['Item', 'Unit', 'Price'],
        ['ocean-tow', '$/bucket', '5'],
      ],
      prices,
    ),
  ],
  [
    'imports/beyond-limits',
    'a wage below zero',
    imported(
      [
        ['Trade', 'Wage'],
        ['burner', '-5'],
      ],
      wages,
    ),
  ],
  ['imports/no-such-column', 'a wage table without wages', imported([['Trade'], ['burner']], wages)],
  ['imports/quote-incomplete', 'a price without its vendor', imported(priceOf('ocean-tow'), prices)],
  [
    'imports/row-not-read',
    'a wage of "ask later"',
    imported(
      [
        ['Trade', 'Wage'],
        ['burner', 'ask later'],
      ],
      wages,
    ),
  ],
  [
    'imports/no-price-year',
    'a wage of no year',
    imported(
      [
        ['Trade', 'Wage'],
        ['burner', '30'],
      ],
      wages,
    ),
  ],
  [
    'imports/basis-not-known',
    'a wage that rests on hearsay',
    imported(
      [
        ['Trade', 'Wage', 'Basis'],
        ['Burner', '30', 'hearsay'],
      ],
      mapping({ kind: 'wages', columns: { trade: 'Trade', wage: 'Wage', basis: 'Basis' } }),
    ),
  ],
  [
    'imports/trade-not-known',
    'a wage of a sail maker',
    imported(
      [
        ['Trade', 'Wage'],
        ['Sail maker', '30'],
      ],
      wages,
    ),
  ],
);
