import type { Finding } from '../base';
import { asStep } from './cells';
import { datesSaid } from './dates-said';
import { asSentence } from './finding-words';
import type { FindingRow } from './rows';

const HOMES: readonly (readonly [string, string])[] = [
  ['/vessel', 'vessel'],
  ['/site', 'vessel'],
  ['/items', 'work'],
  ['/ownItems', 'work'],
  ['/lines', 'work'],
  ['/activities', 'schedule'],
  ['/relationships', 'schedule'],
  ['/hammocks', 'schedule'],
  ['/compartments', 'vessel'],
  ['/displacement', 'vessel'],
  ['/weights', 'vessel'],
  ['/kg', 'vessel'],
  ['/particulars', 'vessel'],
  ['/closures', 'schedule'],
  ['/exclusions', 'schedule'],
  ['/resources', 'schedule'],
  ['/statusDate', 'schedule'],
  ['/drawdown', 'funding'],
  ['/imports', 'rates'],
  ['/options', 'work'],
  ['/survey', 'materials'],
  ['/funding', 'funding'],
  ['/bid', 'bid'],
  ['/receivedBids', 'bid'],
  ['/risk', 'risk'],
  ['/decision', 'compare'],
  ['/benefits', 'decision'],
  ['/contingency', 'funding'],
  ['templates/materials', 'materials'],
  ['templates/trip-points', 'materials'],
  ['/quotes', 'work'],
  ['/rates', 'rates'],
  ['/calendars', 'schedule'],
  ['/schedule', 'schedule'],
];

/** The view where a place of the document is put right. */
export function homeOf(place: string): string {
  return HOMES.find(([start]) => place.startsWith(start))?.[1] ?? 'review';
}

/**
 * A place as the inputs of the window name it: the place of a rate in its book is one step, however long it is, and a
 * figure is told with its number and its unit.
 */
export function inputPlaceOf(place: string): string {
  const whole = place.replace(/(\/figure)?\/(?:value|unit)$/, '$1');
  const rate = /^\/rates\/overrides\/(.+?)(?:\/figure)?$/.exec(whole)?.[1];
  return rate === undefined || rate.includes('~1') ? whole : `/rates/overrides/${asStep(rate)}`;
}

/** Findings with the view where each is put right, those that withhold a figure first. */
export function rowsOfFindings(findings: readonly Finding[]): readonly FindingRow[] {
  const order = { blocks: 0, warns: 1, notes: 2 } as const;
  return findings
    .map(finding => ({
      finding: inSentences(finding),
      view: homeOf(finding.place),
      at: inputPlaceOf(finding.place),
    }))
    .toSorted((a, b) => order[a.finding.weight] - order[b.finding.weight]);
}

function inSentences(finding: Finding): Finding {
  const { message, meaning, remedy } = finding;
  return {
    ...finding,
    message: datesSaid(asSentence(message)),
    remedy: asSentence(remedy),
    ...(meaning === undefined ? {} : { meaning: datesSaid(asSentence(meaning)) }),
  };
}
