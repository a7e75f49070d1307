import { keeping, type Figure } from '../base';
import { isUnit } from '../units';
import type { PlacedGiven } from './given-rules';
import type { Project } from './schema';

/** The figures of a change of a work item, in words, and the most of each that could be meant. */
const FIELDS = [
  ['quantity', 'Quantity', '10000000000'],
  ['hoursPerUnit', 'Hours for one', '100000'],
  ['crewsAtOnce', 'Crews at once', '200'],
  ['crews', 'Crews', '200'],
  ['duration', 'Duration', '20000'],
  ['remaining', 'What remains', '20000'],
] as const;

type Field = (typeof FIELDS)[number];

/** The fields of a change that are figures. */
export const ITEM_FIGURES = FIELDS.map(([field]) => field);

/** What the planner put in place of a figure of the library: each in its own unit, and never below zero. */
export const itemGivens = keeping(12, (items: Project['items']): readonly PlacedGiven[] =>
  items.flatMap(change => FIELDS.flatMap(field => placed(change.item, field, change[field[0]]))),
);

function placed(item: string, [field, title, to]: Field, figure: Figure | undefined): PlacedGiven[] {
  // A unit that does not measure the item is told where the figure is read.
  if (figure === undefined || !isUnit(figure.unit)) return [];
  return [
    {
      place: `/items/${item}/${field}`,
      figure,
      rule: { title: `${title} of ${item.replaceAll('-', ' ')}`, unit: figure.unit, from: '0', to },
    },
  ];
}
