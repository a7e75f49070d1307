import { dollars, sumCents } from '../../cash-flow';
import type { Finding } from '../../base';
import type { Award } from '../../funding';

/** The line of SF-424A for people on the payroll of the applicant. */
const PERSONNEL = 'a';
/** So many are named; the others are counted. */
const NAMED = 3;

/**
 * Labour under Personnel without fringe benefits beside it: its crew is a hired firm's, whose rate holds the benefits
 * of its people. Whoever is not on the payroll of the applicant is bought work.
 * @source 2 CFR 200.430 (personal services), 200.431 (fringe benefits), 200.459 (professional services).
 */
export function hiredPersonnelFindings(awards: readonly Award[]): Finding[] {
  return awards.flatMap(({ source, rows }): Finding[] => {
    if (source.form !== 'SF-424A') return [];
    const withFringe = new Set(rows.flatMap(row => (row.kind === 'fringe' ? [row.lineId] : [])));
    const bare = rows.filter(
      row =>
        row.kind === 'labour' && row.classId === PERSONNEL && !row.isInKind && !withFringe.has(row.lineId),
    );
    if (bare.length === 0) return [];
    const titles = [...new Set(bare.map(({ title }) => title))];
    const more = titles.length > NAMED ? ` and ${titles.length - NAMED} more` : '';
    const amount = dollars(sumCents(bare.map(({ allowable }) => allowable)));
    const lines = titles.length === 1 ? '1 line' : `${titles.length} lines`;
    return [
      {
        code: 'funding/personnel-without-fringe',
        weight: 'notes',
        place: `/funding/sources/${source.id}`,
        message: `${lines} under Personnel of ${source.title}, ${amount} in all, have no fringe benefits: ${titles.slice(0, NAMED).join('; ')}${more}.`,
        meaning:
          'The rate of a hired crew holds the benefits of its people, and a grantor may want bought work under Contractual; people on the payroll have benefits of their own.',
        remedy:
          'Ask the grantor; a row of the mapping in the funding section sends such work to another line.',
        rule: '2 CFR 200.430; 2 CFR 200.459',
      },
    ];
  });
}
