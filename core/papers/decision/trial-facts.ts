import { listed, type RiskFacts } from '../../scenario';

/** What the trials say against the dates of the plan, in one sentence; nothing when no run breaks one. */
export function trialWords(risk: RiskFacts | undefined): string | undefined {
  if (risk === undefined) return undefined;
  const { anotherSeason, chanceOfDeadline, missesGrant } = risk;
  const late = chanceOfDeadline === undefined ? undefined : 1 - chanceOfDeadline;
  const said = [
    counted(anotherSeason, 'need another season for the tow or the sinking'),
    counted(late, 'end after the last date'),
    counted(missesGrant, 'end after the grant'),
  ].flatMap(one => one ?? []);
  return said.length === 0 ? undefined : `Of 100 runs ${listed(said)}.`;
}

function counted(share: number | undefined, what: string): string | undefined {
  const inHundred = Math.round((share ?? 0) * 100);
  return inHundred === 0 ? undefined : `${inHundred} ${what}`;
}
