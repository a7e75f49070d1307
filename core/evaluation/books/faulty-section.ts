import type { Finding } from '../../base';
import type { Evaluation } from '../evaluate';

/** The findings that withhold a figure of a section of the document, such as an amount in a wrong unit. */
export function faultsOfSection({ findings }: Evaluation, section: string): Finding[] {
  return findings.filter(
    ({ weight, place }) => weight === 'blocks' && (place === section || place.startsWith(`${section}/`)),
  );
}
