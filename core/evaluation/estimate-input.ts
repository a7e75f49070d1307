import { BugError, keeping, type Figure, type Finding } from '../base';
import { simulatedFor, simulatedShare, type SimulatedContingency } from './risk/policy-contingency';
import { surveyOf } from './survey';
import type { EstimateInput } from '../estimate';
import { checkGiven, ITEM_FIGURES, itemGivens, rateGivens, type PlacedGiven, type Project } from '../project';
import { givenFrom, NOT_USED, type Given } from '../sheet';
import { isUnit, type PlainUnit, type Unit } from '../units';
import { plantOf, type Particular, type ShipGivens } from '../vessel';
import type { Library, PlannerOption } from '../work';

/** What of the document is faulty: a figure at or below such a place has no value, and nothing stands in for it. */
export type Faults = ReadonlySet<string>;

/** The places of the findings that withhold a figure. */
export function faultsOf(findings: readonly Finding[]): Faults {
  return new Set(findings.filter(finding => finding.weight === 'blocks').map(finding => finding.place));
}

/** A project, as a scenario sees it, as the input of the estimate. */
export function estimateInput(
  project: Project,
  library: Library,
  faults: Faults,
  simulated?: SimulatedContingency,
): EstimateInput {
  const { vessel, calendars } = project;
  const type = library.hullTypes.find(candidate => candidate.id === vessel.hullType);
  if (type === undefined) throw new BugError(`no hull type ${vessel.hullType}: the keys are checked before`);
  const options = chosenOptions(project, library);
  const shift = shiftOf(library.options, options);
  return {
    library,
    ship: shipGivens(project, type, options, library, faults),
    years: { built: vessel.built, lastRefit: vessel.lastRefit, lastCoating: vessel.lastCoating },
    plant: plantOf(vessel.plant, type, vessel.built),
    presence: surveyOf(project, library).presence,
    options,
    measured: measuredDrivers(project, library, faults),
    adjustments: adjustmentsOf(project.items),
    overrides: overridesOf(project.rates),
    calendars: {
      start: calendars.start,
      federalHolidays: calendars.federalHolidays,
      shiftHours: Number(shift.hours.value),
      yardDaysAWeek: Number(shift.daysAWeek.value),
      closures: calendars.closures,
    },
    shiftHours: givenFrom(shift.hours, 'h/work-day', '/options/shift-pattern'),
    overtimeShare: givenFrom(shift.overtimeShare, '1', '/options/shift-pattern'),
    shiftFactor: givenFrom(shift.hoursFactor, '1', '/options/shift-pattern'),
    prices: { priceDate: project.rates.priceDate, fixedYear: project.rates.fixedPriceYear },
    contingencyShare: contingencyShare(project, faults, simulated),
    statusDate: project.statusDate,
  };
}

/**
 * Overrides of the rate book by place; the same map for the same section of the document. One beyond its limits is in
 * no unit, so that nothing is worked out from it.
 */
const overridesOf = keeping(12, (rates: Project['rates']): ReadonlyMap<string, Figure> => {
  const held = heldBack(rateGivens(rates));
  return new Map([
    ...rates.wages.map(({ trade, figure }): [string, Figure] => [`trades/${trade}/wage`, held(figure)]),
    ...rates.overrides.map(({ at, figure }): [string, Figure] => [at, held(figure)]),
  ]);
});

/** What the planner changed of each work item, held back in the same way. */
const adjustmentsOf = keeping(12, (items: Project['items']): EstimateInput['adjustments'] => {
  const held = heldBack(itemGivens(items));
  return new Map(items.map(change => [change.item, withHeld(change, held)]));
});

/** Figures as they are used: one beyond its limits is in no unit. */
function heldBack(givens: readonly PlacedGiven[]): (figure: Figure) => Figure {
  const faulty = new Set(givens.filter(given => checkGiven(given).length > 0).map(({ figure }) => figure));
  return figure => (faulty.has(figure) ? { ...figure, unit: NOT_USED } : figure);
}

/** A change with what is held back of it; the same object where nothing is. */
function withHeld(
  change: Project['items'][number],
  held: (figure: Figure) => Figure,
): Project['items'][number] {
  const kept = ITEM_FIGURES.flatMap(field => {
    const figure = change[field];
    const used = figure && held(figure);
    return used === figure ? [] : [[field, used] as const];
  });
  return kept.length === 0 ? change : { ...change, ...Object.fromEntries(kept) };
}

/** The chosen value of every option: the document's, else the library's default. */
export function chosenOptions(project: Project, library: Library): Record<string, string> {
  return Object.fromEntries(
    library.options.map(option => [option.id, project.options[option.id] ?? option.default]),
  );
}

function contingencyShare(
  project: Project,
  faults: Faults,
  given: SimulatedContingency | undefined,
): Given | undefined {
  const { policy, share } = project.contingency;
  if (policy === 'confidence') {
    const simulated = simulatedFor(project, given);
    return simulated && simulatedShare(simulated);
  }
  return share && documentGiven(share, '1', '/contingency/share', faults);
}

/** The given of a figure of the document; without a value when it, or its unit or amount, is faulty. */
function documentGiven(figure: Figure, unit: Unit, place: string, faults: Faults): Given {
  const faulty = [place, `${place}/unit`, `${place}/value`].some(at => faults.has(at));
  const given = givenFrom(figure, unit, place);
  return faulty ? { ...given, value: undefined } : given;
}

const PARTICULARS: readonly (readonly [Particular, PlainUnit])[] = [
  ['length', 'm'],
  ['beam', 'm'],
  ['depth', 'm'],
  ['draughtLight', 'm'],
  ['draughtFull', 'm'],
  ['blockCoefficient', '1'],
  ['lightship', 't'],
];
const OILY = new Set(['fuel', 'lube', 'cargo oil', 'oily water', 'unknown']);

function shipGivens(
  project: Project,
  type: ShipGivens['type'],
  options: Record<string, string>,
  library: Library,
  faults: Faults,
): ShipGivens {
  const { vessel, site } = project;
  const particulars = Object.fromEntries(
    PARTICULARS.flatMap(([name, unit]) => {
      const figure = vessel[name];
      return figure === undefined ? [] : [[name, documentGiven(figure, unit, `/vessel/${name}`, faults)]];
    }),
  );
  return {
    type,
    particulars,
    tanks: vessel.tanks.map(tank => ({
      id: tank.id,
      title: tank.title,
      place: `/vessel/tanks/${tank.id}`,
      capacity: documentGiven(tank.capacity, 'm3', `/vessel/tanks/${tank.id}/capacity`, faults),
      oily: OILY.has(tank.contents),
    })),
    waterDepth: documentGiven(site.waterDepth, 'm', '/site/waterDepth', faults),
    towDistance: documentGiven(site.towDistance, 'nmi', '/site/towDistance', faults),
    yardDistance: documentGiven(site.yardDistance ?? DEFAULT_ROAD, 'm', '/site/yardDistance', faults),
    topsideShare: amountOf(library, options, 'topside-extent', '1'),
    monitoringYears: amountOf(library, options, 'monitoring', 'year'),
    openings: {},
  };
}

const DEFAULT_ROAD: Figure = {
  value: '80000',
  unit: 'm',
  low: '20000',
  high: '250000',
  basis: 'judgement',
  source: 'Road distance to the disposal sites where none is given',
  year: 2026,
};

/** The quantity a chosen value of an option stands for. */
function amountOf(library: Library, chosen: Record<string, string>, id: string, unit: PlainUnit): Given {
  const amount = library.optionAmounts.find(row => row.option === id && row.value === chosen[id])?.figure;
  if (amount === undefined) throw new BugError(`the chosen value of ${id} stands for no quantity`);
  return givenFrom(amount, unit, `/options/${id}`);
}

function shiftOf(options: readonly PlannerOption[], chosen: Record<string, string>) {
  const shift = options
    .find(option => option.id === 'shift-pattern')
    ?.values.find(value => value.id === chosen['shift-pattern'])?.shift;
  if (shift === undefined) throw new BugError('the chosen shift pattern has no hours');
  return shift;
}

function measuredDrivers(project: Project, library: Library, faults: Faults): Map<string, Given> {
  return new Map(
    project.survey.measured.flatMap(({ driver: id, figure }): [string, Given][] => {
      const driver = library.drivers.find(candidate => candidate.id === id);
      if (driver === undefined || !isUnit(driver.unit)) return [];
      const given = documentGiven(figure, driver.unit, `/survey/measured/${id}`, faults);
      return [[id, { ...given, unit: '1' }]];
    }),
  );
}
