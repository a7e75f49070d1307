import { at, type Finding, keeping, keepingParts, onceFor, topologicalOrder } from '../base';
import type { Library, WorkItem } from '../work';
import type { Project } from './schema';

/** The items a project knows: those of the library and its own. */
export function knownItems(project: Project, library: Library): readonly WorkItem[] {
  return project.ownItems.length === 0 ? library.items : [...library.items, ...project.ownItems];
}

/** What an item is called, and the names in it: all that these checks look at. */
const namesOf = onceFor(
  ({ id, title, crew, place, driver, disposes, equipment, wastes, after, conditions }: WorkItem) => [
    ...[id, title, crew, place, driver, disposes],
    ...[equipment, wastes, after, conditions],
  ],
);

/** Own items must not take a key of the library, must name things that exist, and no relationships may run in a circle. */
export const checkItems: (project: Project, library: Library) => readonly Finding[] = keepingParts(
  12,
  ({ ownItems, relationships }, library) => [library, relationships, ...ownItems.map(namesOf)],
  checkedItems,
);

function checkedItems(project: Project, library: Library): Finding[] {
  const items = knownItems(project, library);
  const known = knownNames(library);
  const isItem = new Set(items.map(item => item.id));
  const taken = new Set(library.items.map(item => item.id));
  return [
    ...project.ownItems.flatMap(item => (taken.has(item.id) ? [keyTaken(item)] : [])),
    ...project.ownItems.flatMap(item => unknownParts(item, known, isItem)),
    ...project.relationships.flatMap((relationship, i) =>
      [relationship.from, relationship.to]
        .filter(id => !isItem.has(id))
        .map(id => unknownPart(`/relationships/${i}`, 'work item', id)),
    ),
    ...loopFindings(items, project),
  ];
}

type Names = ReadonlySet<string>;

const namesIn = (rows: readonly { readonly id: string }[]): Names => new Set(rows.map(row => row.id));

/** The names an item may use, of each list of the library. */
const knownNames = keeping(2, ({ rateBook, places, drivers }: Library) => ({
  crews: namesIn(rateBook.crews),
  places: namesIn(places),
  drivers: namesIn(drivers),
  equipment: namesIn(rateBook.equipment),
  streams: namesIn(rateBook.streams),
  conditions: namesIn(rateBook.conditions),
}));

function unknownParts(item: WorkItem, known: ReturnType<typeof knownNames>, isItem: Names): Finding[] {
  const wanted: [string, string | undefined, Names][] = [
    ['crew', item.crew, known.crews],
    ['place', item.place, known.places],
    ['driver', item.disposes === undefined ? item.driver : undefined, known.drivers],
    ...item.equipment.map((hire): [string, string, Names] => ['equipment', hire.equipment, known.equipment]),
    ...item.wastes.map((waste): [string, string, Names] => ['waste stream', waste.stream, known.streams]),
    ...item.conditions.map((id): [string, string, Names] => ['condition of work', id, known.conditions]),
    ...item.after.map((after): [string, string, Names] => ['work item', after.item, isItem]),
  ];
  return wanted.flatMap(([what, id, names]) =>
    id === undefined || names.has(id) ? [] : [unknownPart(`/ownItems/${item.id}`, what, id)],
  );
}

function unknownPart(place: string, what: string, id: string): Finding {
  return {
    code: 'items/names-nothing',
    weight: 'blocks',
    place,
    message: `There is no ${what} "${id}".`,
    meaning: 'What names it is left out of the estimate.',
    remedy: `Choose a ${what} that exists, or add it first.`,
  };
}

function keyTaken(item: WorkItem): Finding {
  return {
    code: 'items/key-taken',
    weight: 'blocks',
    place: `/ownItems/${item.id}`,
    message: `The key "${item.id}" belongs to an item of the library.`,
    meaning: 'It is not clear which of the two is meant.',
    remedy: 'Give the project’s own item a key of its own.',
  };
}

function loopFindings(items: readonly WorkItem[], project: Project): Finding[] {
  const number = new Map(items.map((item, i) => [item.id, i]));
  const pairs = [
    ...items.flatMap(item => item.after.map(after => [after.item, item.id] as const)),
    ...project.relationships.map(relationship => [relationship.from, relationship.to] as const),
  ].flatMap(([from, to]): [number, number][] => {
    const [a, b] = [number.get(from), number.get(to)];
    return a === undefined || b === undefined ? [] : [[a, b]];
  });
  const order = topologicalOrder(items.length, pairs);
  if (!('loop' in order)) return [];
  const names = order.loop.map(i => at(items, i).title);
  return [
    {
      code: 'items/loop',
      weight: 'blocks',
      place: '/relationships',
      message: `These items wait for each other in a circle: ${[...names, at(names, 0)].join(', then ')}.`,
      meaning: 'There is no schedule, and so no total.',
      remedy: 'Take out one of these relationships.',
    },
  ];
}
