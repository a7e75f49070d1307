import { BASES } from '../base';
import { endOfSinking } from '../flooding';
import { saidIn } from '../units';
import type { EstimateContext } from './context';
import { shownNumber } from './number-text';
import type { WhyRow, WhyRows } from './rows';

/** The derivation of the verdict: what the upright screen found and why, and what it cannot see. */
export function uprightWhy({ evaluation, measures }: EstimateContext, id: string): WhyRows | undefined {
  const { upright } = evaluation;
  if (!id.startsWith('upright:') || upright === undefined) return undefined;
  const row = (text: string, words: string, why?: string): WhyRow => ({
    depth: 0,
    operator: '',
    value: { text, ...(why === undefined ? {} : { why }) },
    words,
  });
  const number = (value: number | undefined, decimals: number, unit: string) =>
    value === undefined ? 'none' : `${shownNumber(value.toFixed(6), decimals)}${unit}`;
  const gm = upright.lowestGmMetres;
  const shownGm = gm === undefined || measures === 'metric' ? gm : gm / 0.3048;
  return {
    id,
    title: 'Upright screen',
    path: 'Sinking, verdict',
    value: { text: upright.verdict },
    words: upright.caution,
    rows: [
      row(
        number(upright.greatestHeelDegrees, 1, '°'),
        'greatest heel at which she balances, over the ranges of KG, displacement and unevenness',
      ),
      row(number(upright.likelyHeelDegrees, 1, '°'), 'the same for the likely values alone'),
      row(
        number(shownGm, 2, measures === 'metric' ? ' m' : ' ft'),
        'lowest GM on the way down, over the same ranges',
      ),
      row(
        number(upright.sinkMinutes, 1, ' min'),
        `from the release until the hull is ${endOfSinking(upright)}, for the likely values`,
      ),
      ...upright.reasons.map(reason => row('', saidIn(reason, measures))),
      row('open', 'lightship', 'ship/lightship'),
      row('open', 'beam', 'ship/beam'),
      row('open', 'depth', 'ship/depth'),
    ],
    usedBy: [],
    bases: BASES,
    home: 'vessel',
  };
}
