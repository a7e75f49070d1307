import type { Finding } from '../../base';
import type { Evaluation } from '../../evaluation';
import { grantOf } from './grant-of';

/**
 * What making the grant budget finds beyond the estimate: cost that no grant bears, match, rates. Nothing without a
 * funding section, and nothing that the estimate tells already.
 */
export function grantFindings(evaluation: Evaluation): readonly Finding[] {
  if (!hasGrant(evaluation)) return [];
  const told = new Set(evaluation.findings.map(said));
  return grantOf(evaluation).findings.filter(one => !told.has(said(one)));
}

/** Whether there is a grant budget to look at. */
export function hasGrant({ project }: Evaluation): boolean {
  return project.funding !== undefined;
}

function said({ place, message }: Finding): string {
  return `${place} ${message}`;
}
