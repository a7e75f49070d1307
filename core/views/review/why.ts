import { BASES } from '../../base';
import type { EstimateContext } from '../context';
import { dollars, roundText } from '../number-text';
import type { WhyRow, WhyRows } from '../rows';
import { reviewOf } from './view';

const row = (text: string, unit: string, words: string, why?: string, source?: string): WhyRow => ({
  depth: 0,
  operator: '',
  value: {
    text,
    unit,
    ...(why === undefined ? {} : { why }),
    ...(source === undefined ? {} : { basis: 'published', source }),
  },
  words,
});

/** The derivation of a figure of past hulls. */
export function pastWhy({ evaluation }: EstimateContext, id: string): WhyRows | undefined {
  if (!id.startsWith('past:')) return undefined;
  const [kind, at = ''] = id.slice(5).split('|');
  const { history } = reviewOf(evaluation);
  const frame = { id, path: 'Review, past hulls', usedBy: [], bases: BASES, home: 'review' };
  if (kind === 'case') {
    const one = history.cases[Number(at)];
    if (one === undefined) return undefined;
    return {
      ...frame,
      title: `If it grew like the ${one.hullClass}`,
      value: { text: dollars(one.cost) },
      words: 'The total times the recorded growth. It is a comparison, not a forecast.',
      rows: [
        row(dollars(history.total ?? 0), '', 'total of the estimate', 'sums/total'),
        row(roundText(one.factor.toFixed(6), 2), 'times', one.what, undefined, one.source),
      ],
    };
  }
  const like = history.likeHulls[Number(at)];
  if (like === undefined) return undefined;
  return {
    ...frame,
    title: `${like.hullClass}, sunk ${like.sunkYear}`,
    value: { text: dollars(like.today) },
    words: 'What is on record, brought to the prices of the estimate by its index.',
    rows: [row(dollars(like.today), '', like.scope, undefined, like.source)],
  };
}
