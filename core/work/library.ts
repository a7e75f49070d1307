import type { z } from 'zod';
import type { Finding } from '../base';
import {
  cautionsFile,
  materialsFile,
  tripPointsFile,
  type Caution,
  type Material,
  type TripPoint,
} from '../materials';
import { indicesFile, rateBookFile, type Indices, type RateBook } from '../rate-book';
import { hullTypesFile, type HullType } from '../vessel';
import {
  driversFile,
  optionsFile,
  placesFile,
  seasonsFile,
  workItemsFile,
  type Driver,
  type Place,
  type PlannerOption,
  optionAmountsFile,
  type OptionAmount,
  type SeasonClosure,
  type WeatherWindow,
  type WorkItem,
} from './schema';

/** Everything the templates hold, checked once. */
export interface Library {
  readonly hullTypes: readonly HullType[];
  readonly families: z.infer<typeof materialsFile>['families'];
  readonly materials: readonly Material[];
  readonly cautions: readonly Caution[];
  readonly cautionClosing: string;
  readonly tripPoints: readonly TripPoint[];
  readonly rateBook: RateBook;
  readonly indices: Indices;
  readonly drivers: readonly Driver[];
  readonly places: readonly Place[];
  readonly options: readonly PlannerOption[];
  readonly optionAmounts: readonly OptionAmount[];
  readonly closures: readonly SeasonClosure[];
  readonly windows: readonly WeatherWindow[];
  /** In the order of the stages. */
  readonly items: readonly WorkItem[];
}

/** The raw files of the templates, by name. */
export interface TemplateFiles {
  readonly hullTypes: unknown;
  readonly materials: unknown;
  readonly cautions: unknown;
  readonly tripPoints: unknown;
  readonly rates: unknown;
  readonly indices: unknown;
  readonly drivers: unknown;
  readonly places: unknown;
  readonly options: unknown;
  readonly seasons: unknown;
  readonly optionAmounts: unknown;
  /** One file a stage, in the order of the stages. */
  readonly work: readonly unknown[];
}

/** Reads the templates. A row that does not fit is a finding naming the file and the row; then there is no library. */
export function readLibrary(files: TemplateFiles): { library?: Library; findings: Finding[] } {
  const findings: Finding[] = [];
  const read = <T>(name: string, schema: z.ZodType<T>, raw: unknown): T | undefined => {
    const result = schema.safeParse(raw);
    if (result.success) return result.data;
    findings.push(...result.error.issues.map(issue => rowFinding(name, raw, issue)));
    return undefined;
  };
  const hullTypes = read('hull-types', hullTypesFile, files.hullTypes);
  const materials = read('materials', materialsFile, files.materials);
  const cautions = read('cautions', cautionsFile, files.cautions);
  const tripPoints = read('trip-points', tripPointsFile, files.tripPoints);
  const rateBook = read('rates', rateBookFile, files.rates);
  const indices = read('indices', indicesFile, files.indices);
  const drivers = read('drivers', driversFile, files.drivers);
  const places = read('places', placesFile, files.places);
  const options = read('options', optionsFile, files.options);
  const seasons = read('seasons', seasonsFile, files.seasons);
  const amounts = read('option-amounts', optionAmountsFile, files.optionAmounts);
  const items = files.work.flatMap((raw, i) => read(`work/${i + 1}`, workItemsFile, raw)?.items ?? []);
  if (
    !hullTypes ||
    !materials ||
    !cautions ||
    !tripPoints ||
    !rateBook ||
    !indices ||
    !drivers ||
    !places ||
    !options ||
    !seasons ||
    !amounts
  )
    return { findings };
  if (findings.length > 0) return { findings };
  return {
    findings,
    library: {
      hullTypes: hullTypes.hullTypes,
      families: materials.families,
      materials: materials.materials,
      cautions: cautions.cautions,
      cautionClosing: cautions.closing,
      tripPoints: tripPoints.tripPoints,
      rateBook,
      indices,
      drivers: drivers.drivers,
      places: places.places,
      options: options.options,
      optionAmounts: amounts.amounts,
      closures: seasons.closures,
      windows: seasons.windows,
      items,
    },
  };
}

function rowFinding(file: string, raw: unknown, issue: z.core.$ZodIssue): Finding {
  const row = rowName(raw, issue.path);
  const place = `templates/${file}/${issue.path.map(String).join('/')}`;
  return {
    code: 'templates/row-does-not-fit',
    weight: 'blocks',
    place,
    message: `${row}: ${issue.message}`,
    meaning: 'There is no library, and nothing can be estimated.',
    remedy: 'Correct the row; DEVELOPERS.md says what a row needs.',
  };
}

function rowName(raw: unknown, path: readonly PropertyKey[]): string {
  let value: unknown = raw;
  let name = 'the file';
  for (const step of path) {
    if (value === null || typeof value !== 'object') break;
    value = (value as Record<PropertyKey, unknown>)[step];
    const id = value !== null && typeof value === 'object' && 'id' in value ? value.id : undefined;
    if (typeof id === 'string') name = `row "${id}"`;
  }
  return name;
}
