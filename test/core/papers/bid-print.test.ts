import { describe, expect, test } from 'vitest';
import { bidView, summarise } from '../../../core/evaluation';
import { bidWorkbook, reportHtml } from '../../../core/papers';
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

/** The mark of a document, as its papers carry it. */
function found(of: typeof evaluation): string {
  return /Document [0-9a-f]+/.exec(reportHtml(of, undefined, 'bid') ?? '')?.[0] ?? '';
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

describe('the offer', () => {
  const offer = {
    bidder: 'Brae Invented Works',
    address: '1 Made-up Quay',
    contact: 'An invented estimator',
    validUntil: '2027-03-31',
    addenda: 'One of November, invented',
  };
  const { bid } = evaluation.project;
  if (bid === undefined) throw new Error('the example has a bid');
  const offered = { ...evaluation, project: { ...evaluation.project, bid: { ...bid, offer } } };
  const cells = (of: typeof evaluation) => {
    const sheet = bidWorkbook(of)?.sheets.find(({ name }) => name === 'Offer');
    return (sheet?.cells ?? []).map(({ column, content }) => ({ column, content }));
  };
  const said = [
    'Brae Invented Works',
    '1 Made-up Quay',
    'An invented estimator',
    'March 31, 2027',
    offer.addenda,
  ];

  test('says on both papers who offers what to whom, and until when', () => {
    const { project, scenario } = evaluation;
    const print = reportHtml(offered, undefined, 'bid') ?? '';
    for (const text of [...said, project.site.county, `${project.title}: ${scenario.title}`]) {
      expect(words(print)).toContain(text);
      expect(cells(offered).map(({ content }) => content)).toContainEqual({ kind: 'text', text });
    }
    expect(print).not.toContain('<dt>Bidder</dt><dd class="empty">');
  });

  test('has an empty line for what is not given, and no name of anybody', () => {
    for (const title of ['Bidder', 'Address', 'Contact', 'Can be accepted until', 'Addenda received'])
      expect(html).toContain(`<dt>${title}</dt><dd class="empty"></dd>`);
    const blank = { ...offered, project: { ...offered.project, bid: { ...bid, offer: { bidder: '  ' } } } };
    expect(reportHtml(blank, undefined, 'bid')).toBe(html.replace(/Document [0-9a-f]+/, found(blank)));
    const before = cells(evaluation).filter(({ column }) => column === 2);
    expect(before).toHaveLength(cells(offered).filter(({ column }) => column === 2).length - said.length);
  });

  test('is signed by hand on both papers', () => {
    for (const of of [evaluation, offered])
      for (const title of ['Signature', 'Name and office', 'Date']) {
        expect(reportHtml(of, undefined, 'bid')).toContain(`<dt>${title}</dt><dd class="empty"></dd>`);
        expect(cells(of).map(({ content }) => content)).toContainEqual({ kind: 'text', text: title });
      }
  });

  test('is a bid and not an estimate, of the scenario by its title', () => {
    expect(html).toContain(`Bid of ${evaluation.today}`);
    expect(html).not.toContain('Estimate of');
    expect(html).not.toContain(`scenario ${evaluation.letter}`);
    expect(html).toContain(`Bid, ${evaluation.scenario.title}`);
    expect(reportHtml(evaluation)).toContain(`Estimate of ${evaluation.today}`);
  });

  test('carries the base bid as the schedule of values has it', () => {
    const total = cells(offered).find(({ content }) => content.kind === 'formula')?.content;
    expect(total).toMatchObject({ result: (bidView(evaluation).sheet?.baseBid ?? 0) / 100 });
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
