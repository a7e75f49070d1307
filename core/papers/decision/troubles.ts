import type { Evaluation } from '../../evaluation';
import { grantView } from '../../evaluation';

/** Something that can go wrong, what then happens and who pays. */
export interface Trouble {
  readonly id: 'late' | 'dearer' | 'on her side';
  readonly title: string;
  readonly happens: string;
  readonly pays: string;
}

/** What happens and who pays if it is late, costs more, or the ship lands on her side. */
export function troubles(evaluation: Evaluation): Trouble[] {
  const { project } = evaluation;
  const { county } = project.site;
  const { deadline } = project.calendars;
  const hasGrant =
    project.funding?.sources.some(({ kind }) => kind === 'federal' || kind === 'state') === true;
  return [
    {
      id: 'late',
      title: 'It is late',
      happens:
        deadline === undefined
          ? 'Each month at the berth costs rent, guards and power.'
          : 'Each month at the berth costs rent, guards and power, and work after the last date may not be paid back.',
      pays: `${county} pays, unless the contract makes the contractor pay.`,
    },
    {
      id: 'dearer',
      title: 'It costs more',
      happens:
        hasGrant && isAtCap(evaluation)
          ? 'The grant has reached its ceiling.'
          : 'The contingency is spent first.',
      pays: hasGrant
        ? `${county} pays what lies above the grant and above the contract price.`
        : `${county} pays what lies above the contract price.`,
    },
    {
      id: 'on her side',
      title: 'She lands on her side or breaks up',
      happens:
        'Clearance may be lost, divers may be barred, and putting her right is rarely possible. An amount for it in the risk register pays for the attempt, not for the reef as planned.',
      pays: `Moving or removing her falls to ${project.benefits?.removalIfItMoves?.party ?? county}.`,
    },
  ];
}

/** Whether a source gives the most it may. */
function isAtCap(evaluation: Evaluation): boolean {
  const { book } = grantView(evaluation);
  return book?.bySource.some(({ leftOfCap }) => leftOfCap !== undefined && leftOfCap <= 0) === true;
}
