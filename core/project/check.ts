import { at, type Figure, type Finding, keepingParts } from '../base';
import { isoOf, parseIsoDate } from '../calendar';
import { amountWords, compareQuantities, isUnit, isConvertible, quantity, type Quantity } from '../units';
import type { Library } from '../work';
import { checkCounts } from './check-counts';
import { checkFunding } from './check-funding';
import { checkItems, knownItems } from './check-items';
import { checkRates } from './check-rates';
import { checkRisk } from './check-risk';
import { placedGivens, type PlacedGiven } from './given-rules';
import { itemGivens } from './item-rules';
import { withScenario } from './overlay';
import type { Project } from './schema';

/**
 * What the schema cannot see: units that do not measure what is meant, amounts beyond their limits, keys that
 * nothing stands behind, scenarios that do not fit. All of them, each with place and remedy.
 */
export function checkProject(project: Project, library: Library): Finding[] {
  return [
    ...checkGivens(project),
    ...itemGivens(project.items).flatMap(checkGiven),
    ...checkKeys(project, library),
    ...checkItems(project, library),
    ...checkCounts(project),
    ...checkDates(project),
    ...checkFunding(project, library),
    ...checkRates(project, library),
    ...checkRisk(project, library),
    ...Object.entries(keyedLists(project)).flatMap(([place, ids]) => checkTwins(place, ids)),
    ...project.scenarios.flatMap(scenario => withScenario(project, scenario).findings),
  ];
}

/** The long lists, whose figures have no rule here. */
const WITHOUT_RULES = new Set(['items', 'ownItems', 'relationships', 'scenarios']);

const checkGivens = keepingParts(
  12,
  (project: Project) =>
    Object.entries(project).flatMap(([key, section]) => (WITHOUT_RULES.has(key) ? [] : [key, section])),
  project => placedGivens(project).flatMap(checkGiven),
);

/** A given against its rule: the unit must measure the right thing, and the amount must lie within its limits. */
export function checkGiven({ place, figure, rule }: PlacedGiven): Finding[] {
  if (!isUnit(figure.unit) || !isConvertible(figure.unit, rule.unit))
    return [wrongUnit(place, figure, rule.title, rule.unit)];
  const unit = figure.unit;
  const limits = [rule.above, rule.from, rule.to].map(limit =>
    limit === undefined ? undefined : quantity(limit, rule.unit),
  );
  return [figure.value, figure.low, figure.high]
    .flatMap(text => {
      if (text === undefined) return [];
      const amount = quantity(text, unit);
      return outside(amount, limits) ? [outOfLimits(place, amount, rule)] : [];
    })
    .slice(0, 1)
    .concat(rangeFindings(place, figure));
}

function outside(amount: Quantity, [above, from, to]: (Quantity | undefined)[]): boolean {
  if (above !== undefined && compareQuantities(amount, above) <= 0) return true;
  if (from !== undefined && compareQuantities(amount, from) < 0) return true;
  return to !== undefined && compareQuantities(amount, to) > 0;
}

/** Low, likely and high must stand in that order. */
export function rangeFindings(place: string, figure: Figure): Finding[] {
  const order = [figure.low, figure.value, figure.high].filter(text => text !== undefined);
  const inOrder = order.every(
    (text, i) => i === 0 || compareQuantities(quantity(at(order, i - 1), '1'), quantity(text, '1')) <= 0,
  );
  if (inOrder) return [];
  return [
    {
      code: 'given/range-order',
      weight: 'blocks',
      place,
      message: `The range ${said(figure, figure.low)} to ${said(figure, figure.high)} does not hold the value ${said(figure, figure.value)}.`,
      meaning: 'The figure is left out until this is put right.',
      remedy: 'Give low, likely and high in rising order.',
    },
  ];
}

function said({ unit }: Figure, value: string | undefined): string {
  return value === undefined ? '–' : amountWords({ value, unit });
}

function wrongUnit(place: string, figure: Figure, title: string, unit: string): Finding {
  return {
    code: 'given/wrong-unit',
    weight: 'blocks',
    place: `${place}/unit`,
    message: `${title} is given in "${figure.unit}", which does not measure it.`,
    meaning: 'The figure and everything that depends on it is left out.',
    remedy: `Give it in a unit that converts to ${unit}.`,
  };
}

function outOfLimits(place: string, amount: Quantity, rule: PlacedGiven['rule']): Finding {
  const limit =
    rule.above !== undefined
      ? `above ${rule.above}`
      : rule.from !== undefined
        ? `${rule.from} or more`
        : 'any amount';
  return {
    code: 'given/out-of-limits',
    weight: 'blocks',
    place: `${place}/value`,
    message: `${rule.title} is given as ${amountWords(amount)}; it must be ${limit} and at most ${amountWords({ value: rule.to, unit: rule.unit })}.`,
    meaning: 'The figure and everything that depends on it is left out.',
    remedy: rule.remedy ?? 'Correct the amount or its unit.',
  };
}

function checkKeys(project: Project, library: Library): Finding[] {
  const items = knownItems(project, library).map(item => item.id);
  const optionsById = new Map(library.options.map(option => [option.id, option]));
  return [
    ...unknown(
      '/vessel/hullType',
      [project.vessel.hullType],
      library.hullTypes.map(type => type.id),
      'hull type',
    ),
    ...unknown('/rates/book', [project.rates.book], [library.rateBook.id], 'rate book'),
    ...unknown(
      '/rates/wages',
      project.rates.wages.map(row => row.trade),
      library.rateBook.trades.map(trade => trade.id),
      'trade',
    ),
    ...unknown(
      '/survey/measured',
      project.survey.measured.map(row => row.driver),
      library.drivers.map(driver => driver.id),
      'driver',
    ),
    ...unknown(
      '/survey/laboratory',
      project.survey.laboratory.map(row => row.material),
      library.materials.map(material => material.id),
      'material',
    ),
    ...unknown(
      '/items',
      project.items.map(row => row.item),
      items,
      'work item',
    ),
    ...unknown(
      '/quotes',
      project.quotes.flatMap(quote => quote.covers.map(cover => cover.item)),
      items,
      'work item',
    ),
    ...unknown('/options', Object.keys(project.options), [...optionsById.keys()], 'option'),
    ...Object.entries(project.options).flatMap(([id, value]) =>
      unknown(
        `/options/${id}`,
        [value],
        optionsById.get(id)?.values.map(choice => choice.id) ?? [value],
        'choice',
      ),
    ),
  ];
}

function unknown(place: string, used: readonly string[], known: readonly string[], what: string): Finding[] {
  if (used.length === 0) return [];
  const isKnown = new Set(known);
  return used
    .filter(id => !isKnown.has(id))
    .map(id => ({
      code: `document/unknown-${what.replaceAll(' ', '-')}`,
      weight: 'blocks',
      place,
      message: `There is no ${what} "${id}".`,
      meaning: 'What depends on it is left out of the estimate.',
      remedy: known.length <= 20 ? `Use one of: ${known.join(', ')}.` : `Choose a ${what} from the list.`,
    }));
}

function checkDates(project: Project): Finding[] {
  const dates: [string, string | undefined][] = [
    ['/statusDate', project.statusDate],
    ['/calendars/start', project.calendars.start],
    ['/calendars/deadline', project.calendars.deadline],
    ['/rates/priceDate', project.rates.priceDate],
    ...project.quotes.flatMap((quote): [string, string][] => [
      [`/quotes/${quote.id}/dated`, quote.dated],
      [`/quotes/${quote.id}/validUntil`, quote.validUntil],
    ]),
    ...project.items.flatMap((item): [string, string | undefined][] => [
      [`/items/${item.item}/notBefore`, item.notBefore],
      [`/items/${item.item}/actualStart`, item.actualStart],
      [`/items/${item.item}/actualFinish`, item.actualFinish],
    ]),
  ];
  return dates.flatMap(([place, text]): Finding[] => {
    if (text === undefined) return [];
    const day = parseIsoDate(text);
    if (day !== undefined && isoOf(day) === text) return [];
    return [
      {
        code: 'document/no-such-date',
        weight: 'blocks',
        place,
        message: `"${text}" is not a date of the calendar.`,
        meaning: 'The project is not estimated until this is put right.',
        remedy: 'Write the date as YYYY-MM-DD.',
      },
    ];
  });
}

/** The lists whose entries are known by a key of their own. */
function keyedLists({ vessel, ...project }: Project): Readonly<Record<string, readonly string[]>> {
  const ids = (list: readonly { readonly id: string }[]) => list.map(({ id }) => id);
  return {
    '/scenarios': ids(project.scenarios),
    '/quotes': ids(project.quotes),
    '/items': project.items.map(({ item }) => item),
    '/ownItems': ids(project.ownItems),
    '/vessel/tanks': ids(vessel.tanks),
    '/vessel/compartments': ids(vessel.compartments),
    '/vessel/weights': ids(vessel.weights),
  };
}

function checkTwins(place: string, ids: readonly string[]): Finding[] {
  const seen = new Set<string>();
  const twins = ids.filter(id => seen.size === seen.add(id).size);
  return twins.map(id => ({
    code: 'document/same-key-twice',
    weight: 'blocks',
    place,
    message: `The key "${id}" is used twice.`,
    meaning: 'It is not clear which of the two is meant.',
    remedy: 'Give each entry a key of its own.',
  }));
}
