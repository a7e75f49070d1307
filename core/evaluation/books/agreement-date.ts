import type { Finding } from '../../base';
import { dollars, sumCents } from '../../cash-flow';
import { PRE_AWARD_RULE, chargedBefore, type Award } from '../../funding';
import type { Funding } from '../../project';
import type { BookBasis } from './book-lines';

/** The work item in which the grantor signs. */
const AGREEMENT = 'grant-agreement';

/**
 * An award date from the first day of the project on, while the schedule has the grant agreement end later: what is
 * spent before the agreement is then charged to the award as if it were made already. An award of before the project
 * was made already.
 */
export function agreementFindings(
  { evaluation, parts, spans }: BookBasis,
  { awardDate }: Funding,
  awards: readonly Award[],
): Finding[] {
  const finish = spans.get(AGREEMENT)?.finish;
  const item = parts.items.find(({ id }) => id === AGREEMENT);
  if (item === undefined || finish === undefined) return [];
  const { start } = evaluation.project.calendars;
  if (awardDate < start || finish <= awardDate) return [];
  const open = awards.filter(({ source }) => source.preAwardApproved !== true);
  const charged = sumCents(open.map(({ rows }) => chargedBefore(rows, finish)));
  const isFederal = open.some(({ source }) => source.kind === 'federal');
  const early = `${dollars(charged)} of the cost on the forms is spent in months before that`;
  return [
    {
      code: 'funding/award-before-agreement',
      weight: 'warns',
      place: '/funding/awardDate',
      message: `The award date, ${awardDate}, ${awardDate === start ? 'is the first day of the project' : 'comes first'}, but in the schedule the work item ${item.title} ends on ${finish}.`,
      meaning:
        charged <= 0
          ? 'There is no award before the agreement.'
          : isFederal
            ? `${early}; a Federal award bears it only with written approval of the awarding agency.`
            : `${early}; whether the grant bears it is for the grantor to say.`,
      remedy: 'Enter the date on which the award is expected, and the start of its period.',
      ...(isFederal && { rule: PRE_AWARD_RULE }),
    },
  ];
}
