import { shippedLibrary, type Evaluation } from '../../../core/evaluation';
import { startingProject, type Project } from '../../../core/project';
import { demoProject, evaluated } from '../evaluation/demo';

const demo = demoProject();

/** A project as it is begun: no grant, no board's weights, no quote, no permit, nothing measured, no deadline. */
export function bareProject(): Project {
  return startingProject(shippedLibrary(), {
    reader: 'comparison',
    hullType: 'freighter',
    title: 'Plain ship',
    start: '2027-03-01',
  });
}

/** The example with hours below zero, which leave every line without its money. */
export function withoutTotal(): Evaluation {
  const hoursPerUnit = { value: '-5', unit: 'h', basis: 'judgement' as const, source: 'a slip of the pen' };
  return evaluated({ ...demo, items: [...demo.items, { item: 'ocean-tow', hoursPerUnit, note: 'slip' }] });
}

/** The example with work that waits for itself: nothing can be scheduled, so there is no estimate. */
export function withoutEstimate(): Evaluation {
  return evaluated({
    ...demo,
    relationships: [{ from: 'ocean-tow', to: 'tank-washing', kind: 'FS' as const }],
  });
}

/** The words of a page without its marks. */
export function words(markup: string): string {
  return markup
    .replace(/<style>[\s\S]*?<\/style>/g, ' ')
    .replace(/<[^>]+>/g, ' ')
    .replaceAll('&#39;', "'")
    .replaceAll('&amp;', '&')
    .replace(/\s+/g, ' ');
}
