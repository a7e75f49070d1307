import wasteClassesTemplate from '../../../templates/waste-classes.json';
import { keeping, keepingParts, type Figure, type Finding } from '../../base';
import { sampledClasses, wasteClassesFile, type SampledClass } from '../../materials';
import type { Project } from '../../project';
import { decimalDifference } from '../../units';
import type { Library, WorkItem } from '../../work';

const { wasteClasses } = wasteClassesFile.parse(wasteClassesTemplate);

/** The classes that the laboratory gives to wastes that can go one of two ways. */
function classesOf(project: Project, library: Library): SampledClass[] {
  const known = new Set(wasteClasses.map(row => row.material));
  const results = sampledClasses(project.survey.laboratory, library.tripPoints);
  return results.filter(({ material }) => known.has(material));
}

/** What the leach tests of the survey say, as findings. */
export function leachFindings(project: Project, library: Library): Finding[] {
  return classesOf(project, library).flatMap(({ findings }) => findings);
}

/**
 * The items with their wastes as the laboratory classes them: a material found hazardous sends all of its waste to the
 * hazardous stream, one found clear to the other. Without a verdict the assumed split stays.
 * @source 40 CFR 261.24
 */
export function classedItems(
  items: readonly WorkItem[],
  library: Library,
  project: Project,
): readonly WorkItem[] {
  const moves = movesOf(project, library);
  if (moves.length === 0) return items;
  return items.map(item => {
    const material = item.wastes.length === 0 ? undefined : materialOf(item, library);
    const move = moves.find(candidate => candidate.material === material);
    return move === undefined || !item.wastes.some(waste => waste.stream === move.from)
      ? item
      : classed(item, move);
  });
}

interface Move {
  readonly material: string;
  readonly from: string;
  readonly to: string;
  readonly words: string;
}

/** From which stream to which the waste of a material goes, of those that the laboratory classed. */
const movesOf = keepingParts(
  12,
  ({ survey }: Project, library: Library) => [survey.laboratory, library],
  (project, library): Move[] =>
    classesOf(project, library).flatMap(({ material, wasteClass, samples, year }) => {
      const row = wasteClasses.find(candidate => candidate.material === material);
      if (row === undefined || (wasteClass !== 'hazardous' && wasteClass !== 'not hazardous')) return [];
      const [from, to] =
        wasteClass === 'hazardous' ? [row.otherwise, row.hazardous] : [row.hazardous, row.otherwise];
      const words = `classed ${wasteClass} by ${samples === 1 ? 'one sample' : `${samples} samples`} of ${year}`;
      return [{ material, from, to, words }];
    }),
);

const CLASSED = new WeakMap<WorkItem, { readonly move: Move; readonly item: WorkItem }>();

/** An item with its waste moved; the same object as before when item and move are. */
function classed(item: WorkItem, move: Move): WorkItem {
  const known = CLASSED.get(item);
  if (known?.move === move) return known.item;
  const made = { ...item, wastes: moved(item.wastes, move) };
  CLASSED.set(item, { move, item: made });
  return made;
}

/** The material whose presence scales an item: of its driver, or of the one that scales from. */
export function materialOf(item: WorkItem, library: Library): string | undefined {
  return materialsOfDrivers(library).get(item.driver);
}

const materialsOfDrivers = keeping(2, ({ drivers }: Library): ReadonlyMap<string, string | undefined> => {
  const byId = new Map(drivers.map(driver => [driver.id, driver]));
  return new Map(
    drivers.map(({ id }) => {
      let driver = byId.get(id);
      while (driver !== undefined && driver.material === undefined) driver = byId.get(driver.base);
      return [id, driver?.material];
    }),
  );
});

type Wastes = WorkItem['wastes'];

function moved(wastes: Wastes, { from, to, words }: { from: string; to: string; words: string }): Wastes {
  const leaving = wastes.find(waste => waste.stream === from);
  const there = wastes.find(waste => waste.stream === to);
  if (leaving === undefined) return wastes;
  const source = `${leaving.perUnit.source}; ${words}`;
  const perUnit: Figure =
    there === undefined
      ? { ...leaving.perUnit, source }
      : { ...together(there.perUnit, leaving.perUnit), source };
  return [...wastes.filter(waste => waste !== leaving && waste !== there), { stream: to, perUnit }];
}

/** Two figures in one unit as one: sums of values, and of ranges where both have one. */
function together(a: Figure, b: Figure): Figure {
  const sum = (x: string, y: string) => decimalDifference(x, decimalDifference('0', y));
  const { low: _low, high: _high, ...rest } = a;
  return {
    ...rest,
    value: sum(a.value, b.value),
    ...(a.low === undefined || b.low === undefined ? {} : { low: sum(a.low, b.low) }),
    ...(a.high === undefined || b.high === undefined ? {} : { high: sum(a.high, b.high) }),
  };
}
