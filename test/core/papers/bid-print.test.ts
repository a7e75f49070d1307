import { describe, expect, test } from 'vitest';
import { summarise } from '../../../core/evaluation';
import { reportHtml } from '../../../core/papers';
import { stageSpans, stagesOverlap, type StageSpan } from '../../../core/papers/report/time-chart';
import { demoProject, estimated, evaluated } from '../evaluation/demo';

const evaluation = evaluated(demoProject());
const html = reportHtml(evaluation, undefined, 'bid') ?? '';

function words(markup: string): string {
  return markup
    .replace(/<style>[\s\S]*?<\/style>/g, ' ')
    .replace(/<[^>]+>/g, ' ')
    .replaceAll('&#39;', "'")
    .replaceAll('&amp;', '&')
    .replace(/\s+/g, ' ');
}

describe('the cautions of the printed bid', () => {
  const shown = [...html.matchAll(/<p class="caution">([\s\S]*?)<\/p>/g)].map(([, text]) =>
    words(text ?? ''),
  );
  const { library } = evaluation;

  test('are those of the contract work, and none about results of the program', () => {
    const contract = new Set(
      summarise(estimated(evaluation)).lines.flatMap(line => (line.contract ? [line.id] : [])),
    );
    const named = new Set(
      estimated(evaluation).items.flatMap(item => (contract.has(item.id) ? item.cautions : [])),
    );
    const due = library.cautions.filter(({ id }) => named.has(id) && id !== 'stability');
    expect(due.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['confined-spaces', 'hot-work', 'towing']),
    );
    expect(shown).toHaveLength(due.length);
    for (const [place, { work, care, decides }] of due.entries())
      for (const part of [work, care, decides]) expect(shown[place]).toContain(part);
    for (const own of ['Stability and flooding results', 'defaults until quoted', 'Decides: The user'])
      expect(words(html)).not.toContain(own);
    expect(words(html)).not.toContain('this program');
  });

  test('stay on the report to the board, which holds such results', () => {
    const board = words(reportHtml(evaluation) ?? '');
    expect(board).toContain('Stability and flooding results');
    expect(board).toContain(library.cautionClosing);
  });
});

describe('the stages of the printed bid', () => {
  const span = (start: string, finish: string): StageSpan => ({ stage: 'tow', title: 'Tow', start, finish });

  test('are said to overlap where one begins before another has ended', () => {
    const spans = stageSpans(estimated(evaluation));
    expect(stagesOverlap(spans)).toBe(true);
    expect(words(html)).toContain('A stage spans from its first to its last work item');
  });

  test('do not overlap where each begins after the one before', () => {
    expect(stagesOverlap([span('2027-01-01', '2027-02-01'), span('2027-02-02', '2027-03-01')])).toBe(false);
    expect(stagesOverlap([span('2027-01-01', '2027-02-01'), span('2027-02-01', '2027-03-01')])).toBe(true);
    expect(
      stagesOverlap([
        span('2027-01-01', '2027-06-01'),
        span('2027-07-01', '2027-07-02'),
        span('2027-05-01', '2027-05-02'),
      ]),
    ).toBe(true);
  });
});
