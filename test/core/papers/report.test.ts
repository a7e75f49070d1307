import { describe, expect, test } from 'vitest';
import { reportHtml } from '../../../core/papers';
import { compareScenarios } from '../../../core/scenario';
import { summarise } from '../../../core/evaluation';
import { moneyText } from '../../../core/money';
import { demoProject, estimated, evaluated } from '../evaluation/demo';
import { HOSTILE } from './hostile';

const project = demoProject();
const evaluations = project.scenarios.map(scenario => evaluated(project, scenario.id));
const [first] = evaluations;
if (first === undefined) throw new Error('the example has scenarios');
const html = reportHtml(first, compareScenarios(evaluations)) ?? '';
const pageOne = html.slice(html.indexOf('<section class="answers">'), html.indexOf('</section>'));

function words(markup: string): string {
  return markup
    .replace(/<style>[\s\S]*?<\/style>/g, ' ')
    .replace(/<[^>]+>/g, ' ')
    .replaceAll('&#39;', "'")
    .replaceAll('&amp;', '&')
    .replace(/\s+/g, ' ');
}

describe('the report', () => {
  test('page one has at most 14 figures, total and budget among them', () => {
    const figures = pageOne.match(/<b class="figure">/g) ?? [];
    expect(figures.length).toBeLessThanOrEqual(14);
    const outside = words(pageOne.replace(/<b class="figure">.*?<\/b>/g, ''));
    expect(outside.match(/\$[\d,.]+/g)).toBeNull();
    const { total, budget } = summarise(estimated(first));
    for (const amount of [total, budget])
      expect(words(pageOne).replaceAll(',', '')).toContain(amount && moneyText(amount));
  });

  test('page one keeps to 14 figures with nine scenarios', () => {
    const many = Array.from({ length: 9 }, (_, i) => ({
      ...first,
      scenario: { ...first.scenario, id: i === 0 ? first.scenario.id : `other-${i}` },
    }));
    const text = reportHtml(first, { evaluations: many, bridges: [], risks: [] }) ?? '';
    const page = text.slice(text.indexOf('<section class="answers">'), text.indexOf('</section>'));
    expect((page.match(/<b class="figure">/g) ?? []).length).toBeLessThanOrEqual(14);
    expect(page).toContain('More scenarios stand');
  });

  test('of one scenario alone page one sends nobody to a comparison', () => {
    const text = reportHtml(first, { evaluations: [first], bridges: [], risks: [] }) ?? '';
    expect(text).not.toContain('stand in the comparison');
  });

  test('says that the example is invented and that stability is a screening', () => {
    expect(words(pageOne)).toContain('Invented example');
    expect(words(html)).toContain('not a naval architect’s study');
  });

  test('sentences of paragraphs have under 20 words on average and none over 40', () => {
    const prose = [...html.matchAll(/<(?:p|li)(?:\s[^>]*)?>([\s\S]*?)<\/(?:p|li)>/g)].map(match =>
      words(match[1] ?? ''),
    );
    const sentences = prose
      .flatMap(text => text.split(/(?<=[.!?:;])\s+/))
      .map(sentence => sentence.split(' ').filter(word => /\w/.test(word)).length)
      .filter(count => count > 0);
    const mean = sentences.reduce((a, b) => a + b, 0) / sentences.length;
    expect(mean).toBeLessThan(20);
    expect(Math.max(...sentences)).toBeLessThanOrEqual(40);
  });

  test('has a language, a title, one first heading, heads of rows and columns, words for every picture', () => {
    expect(html).toContain('<html lang="en-US">');
    expect(html).toMatch(/<title>[^<]+<\/title>/);
    expect((html.match(/<h1/g) ?? []).length).toBe(1);
    const tables = html.match(/<table[\s\S]*?<\/table>/g) ?? [];
    expect(tables.length).toBeGreaterThan(6);
    for (const table of tables) {
      expect(table).toContain('<caption>');
      expect(table).toContain('scope="col"');
      expect(table).toContain('scope="row"');
    }
    for (const picture of html.match(/<svg[^>]*>/g) ?? [])
      expect(picture).toMatch(/role="img" aria-label="[^"]+"/);
  });

  test.each(HOSTILE)('a title %j stays text', hostile => {
    const text =
      reportHtml({
        ...first,
        project: {
          ...first.project,
          title: hostile,
          vessel: { ...first.project.vessel, name: hostile },
          site: { ...first.project.site, county: hostile },
        },
      }) ?? '';
    const elements = (markup: string) => (markup.match(/<[a-z]+/g) ?? []).sort();
    const calm = reportHtml(first) ?? '';
    expect(elements(text)).toEqual(elements(calm));
    expect(text).not.toMatch(/<script|<img|onerror=(?!alert\(1\)&gt;)/);
    expect((text.match(/<\/style>/g) ?? []).length).toBe(1);
  });
});
