import { describe, expect, test } from 'vitest';
import { grantView } from '../../../core/evaluation';
import { decisionAbout, estimateWorkbook, reportHtml } from '../../../core/papers';
import { compareScenarios } from '../../../core/scenario';
import { WhyDesk } from '../../../core/views';
import { decisionRows } from '../../../core/views/decision/view';
import { demoProject, evaluated } from '../evaluation/demo';
import { plain } from '../views/laws';

const project = demoProject();
const { funding } = project;
if (funding === undefined) throw new Error('the example has a grant');
const cap = (value: string) => ({ value, unit: 'USD', basis: 'judgement' as const, source: 'This test' });
const CAPS = new Map([
  ['sport-fish-grant', cap('350000')],
  ['county-match', cap('200000')],
]);
const sources = funding.sources.map(source => {
  const most = CAPS.get(source.id);
  return most === undefined ? source : { ...source, cap: most };
});
const evaluation = evaluated({ ...project, funding: { ...funding, sources } });
const { book } = grantView(evaluation);
if (book === undefined) throw new Error('there is a grant budget');
const amount = (book.unfunded / 100).toLocaleString('en-US', { style: 'currency', currency: 'USD' });
const whole = `$${Math.round(book.unfunded / 100).toLocaleString('en-US')}`;

/** The first page of a report as words. */
function firstPage(reader: 'board' | 'grant'): string {
  const html = reportHtml(evaluation, undefined, reader) ?? '';
  return html
    .slice(html.indexOf('<section'), html.indexOf('</section>'))
    .replace(/<[^>]+>/g, ' ')
    .replace(/\s+/g, ' ')
    .replaceAll(' ,', ',')
    .replaceAll(' .', '.');
}

describe('what no source bears yet', () => {
  test('is more than nothing here', () => {
    expect(book.unfunded).toBeGreaterThan(0);
  });

  test('stands on the first page for the board', () => {
    expect(firstPage('board')).toContain(`and ${amount} that no source bears yet, if the work costs`);
  });

  test('stands on the first page of the grant file, beside the sources and in a sentence', () => {
    const page = firstPage('grant');
    expect(page).toContain(`Not funded yet ${amount}`);
    expect(page).toContain(`Not funded yet: no source bears ${amount} of the budget of the forms.`);
    expect(page).toContain(`and ${amount} that no source bears yet.`);
  });

  test('fails its check in the workbook, and the master check with it', () => {
    const sheets = estimateWorkbook(evaluation)?.sheets ?? [];
    const cells = sheets.find(({ name }) => name === 'Checks')?.cells ?? [];
    const row = cells.find(
      ({ content }) => content.kind === 'text' && content.text.includes('no source bears yet'),
    )?.row;
    const results = [2, 3].map(column => {
      const content = cells.find(cell => cell.row === row && cell.column === column)?.content;
      return content?.kind === 'formula' ? content.result : undefined;
    });
    expect(results).toEqual([book.unfunded / 100, 'REVIEW']);
    expect(sheets[0]?.cells.find(cell => cell.row === 5 && cell.column === 2)?.content).toMatchObject({
      result: 'REVIEW',
    });
    const forms = sheets.find(({ name }) => name === 'Funding forms')?.cells ?? [];
    const told = forms.find(
      ({ content }) => content.kind === 'text' && content.text.startsWith('Not funded yet'),
    );
    expect(forms.find(cell => cell.row === told?.row && cell.column === 2)?.content).toMatchObject({
      kind: 'formula',
      result: book.unfunded / 100,
    });
  });

  test('stands in the sentence of Funding, and its amount opens', () => {
    const desk = new WhyDesk(evaluation, 'us');
    const view = desk.opened('funding');
    expect(plain(view?.sentence)).toMatch(/: its share of the forms, \$200,000, /);
    expect(plain(view?.sentence)).toContain(`, and ${whole} that no source bears yet.`);
    expect(desk.answer('grant:source|not-found')?.title).toBe('Not funded yet');
    expect(desk.answer('grant:county|total')?.rows.map(row => row.words)).toContain(
      'what no source bears yet',
    );
  });

  test('stands in section C beside the sources', () => {
    const sections = new WhyDesk(evaluation, 'us').opened('funding')?.awards[0]?.sections ?? [];
    const section = sections.find(({ caption }) => caption.startsWith('Section C'));
    const row = section?.rows.find(({ id }) => id === 'Not funded yet');
    expect(
      Math.abs(Number(row?.cells['amount']?.text.replaceAll(',', '')) - book.unfunded / 100),
    ).toBeLessThan(1);
  });

  test('is told with what the county pays on Decision', () => {
    const rows = decisionRows(evaluation, compareScenarios([evaluation]));
    expect(plain(rows.county.note)).toContain(` of its own, and ${whole} that no source bears yet, if`);
    expect(decisionAbout(evaluation).county.cost?.unfunded).toBe(book.unfunded);
  });
});
