import type { Finding } from '../../base';
import { riskSchema, type Project, type RiskSection } from '../../project';
import type { RangedGiven } from './ranged-givens';
import type { RiskFile } from './risk-file';
import { distributionFindings } from '../../risk';
import { shapeOf } from './screen-givens';

/** The risk section of a project; what it leaves out has its default. */
export function riskSectionOf(project: Project): RiskSection {
  return project.risk ?? riskSchema.parse({});
}

/** Whether a place of the document, or one inside it, has a fault that blocks it. */
export function faultyPlaces(findings: readonly Finding[]): (place: string) => boolean {
  const places = findings.filter(finding => finding.weight === 'blocks').map(finding => finding.place);
  return place => places.some(at => at === place || at.startsWith(`${place}/`));
}

/** The risk file with the factors of drivers and the workability that the project puts in place of the library’s. */
export function withSection(
  file: RiskFile,
  section: RiskSection,
  faulty: (place: string) => boolean,
): RiskFile {
  const factors = new Map(
    section.drivers.filter(d => !faulty(`/risk/drivers/${d.driver}`)).map(d => [d.driver, d.factor]),
  );
  const own = new Map(section.workability.map(row => [row.series, row]));
  return {
    ...file,
    drivers: file.drivers.map(driver => ({ ...driver, factor: factors.get(driver.id) ?? driver.factor })),
    weather: {
      ...file.weather,
      series: file.weather.series.map(row => {
        const { series: _, ...given } = own.get(row.id) ?? { series: row.id };
        return { ...row, ...given };
      }),
    },
  };
}

/** The ranges of the project in place of those of library and document, and what is wrong with them. */
export function withOwnRanges(
  givens: readonly RangedGiven[],
  section: RiskSection,
): { readonly givens: readonly RangedGiven[]; readonly findings: readonly Finding[] } {
  const ranges = new Map(section.ranges.map(range => [range.given, range]));
  const known = new Set(givens.map(given => given.id));
  const findings: Finding[] = [];
  const changed = givens.map(given => {
    const range = ranges.get(given.id);
    if (range === undefined) return given;
    const [low, high] = [Number(range.low), Number(range.high)];
    if (!(low <= given.likely && given.likely <= high)) {
      findings.push(outside(given, range.low, range.high));
      return given;
    }
    const { shape, outcomes } = range;
    const own = { ...given, low, high, shape, ...(outcomes === undefined ? {} : { outcomes }) };
    const [wrong] = distributionFindings(shapeOf(own), `/risk/ranges/${given.id}`);
    if (wrong === undefined) return own;
    findings.push(withoutShape(own, wrong.message));
    return given;
  });
  return { givens: changed, findings: [...findings, ...unknownGivens(section, known)] };
}

function outside(given: RangedGiven, low: string, high: string): Finding {
  return {
    code: 'risk/range-without-value',
    weight: 'warns',
    place: `/risk/ranges/${given.id}`,
    message: `The range ${low} to ${high} of "${given.title}" does not hold its value ${given.likely}.`,
    meaning: 'The range of the library stands.',
    remedy: 'Widen the range, or change the value of the given first.',
  };
}

function withoutShape({ id, title, shape = 'pert' }: RangedGiven, why: string): Finding {
  return {
    code: 'risk/range-shape',
    weight: 'warns',
    place: `/risk/ranges/${id}`,
    message: `The ${shape} range of "${title}" cannot be drawn. ${why}`,
    meaning: 'The range of the library stands.',
    remedy:
      'A lognormal range needs a P10 and a P90 above zero; a discrete one outcomes whose probabilities add up to 1.',
  };
}

function unknownGivens({ ranges, surveys }: RiskSection, known: ReadonlySet<string>): Finding[] {
  const named = [
    ...ranges.map(({ given }) => ({ place: `/risk/ranges/${given}`, given })),
    ...surveys.map(({ given }) => ({ place: `/risk/surveys/${given}`, given })),
  ];
  return named
    .filter(({ given }) => !known.has(given))
    .map(({ place, given }) => ({
      code: 'risk/unknown-range',
      weight: 'warns',
      place,
      message: `No given of this scenario with a range is called ${given}.`,
      meaning: 'The entry changes nothing.',
      remedy: 'Take the id from the list of drivers.',
    }));
}
