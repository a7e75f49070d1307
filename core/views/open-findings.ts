import { anyBlocks, type Finding } from '../base';
import type { Evaluation } from '../evaluation';
import { rowsOfFindings } from './finding-rows';
import { hasGrant } from './funding/grant-findings';
import type { FindingRow } from './rows';

/** What making the grant budget found: of this evaluation, or held from the one before until it is made anew. */
export interface FoundOfGrant {
  readonly findings: readonly Finding[];
  readonly isHeld: boolean;
}

/** The open findings of a scenario, those of its grant budget among them: one list for the count and for the review. */
export interface OpenFindings {
  readonly findings: readonly FindingRow[];
  /** Not known, or held in part from the plan before, while the grant budget is still to be made. */
  readonly standing: 'known' | 'held' | 'not known';
  /** Whether any of them withholds a figure. */
  readonly blocks: boolean;
}

/** All that is open. @param ofGrant absent while the grant budget was never made. */
export function openFindings(evaluation: Evaluation, ofGrant: FoundOfGrant | undefined): OpenFindings {
  const all = [...evaluation.findings, ...(ofGrant?.findings ?? [])];
  const standing = !hasGrant(evaluation)
    ? 'known'
    : ofGrant === undefined
      ? 'not known'
      : ofGrant.isHeld
        ? 'held'
        : 'known';
  return { findings: rowsOfFindings(all), standing, blocks: anyBlocks(all) };
}

/** How many are open, as the review says it first. */
export function openSentence({ findings, standing }: OpenFindings): string {
  const { length } = findings;
  if (standing === 'not known')
    return 'The grant budget is still being looked at; what the estimate finds stands here.';
  if (length === 0) return 'There is no open finding.';
  return length === 1
    ? '1 finding is open.'
    : `${length} findings are open; those that withhold a figure come first.`;
}
