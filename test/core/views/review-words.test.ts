import { describe, expect, test } from 'vitest';
import { historyView, reviewRows, type Evaluation } from '../../../core/evaluation';
import type { Project } from '../../../core/project';
import { WhyDesk, type Sentence } from '../../../core/views';
import { awkward, DEMO, evaluatedAs, figure } from './awkward';

const full = () => awkward('with all that a document may hold');
const reviewOf = (evaluation: Evaluation) => new WhyDesk(evaluation, 'us').opened('review');
const plain = (sentence: Sentence = []) =>
  sentence.map(part => (typeof part === 'string' ? part : part.text)).join('');

describe('the quality review', () => {
  test('says who agreed to the estimate, and whether a plan is kept to compare with', () => {
    const of = (record: Evaluation['project']['record']) => {
      const evaluation = full();
      return plain(reviewOf({ ...evaluation, project: { ...evaluation.project, record } })?.recordSentence);
    };
    const bare = { crossChecks: [], leftOut: [], reasons: [], lessons: [] };
    const approval = { by: 'The council', on: '2026-11-01' };
    const baseline = { keptOn: '2026-11-02', finish: '2029-01-31', total: figure('5000000', 'USD') };
    expect(of({ ...bare, approval, baseline })).toBe(
      'The council agreed to this estimate; a plan is kept to compare with.',
    );
    expect(of({ ...bare, approval })).toBe(
      'The council agreed to this estimate; no plan is kept to compare with.',
    );
    expect(of({ ...bare, baseline })).toBe(
      'Nobody has agreed to this estimate yet; a plan is kept to compare with.',
    );
    expect(of(undefined)).toBe('Nobody has agreed to this estimate yet; no plan is kept to compare with.');
  });

  test('takes in trials of the same total, contingency and finish alone', () => {
    const evaluation = full();
    const { money, schedule } = evaluation.estimate ?? {};
    const cents = (sum: 'total' | 'contingency') => money && money.result.money(money.sums[sum])?.cents;
    const total = cents('total');
    if (total === undefined) throw new Error('the document has a total');
    const own = {
      ...{ total, contingency: cents('contingency'), finish: schedule?.finish },
      found: { planPercentile: 31 },
    };
    const told = (trials: typeof own) => {
      const review = reviewOf({ ...evaluation, trials });
      const lines = review?.guides.flatMap(guide => guide.lines) ?? [];
      const [evidence] = lines.find(line => line.id === 'uncertainty')?.evidence ?? [];
      return [plain(review?.practicesSentence).includes('were looked at'), evidence?.includes('31')];
    };
    expect(told(own)).toEqual([true, true]);
    expect(told({ ...own, total: total + 1 })).toEqual([false, false]);
    expect(told({ ...own, contingency: (own.contingency ?? 0) + 1 })).toEqual([false, false]);
    expect(told({ ...own, finish: '2031-01-01' })).toEqual([false, false]);
  });

  test('counts its practices by guide, shows three sentences of evidence of each and counts the rest', () => {
    const evaluation = full();
    const rows = reviewRows(evaluation);
    const review = reviewOf(evaluation);
    const lines = review?.guides.flatMap(guide => guide.lines) ?? [];
    expect(lines.map(line => line.id).toSorted()).toEqual(rows.map(row => row.practiceId).toSorted());
    expect(rows.some(row => row.evidence.length > 3)).toBe(true);
    expect(rows.some(row => row.evidence.length === 3)).toBe(true);
    for (const { practiceId, evidence } of rows) {
      const rest = evidence.length - 3;
      const line = lines.find(one => one.id === practiceId);
      expect(line?.evidence).toHaveLength(Math.min(3, evidence.length));
      expect(line?.more).toBe(rest > 0 ? `${rest} more` : '');
    }
    for (const { title, counts } of review?.guides ?? []) {
      const own = rows.filter(row => row.guide === title);
      expect(counts).toBe(`${own.filter(row => row.standing === 'met').length} of ${own.length} met`);
    }
    const counted = ['met', 'partly', 'not met', 'cannot tell'].map(
      standing => rows.filter(row => row.standing === standing).length,
    );
    expect(plain(review?.practicesSentence).match(/\d+/g)?.map(Number)).toEqual([rows.length, ...counted]);
  });

  test('tells the class of an estimate with its share and its ends, and of none that it cannot be told yet', () => {
    const review = reviewOf(full());
    expect(plain(review?.classSentence)).toMatch(
      /^It is a class 5 estimate: \d\.\d % of the money is surveyed or quoted for this ship\.$/,
    );
    // A class 5 estimate of the published classes: 20 to 50 % below, 30 to 100 % above.
    expect(review?.classNote).toMatch(
      /may come out 20 to 50 % too high or 30 to 100 % too low; it is for screening\. Source: /,
    );
    const none = reviewOf(awkward('without a schedule'));
    expect([plain(none?.classSentence), none?.classNote]).toEqual([
      'The class of the estimate cannot be told yet.',
      '',
    ]);
  });
});

describe('past hulls', () => {
  test('tell what the budget allows beside what they grew by, less or not, or ask for a contingency', () => {
    const of = (contingency: Project['contingency']) =>
      plain(reviewOf(evaluatedAs({ ...DEMO, contingency }))?.growthSentence);
    // The recorded factors are 0.84, 1.10, 1.23, 1.41, 1.51 and 1.66: the middle is (1.23 + 1.41) ÷ 2 = 1.32.
    const share = (value: string) => of({ policy: 'percentage', share: figure(value, '1') });
    expect(share('0.4')).toBe('Past hulls grew by a middle factor of 1.32; this budget allows 1.40.');
    expect(share('0.1')).toBe(
      'Past hulls grew by a middle factor of 1.32; this budget allows 1.10, which is less.',
    );
    expect(of({ policy: 'percentage' })).toBe('Set a contingency to see it beside what past hulls grew by.');
  });

  test('stand each in a row: how it grew, and what this estimate would come to alike', () => {
    const evaluation = full();
    const { cases, likeHulls } = historyView(evaluation);
    const review = reviewOf(evaluation);
    expect([review?.cases.id, review?.likeHulls.id]).toEqual(['growth-cases', 'like-hulls']);
    const texts = (row: { readonly cells: Readonly<Record<string, { readonly text: string }>> }) =>
      Object.fromEntries(Object.entries(row.cells).map(([key, { text }]) => [key, text]));
    const whole = (cents: number) => Math.round(cents / 100).toLocaleString('en-US');
    expect(review?.cases.rows.map(texts)).toEqual(
      cases.map(one => ({
        hull: one.hullClass,
        length: one.lengthFeet === undefined ? '–' : String(one.lengthFeet),
        factor: one.factor.toFixed(2),
        cost: whole(one.cost),
        what: one.what,
        source: one.source,
      })),
    );
    expect(likeHulls.length).toBeGreaterThan(0);
    expect(review?.likeHulls.rows.map(texts)).toEqual(
      likeHulls.map(one => ({
        ...{ hull: one.hullClass, length: String(one.lengthFeet), year: String(one.sunkYear) },
        ...{ today: whole(one.today), scope: one.scope, source: one.source },
      })),
    );
  });
});
