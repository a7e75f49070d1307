import type { Figure, Finding } from '../base';
import type { WorkItem } from '../work';
import type { Project } from './schema';

/** Units in which a count or a time of whole days is written: its number is read as it stands. */
const UNITS = {
  count: { units: ['each', '1'], wording: 'as a plain count' },
  days: { units: ['day', 'work-day'], wording: 'in days or in work days' },
} as const;

interface Counted {
  readonly place: string;
  readonly title: string;
  readonly figure: Figure | undefined;
  readonly kind: keyof typeof UNITS;
}

/** Crews, pieces of equipment and days are read as the numbers they are, so their units must say what is counted. */
export function checkCounts(project: Project): Finding[] {
  return [
    ...project.items.flatMap(({ item, crews, crewsAtOnce, duration, remaining }): Counted[] => [
      { place: `/items/${item}/crews`, title: 'Crews', figure: crews, kind: 'count' },
      { place: `/items/${item}/crewsAtOnce`, title: 'Crews at most', figure: crewsAtOnce, kind: 'count' },
      { place: `/items/${item}/duration`, title: 'Duration', figure: duration, kind: 'days' },
      { place: `/items/${item}/remaining`, title: 'Time that remains', figure: remaining, kind: 'days' },
    ]),
    ...project.ownItems.flatMap(ownCounts),
  ].flatMap(wrongUnit);
}

function ownCounts({ id, crewsAtOnce, duration, equipment }: WorkItem): Counted[] {
  const place = `/ownItems/${id}`;
  const given = duration !== undefined && 'value' in duration ? duration : undefined;
  return [
    { place: `${place}/crewsAtOnce`, title: 'Crews at most', figure: crewsAtOnce, kind: 'count' },
    { place: `${place}/duration`, title: 'Duration', figure: given, kind: 'days' },
    ...equipment.map(({ count, equipment: title }): Counted => ({
      place: `${place}/equipment/${title}/count`,
      title: `How many of "${title}"`,
      figure: count,
      kind: 'count',
    })),
  ];
}

function wrongUnit({ place, title, figure, kind }: Counted): Finding[] {
  const { units, wording } = UNITS[kind];
  if (figure === undefined || units.some(unit => unit === figure.unit)) return [];
  return [
    {
      code: 'given/not-a-count',
      weight: 'blocks',
      place: `${place}/unit`,
      message: `${title} is given as ${figure.value} "${figure.unit}", which does not count it.`,
      meaning: `Nothing is converted here: the estimate would take the bare number ${figure.value}.`,
      remedy: `Give it ${wording}.`,
    },
  ];
}
