import type { RiskSection } from '../../project';
import type { RankCorrelation } from '../../risk';
import type { RangedGiven } from './ranged-givens';
import type { RiskFile } from './risk-file';

/** The rank correlations of the library between the givens drawn, and those of the project in their place. */
export function correlationsOf(
  file: RiskFile,
  section: RiskSection,
  faulty: (place: string) => boolean,
  drawn: readonly RangedGiven[],
): RankCorrelation[] {
  const idOf = (column: string) => drawn.find(given => given.column === column)?.id;
  const ofLibrary = file.correlations.flatMap(({ first, second, correlation }) => {
    const [a, b] = [idOf(first), idOf(second)];
    return a === undefined || b === undefined ? [] : [{ first: a, second: b, correlation }];
  });
  const own = section.correlations.filter((_, i) => !faulty(`/risk/correlations/${i}`));
  const isOwn = (a: string, b: string) =>
    own.some(c => (c.first === a && c.second === b) || (c.first === b && c.second === a));
  return [...ofLibrary.filter(c => !isOwn(c.first, c.second)), ...own].map(
    ({ first, second, correlation }) => ({
      first,
      second,
      correlation: Number(correlation.value),
      of: 'ranks' as const,
    }),
  );
}
