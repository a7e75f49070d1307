import type { Figure } from '../base';
import type { Library } from '../work';
import { FORMAT, VERSION, type Project } from './schema';

/** What a starting project is made from: a handful of particulars, everything else from the templates. */
export interface StartingPoint {
  readonly reader: Project['reader'];
  readonly hullType: string;
  readonly title: string;
  readonly start: string;
  readonly built?: number;
  readonly length?: Figure;
  readonly lightship?: Figure;
  readonly tow?: Figure;
  /** Every price at the mean of this year, nothing escalated beyond it. */
  readonly fixedPriceYear?: number;
}

const typed = (value: string, unit: string, source: string, low: string, high: string): Figure => ({
  value,
  unit,
  low,
  high,
  basis: 'judgement',
  source,
  year: 2026,
});

/** Length when nothing is known, so that a new project shows figures at once; to be replaced by the ship's own. */
const STARTING_LENGTH = typed(
  '100',
  'm',
  'Starting value of a new project, to be replaced by the ship',
  '50',
  '150',
);
const STARTING_TOW = typed(
  '200',
  'nmi',
  'Starting value of a new project, to be replaced by the route',
  '50',
  '600',
);
const STARTING_DEPTH = typed(
  '35',
  'm',
  'Starting value of a new project: about 115 ft, to be replaced by the site',
  '25',
  '42',
);
const STARTING_CLEARANCE = typed(
  '50',
  'ft',
  'Starting value: navigational clearance commonly asked for over vessel reefs; the permit governs',
  '40',
  '60',
);
const STARTING_ROAD = typed('80', 'km', 'Starting value: 80 km by road to the disposal sites', '20', '250');
const STARTING_CONTINGENCY = typed(
  '0.25',
  '1',
  'Contingency share of an early estimate; recorded growth of past reef hulls has a median of 1.32',
  '0.15',
  '0.5',
);

/** The name that a new project begins with. */
export const UNNAMED_SHIP = 'Unnamed ship';

/** The type of ship that the window begins with until another is chosen. */
export const FIRST_HULL_TYPE = 'freighter';

/** A project to start from: valid, estimable at once, and plain about what is only a starting value. */
export function startingProject(library: Library, point: StartingPoint): Project {
  const type = library.hullTypes.find(candidate => candidate.id === point.hullType);
  const built = point.built ?? Number(type?.quantities['build-year']?.value ?? 1965);
  return {
    format: FORMAT,
    version: VERSION,
    title: point.title,
    sample: false,
    reader: point.reader,
    vessel: {
      name: UNNAMED_SHIP,
      hullType: point.hullType,
      built,
      length: point.length ?? STARTING_LENGTH,
      ...(point.lightship === undefined ? {} : { lightship: point.lightship }),
      tanks: [],
      weights: [],
      compartments: [],
    },
    site: {
      name: 'Reef site',
      port: 'Preparation port',
      county: 'County',
      waterDepth: STARTING_DEPTH,
      clearanceRequired: STARTING_CLEARANCE,
      towDistance: point.tow ?? STARTING_TOW,
      yardDistance: STARTING_ROAD,
    },
    survey: { intake: {}, measured: [], laboratory: [] },
    rates: {
      book: library.rateBook.id,
      priceDate: point.start,
      ...(point.fixedPriceYear === undefined ? {} : { fixedPriceYear: point.fixedPriceYear }),
      wages: [],
      overrides: [],
    },
    quotes: [],
    calendars: { start: point.start, federalHolidays: true, closures: [] },
    options: Object.fromEntries(library.options.map(option => [option.id, option.default])),
    items: [],
    ownItems: [],
    relationships: [],
    contingency: { policy: 'percentage', share: STARTING_CONTINGENCY },
    attachments: [],
    notes: [],
    scenarios: startingScenarios(point.reader, library),
  };
}

function startingScenarios(reader: Project['reader'], library: Library): Project['scenarios'] {
  const first = { id: 'base', title: 'As planned', changes: [] };
  const access = library.options.find(option => option.id === 'diver-access');
  const other = access?.values.find(value => value.id !== access.default);
  if (reader !== 'comparison' || access === undefined || other === undefined) return [first];
  return [
    first,
    { id: other.id, title: other.title, changes: [{ at: `/options/${access.id}`, to: other.id }] },
  ];
}

/** Whether a figure is one that a new project begins with, there to be replaced. */
export function isStarting({ source }: Pick<Figure, 'source'>): boolean {
  return source.startsWith('Starting value');
}

/** Whether nothing of the ship was entered yet: what is estimated is the one a new project begins with. */
export function isStartingShip({ vessel: { name, length, lightship } }: Project): boolean {
  return name === UNNAMED_SHIP && isStarting(length) && lightship === undefined;
}
