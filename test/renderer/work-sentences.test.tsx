import { renderToStaticMarkup } from 'react-dom/server';
import { expect, test } from 'vitest';
import { evaluate } from '../../core/evaluation';
import { windowRows } from '../../core/views';
import { WorkSentences } from '../../renderer/views/work/work-sentences';
import { demoProject } from '../core/evaluation/demo';

test('every sentence of the work begins with what its item is called, and its columns have headings', () => {
  const project = demoProject();
  const evaluation = evaluate(project, { today: '2026-11-24', seed: 1, upright: false });
  const view = windowRows(project, evaluation, 'us', undefined)?.rows.work;
  if (view === undefined) throw new Error('there is no work to show');
  const shown = renderToStaticMarkup(<WorkSentences view={view} />)
    .replace(/<[^>]+>/g, '|')
    .replaceAll('&#x27;', "'")
    .replaceAll('&amp;', '&')
    .replaceAll(/\|+/g, '|');
  expect(shown).toMatch(/^\|Work item\|Hours\|h\|Cost\|\$\|Basis\|/);
  const lines = view.stages.flatMap(stage => stage.lines);
  const unnamed = lines.filter(({ title }) => !shown.includes(`|${title}.| `));
  expect(unnamed.map(({ title }) => title)).toEqual([]);
  const certificates = lines.filter(({ title }) => /gas-free certificate/i.test(title));
  expect(new Set(certificates.map(({ title }) => title)).size).toBe(certificates.length);
});
