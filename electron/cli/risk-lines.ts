import type { RegisterRow, RiskView } from '../../core/evaluation';

/** A simulation in plain lines, as it is printed without --json. */
export function riskLines(view: RiskView): string[] {
  const { cost, finish, joint, contingency, growth } = view;
  const at = (share: number) => cost.percentiles.find(p => p.share === share)?.value;
  const by = (share: number) => finish.percentiles.find(p => p.share === share)?.date ?? 'absent';
  return [
    `${view.trials} runs, seed ${view.seed}; ${view.withoutAnswer} without an answer`,
    `Cost     P10 ${usd(at(0.1))}  P50 ${usd(at(0.5))}  P80 ${usd(at(0.8))}  P90 ${usd(at(0.9))}`,
    `         ${view.planSentence} ${usd(cost.plan)}`,
    `Finish   P10 ${by(0.1)}  P50 ${by(0.5)}  P80 ${by(0.8)}  P90 ${by(0.9)}`,
    `         The planned finish ${finish.plan} is ${hundred(finish.planShare)} in 100.`,
    ...(view.cashNeed
      ? [
          `Cash     P50 ${usd(percentile(view, 0.5))}  P80 ${usd(percentile(view, 0.8))} to be carried at most`,
        ]
      : []),
    `Together ${joint.sentence} ${usd(joint.budget)} by ${joint.date}`,
    ...(view.safe ? [`         ${view.safe.sentence}`] : []),
    ...(view.gap ? [`Why      ${view.gap.sentence}`] : []),
    `Contingency by ${contingency.policy}: ${usd(contingency.amount)}; at 80 in 100: ${usd(view.contingencyAtP80.amount)}`,
    `         ${view.contingencyNote}`,
    ...(view.grantPeriod
      ? [
          `Grant    ${hundred(view.grantPeriod.chanceOfMissing)} in 100 runs miss its end on ${view.grantPeriod.end}`,
        ]
      : []),
    ...(view.award
      ? [
          `Award    ${hundred(view.award.chance)} in 100 runs cost no more than ${usd(view.award.budget)}, the total ${view.award.holdsContingency ? 'with' : 'without'} the contingency`,
        ]
      : []),
    `Season   ${hundred(view.chanceOfAnotherSeason)} in 100 runs need another season`,
    `History  runs end ${times(growth.p10)} to ${times(growth.p90)} times the plan (P10 to P90), middle ${times(growth.p50)}; ` +
      `past hulls ${times(growth.least)} to ${times(growth.most)} times their middle estimate, middle ${times(growth.middle)}; ` +
      'the ranges were set with these hulls in view, so agreement proves nothing',
    'Drivers of cost, by how far the variance falls when each is held:',
    ...view.drivers.map(d => `${(100 * d.contribution).toFixed(1).padStart(6)} %  ${d.title}`),
    'What drives the finish, in 100 runs:',
    ...view.drivesFinish.slice(0, 12).map(d => `${hundred(d.share).padStart(6)}    ${d.title}`),
    `Budgets and dates that hold together in ${hundred(view.confidence)} in 100 runs:`,
    ...spread(view.frontier, FRONTIER_POINTS).map(
      point => `${usd(point.budget).padStart(12)} by ${point.date}`,
    ),
    'The register, chances in 100:',
    ...view.register.map(registerLine),
    'What each mitigation buys, its price included:',
    ...view.register.flatMap(mitigationLine),
    ...(view.surveys.length === 0 ? [] : ['What more survey is worth:']),
    ...view.surveys.map(
      s => `${usd(s.narrowing).padStart(12)} nearer P80 to P50 for ${usd(s.cost)}  ${s.title}`,
    ),
  ];
}

/** So many points of the line are printed; the JSON has them all. */
const FRONTIER_POINTS = 6;

function spread<T>(all: readonly T[], count: number): T[] {
  if (all.length <= count) return [...all];
  const at = Array.from({ length: count }, (_, i) => Math.round((i * (all.length - 1)) / (count - 1)));
  return at.flatMap(i => all[i] ?? []);
}

function registerLine({ title, owner, probability, mitigation }: RegisterRow): string {
  const known = [
    owner === undefined ? [] : `owner: ${owner}`,
    mitigation === undefined ? [] : mitigationWords(mitigation),
  ];
  return [`${hundred(probability).padStart(6)}    ${title}`, ...known.flat()].join('; ');
}

function mitigationWords({ title, cost }: NonNullable<RegisterRow['mitigation']>): string {
  return `mitigation: ${title} for ${usd(cost)}`;
}

function mitigationLine({ title, mitigation }: RegisterRow): string[] {
  if (mitigation?.buys === undefined) return [];
  const { meanCost, p80Cost, p80Finish } = mitigation.buys;
  return [
    `${usd(meanCost).padStart(12)} mean, ${usd(p80Cost)} and ${p80Finish} calendar days at P80  ${mitigation.title} (${title})`,
  ];
}

function percentile({ cashNeed }: RiskView, share: number): number | undefined {
  return cashNeed?.percentiles.find(p => p.share === share)?.value;
}

function usd(dollars: number | undefined): string {
  return dollars === undefined
    ? 'absent'
    : dollars.toLocaleString('en-US', { style: 'currency', currency: 'USD', maximumFractionDigits: 0 });
}

function hundred(share: number | undefined): string {
  return share === undefined ? 'absent' : `${Math.round(100 * share)}`;
}

function times(ratio: number): string {
  return ratio.toFixed(2);
}
