import type { Evaluation } from '../../evaluation';
import { dateWords } from '../report/words';

/** A line of the offer; without words it is left empty, to be filled by hand. */
export interface OfferLine {
  readonly title: string;
  readonly words?: string;
}

/** Who offers what to whom and until when. What the document does not say is not made up. */
export function offerLines({ project, scenario }: Evaluation): OfferLine[] {
  const { bid, site, vessel } = project;
  const { bidder, address, contact, validUntil, addenda } = bid?.offer ?? {};
  return [
    line('Bidder', bidder),
    line('Address', address),
    line('Contact', contact),
    line('Offered to', site.county),
    line('For', `${project.title}: ${scenario.title}`),
    line('Ship and place', `${vessel.name}, prepared at ${site.port}, sunk at ${site.name}`),
    line('Can be accepted until', validUntil && dateWords(validUntil)),
    line('Addenda received', addenda),
  ];
}

/** What is signed by hand: never filled in by the program. */
export const SIGNED_LINES: readonly string[] = ['Signature', 'Name and office', 'Date'];

function line(title: string, words: string | undefined): OfferLine {
  const said = words?.trim() ?? '';
  return said === '' ? { title } : { title, words: said };
}
