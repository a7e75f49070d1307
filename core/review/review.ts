import { BugError, known, type Finding } from '../base';
import { COST_CHECKS } from './cost-checks';
import { CREDIBILITY_CHECKS } from './credibility-checks';
import type { GrowthData, PracticeId, ReviewData } from './data';
import type { ReviewInput } from './input';
import { SCHEDULE_CHECKS } from './schedule-checks';
import type { Assessment, Check } from './standing';

/** One practice and how far it is met. */
export interface ReviewRow extends Assessment {
  readonly practiceId: PracticeId;
  readonly guide: string;
  readonly practice: string;
  readonly remedy: string;
}

const CHECKS: Readonly<Record<PracticeId, Check>> = {
  ...COST_CHECKS,
  ...CREDIBILITY_CHECKS,
  ...SCHEDULE_CHECKS,
};

/**
 * The quality review: every practice of the cost and schedule guides, and the recorded growth, each met, partly
 * met, not met or cannot tell, with evidence and remedy.
 * @throws BugError when the file names a practice twice, or leaves out a practice or a guide.
 */
export function review(input: ReviewInput, data: ReviewData, growth: GrowthData): ReviewRow[] {
  const ids = new Set(data.practices.map(practice => practice.id));
  if (ids.size !== Object.keys(CHECKS).length || ids.size !== data.practices.length)
    throw new BugError('the review file must name every practice once');
  const titles = new Map(data.guides.map(one => [one.id, one.title]));
  return data.practices.map(({ id, guide, practice, remedy }) => ({
    practiceId: id,
    guide: known(titles, guide),
    practice,
    remedy,
    ...CHECKS[id]({ input, data, growth }),
  }));
}

/** The rows that report something wrong: partly met or not met. */
export function reported(rows: readonly ReviewRow[]): ReviewRow[] {
  return rows.filter(row => row.standing === 'partly' || row.standing === 'not met');
}

/** The rows that report something, as findings; what cannot be told is a note. */
export function reviewFindings(rows: readonly ReviewRow[]): Finding[] {
  return rows
    .filter(row => row.standing !== 'met')
    .map(row => ({
      code: `review/${row.practiceId}`,
      weight: row.standing === 'cannot tell' ? 'notes' : 'warns',
      place: `/review/${row.practiceId}`,
      message: row.evidence.join('; '),
      meaning: `Good practice asks for more: ${row.practice}`,
      remedy: row.remedy,
      rule: row.guide,
    }));
}
