import type { Finding } from '../../base';
import type { PaperStamp } from '../workbook/inputs';

/** Says that a paper was made from another state of the document, or for another scenario. */
export function otherVersion(stamp: PaperStamp, document: string): Finding[] {
  if (stamp.document === document) return [];
  return [
    {
      code: 'take-back/other-version',
      weight: 'warns',
      place: 'Inputs!A4',
      message: `The paper was made on ${stamp.dated} from another state of the project (${stamp.document}; now ${document}).`,
      meaning:
        'Amounts are compared with the project as it is now: one that the project changed since stands among the changes. Other cells were not compared.',
      remedy: 'Look at each change, or write the paper again from the project as it is now.',
    },
  ];
}
