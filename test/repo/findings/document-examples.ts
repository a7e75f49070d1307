import { readFileSync } from 'node:fs';
import { evaluate, shippedLibrary, TEMPLATE_FILES } from '../../../core/evaluation';
import { parseMoney } from '../../../core/money';
import {
  checkProject,
  LARGEST,
  readProject,
  riskSchema,
  withScenario,
  type Project,
} from '../../../core/project';
import { parseQuantity } from '../../../core/units';
import { readLibrary } from '../../../core/work';
import { demoProject } from '../../core/evaluation/demo';
import { examples, type Told } from './example';

const TEXT = readFileSync('demo/wrenfield.reef.json', 'utf8');
const base = demoProject();
const library = shippedLibrary();

/** Reads a text as a document. */
const text = (words: string) => () => readProject(words).findings;
/** The file of the example with one place set, or taken out. */
const edited = (at: string, to?: unknown) => () => {
  const document = JSON.parse(TEXT) as Record<string, unknown>;
  const steps = at.split('/').slice(1);
  const last = steps.pop() ?? '';
  let place = document;
  for (const step of steps) place = place[step] as Record<string, unknown>;
  if (to === undefined) Reflect.deleteProperty(place, last);
  else place[last] = to;
  return readProject(JSON.stringify(document)).findings;
};
/** The checks of the example with some of its sections changed. */
const checked = (change: Partial<Project>) => (): readonly Told[] =>
  checkProject({ ...base, ...change }, library);
const risk = (section: object) => checked({ risk: riskSchema.parse(section) });
const figure = (value: string, unit: string) =>
  ({ value, unit, basis: 'judgement', source: 'made up', year: 2026 }) as const;
const ownItem = (change: Partial<Project['ownItems'][number]>): Project['ownItems'] => {
  const like = library.items.find(item => item.id === 'cable-stripping');
  if (like === undefined) throw new Error('the library has cable-stripping');
  return [{ ...like, id: 'own-work', after: [], ...change }];
};

/** The tank cleaning crew with some of its numbers set. */
const rates = (...set: (readonly [field: string, value: string, unit?: string])[]) =>
  checked({
    rates: {
      ...base.rates,
      overrides: set.map(([field, value, unit = 'person']) => ({
        at: `crews/tank-crew/${field}`,
        figure: figure(value, unit),
      })),
    },
  });

export const documentExamples = examples(
  [
    'document/bad-character',
    'a control character inside a text',
    text('{"format":"reefwright-project","title":"a\u0001b"}'),
  ],
  [
    'document/changed-outside',
    'a title changed by hand',
    text(TEXT.replace('Lantern Ground', 'Lantern Bank')),
  ],
  ['document/does-not-fit', 'an option under a name with blanks', edited('/options/my own option', 'x')],
  ['document/empty', 'a file of nothing', text('')],
  ['document/field-twice', 'a field given twice', text('{"a":1,"a":2}')],
  ['document/forbidden-field', 'a field called __proto__', text('{"__proto__":{"a":1}}')],
  ['document/missing-field', 'a length without its unit', edited('/vessel/length/unit')],
  ['document/newer-version', 'version 999', edited('/version', 999)],
  ['document/no-such-date', 'a status date of 30 February', checked({ statusDate: '2026-02-30' })],
  ['document/no-version', 'version 0', edited('/version', 0)],
  [
    'document/not-a-choice',
    'a relationship of kind XX',
    edited('/relationships', [{ from: 'a', to: 'b', kind: 'XX' }]),
  ],
  ['document/not-json', 'a file cut short', text(TEXT.slice(0, 900))],
  ['document/number-out-of-range', 'version 1e999', text(TEXT.replace('"version": 1', '"version": 1e999'))],
  ['document/other-format', 'a list instead of a project', text('[]')],
  [
    'document/same-key-twice',
    'the first scenario twice',
    checked({ scenarios: [...base.scenarios.slice(0, 1), ...base.scenarios.slice(0, 1)] }),
  ],
  ['document/too-big', 'a title of 10,000 letters', edited('/title', 'x'.repeat(10_000))],
  ['document/too-deep', 'two hundred brackets', text('['.repeat(200))],
  [
    'document/too-large',
    'more than 50 million characters',
    () => readProject(' '.repeat(LARGEST + 1)).findings,
  ],
  ['document/too-long', 'a list of 50,001 entries', text(`[${'1,'.repeat(50_001)}1]`)],
  ['document/too-small', 'a title of no letters', edited('/title', '')],
  [
    'document/unknown-choice',
    'an option set to a word it does not offer',
    checked({ options: { ...base.options, 'pcb-route': 'nowhere' } }),
  ],
  [
    'document/unknown-driver',
    'a measured driver that is not there',
    checked({ survey: { ...base.survey, measured: [{ driver: 'no-such', figure: figure('1', 'ft') }] } }),
  ],
  ['document/unknown-field', 'a field "colour"', edited('/colour', 'grey')],
  [
    'document/unknown-hull-type',
    'a hull type that is not there',
    checked({ vessel: { ...base.vessel, hullType: 'no-such' } }),
  ],
  [
    'document/unknown-material',
    'a sample of a material that is not there',
    checked({
      survey: {
        ...base.survey,
        laboratory: base.survey.laboratory.slice(0, 1).map(row => ({ ...row, material: 'no-such' })),
      },
    }),
  ],
  [
    'document/unknown-option',
    'an option that is not there',
    checked({ options: { ...base.options, 'no-such': 'x' } }),
  ],
  [
    'document/unknown-rate-book',
    'a rate book that is not there',
    checked({ rates: { ...base.rates, book: 'no-such' } }),
  ],
  [
    'document/unknown-trade',
    'a wage of a trade that is not there',
    checked({ rates: { ...base.rates, wages: [{ trade: 'no-such', figure: figure('30', 'USD/h') }] } }),
  ],
  [
    'document/unknown-work-item',
    'a change of a work item that is not there',
    checked({ items: [{ item: 'no-such', include: false, note: 'x' }] }),
  ],
  ['document/wrong-form', 'a start date written as 1/2/2027', edited('/calendars/start', '1/2/2027')],
  ['document/wrong-kind', 'a title that is a number', edited('/title', 7)],
);

export const projectExamples = examples(
  [
    'given/out-of-limits',
    'a lightship of -5,150 long tons',
    checked({ vessel: { ...base.vessel, lightship: figure('-5150', 'long-ton') } }),
  ],
  [
    'given/range-order',
    'a lightship below its own low end',
    checked({ vessel: { ...base.vessel, lightship: { ...figure('5150', 'long-ton'), low: '6000' } } }),
  ],
  [
    'given/wrong-unit',
    'a lightship in feet',
    checked({ vessel: { ...base.vessel, lightship: figure('5150', 'ft') } }),
  ],
  [
    'given/not-a-count',
    'a tow that is to take three months',
    checked({ items: [{ item: 'ocean-tow', duration: figure('3', 'month'), note: 'asked for' }] }),
  ],
  [
    'items/key-taken',
    'an own item under a key of the library',
    checked({ ownItems: ownItem({ id: 'cable-stripping' }) }),
  ],
  [
    'items/loop',
    'tank washing after the tow',
    checked({ relationships: [{ from: 'ocean-tow', to: 'tank-washing', kind: 'FS' }] }),
  ],
  [
    'items/names-nothing',
    'an own item of a crew that is not there',
    checked({ ownItems: ownItem({ crew: 'no-such' }) }),
  ],
  [
    'rates/crew-of-nobody',
    'a tank cleaning crew without its people',
    rates(['tank-cleaner', '0'], ['foreman', '0'], ['equipment-operator', '0']),
  ],
  ['rates/no-crew-at-once', 'no tank cleaning crew at once', rates(['available', '0', 'each'])],
  [
    'rates/mark-up-above-cost',
    'a profit of 12 instead of 0.12',
    checked({
      rates: { ...base.rates, overrides: [{ at: 'markUps/profit/share', figure: figure('12', '1') }] },
    }),
  ],
  [
    'scenario/change-does-not-fit',
    'a scenario that changes the format',
    () => withScenario(base, { id: 'x', title: 'X', changes: [{ at: '/format', to: 'other' }] }).findings,
  ],
  [
    'funding/no-such-date',
    'an award on 30 February',
    checked({ funding: { ...funding(), awardDate: '2026-02-30' } }),
  ],
  [
    'funding/period-short',
    'an award that begins and ends on the same day',
    checked({
      funding: {
        ...funding(),
        sources: funding().sources.map(source => ({
          ...source,
          period: { start: '2027-03-01', finish: '2027-03-01' },
        })),
      },
    }),
  ],
  [
    'funding/period-order',
    'an award period that ends before it starts',
    checked({
      funding: {
        ...funding(),
        sources: funding().sources.map(source => ({
          ...source,
          period: { start: '2028-01-01', finish: '2027-01-01' },
        })),
      },
    }),
  ],
  [
    'funding/names-nothing',
    'a refused cost of an item that is not there',
    checked({ funding: { ...funding(), notAllowable: [{ item: 'no-such', reason: 'x' }] } }),
  ],
  [
    'risk/faulty-section',
    'a range that runs from 2 down to 1',
    risk({
      ranges: [{ given: 'x', low: '2', high: '1', basis: 'judgement', source: 'made up', year: 2026 }],
    }),
  ],
  [
    'risk/no-impact',
    'an event that costs and delays nothing',
    risk({
      register: [
        {
          id: 'e',
          title: 'Nothing',
          owner: 'contractor',
          probability: figure('0.3', '1'),
          costs: [],
          delays: [],
          note: 'x',
        },
      ],
    }),
  ],
  [
    'risk/no-contingency-policy',
    'a policy of a confidence, and a share alone',
    checked({ contingency: { policy: 'confidence', share: figure('0.1', '1') } }),
  ],
  [
    'risk/two-contingencies',
    'a share and a confidence',
    checked({ contingency: { policy: 'confidence', confidence: '0.8', share: figure('0.1', '1') } }),
  ],
  [
    'templates/row-does-not-fit',
    'a file of materials that is a number',
    () => readLibrary({ ...TEMPLATE_FILES, materials: 7 }).findings,
  ],
);

function funding(): NonNullable<Project['funding']> {
  if (base.funding === undefined) throw new Error('the example has a funding section');
  return base.funding;
}

const typed = (words: string) => (): readonly Told[] => {
  const read = parseQuantity(words, { place: '/vessel/length', like: 'ft' });
  return 'code' in read ? [read] : [];
};

export const typedExamples = examples(
  [
    'units/ambiguous-unit',
    '"5 tons" where a mass belongs',
    () => {
      const read = parseQuantity('5 tons', { place: '/vessel/lightship', like: 't' });
      return 'code' in read ? [read] : [];
    },
  ],
  ['units/negative', '"-5 ft" where a length belongs', typed('-5 ft')],
  ['units/no-unit', '"523" where a length belongs', typed('523')],
  ['units/not-a-number', '"long" where a length belongs', typed('long')],
  ['units/unknown-unit', '"5 cubits" where a length belongs', typed('5 cubits')],
  ['units/wrong-dimension', '"5 h" where a length belongs', typed('5 h')],
  [
    'money/not-an-amount',
    '"12.345" as money',
    () => {
      const read = parseMoney('12.345', '/quotes/q/amount');
      return 'code' in read ? [read] : [];
    },
  ],
);

/** What an evaluation of the example says after a change; a small search, since the schedule is not what is asked. */
export function evaluatedFindings(change: Partial<Project>, options: object = {}): readonly Told[] {
  return evaluate(
    { ...base, ...change },
    { today: '2026-11-24', seed: 1, schedules: 10, upright: false, ...options },
  ).findings;
}
