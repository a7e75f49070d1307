import { weakerBasis, type Basis } from '../base';
import type { EstimateContext } from './context';

/** The weakest basis of every line: of all its elements that are not nothing. */
export type LineBases = (line: string) => Basis | undefined;

export function lineBases({ summary }: EstimateContext): LineBases {
  const found = new Map(
    (summary?.lines ?? []).map(line => [
      line.id,
      Object.values(line.bases).reduce<Basis | undefined>(
        (a, b) => (a === undefined ? b : weakerBasis(a, b)),
        undefined,
      ),
    ]),
  );
  return line => found.get(line);
}
