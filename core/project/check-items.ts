import { topologicalOrder, type Finding } from '../base';
import type { Library, WorkItem } from '../work';
import type { Project } from './schema';

/** The items a project knows: those of the library and its own. */
export function knownItems(project: Project, library: Library): readonly WorkItem[] {
  return project.ownItems.length === 0 ? library.items : [...library.items, ...project.ownItems];
}

/** Own items must not take a key of the library, must name things that exist, and no relationships may run in a circle. */
export function checkItems(project: Project, library: Library): Finding[] {
  const items = knownItems(project, library);
  const taken = new Set(library.items.map(item => item.id));
  return [
    ...project.ownItems.flatMap(item => (taken.has(item.id) ? [keyTaken(item)] : [])),
    ...project.ownItems.flatMap(item => unknownParts(item, library, items)),
    ...project.relationships.flatMap((relationship, i) =>
      [relationship.from, relationship.to]
        .filter(id => !items.some(item => item.id === id))
        .map(id => unknownPart(`/relationships/${i}`, 'work item', id)),
    ),
    ...loopFindings(items, project),
  ];
}

function unknownParts(item: WorkItem, library: Library, items: readonly WorkItem[]): Finding[] {
  const { rateBook } = library;
  const place = `/ownItems/${item.id}`;
  const wanted: [string, string | undefined, readonly { readonly id: string }[]][] = [
    ['crew', item.crew, rateBook.crews],
    ['place', item.place, library.places],
    ['driver', item.disposes === undefined ? item.driver : undefined, library.drivers],
    ...item.equipment.map((hire): [string, string, readonly { readonly id: string }[]] => [
      'equipment',
      hire.equipment,
      rateBook.equipment,
    ]),
    ...item.wastes.map((waste): [string, string, readonly { readonly id: string }[]] => [
      'waste stream',
      waste.stream,
      rateBook.streams,
    ]),
    ...item.after.map((after): [string, string, readonly { readonly id: string }[]] => [
      'work item',
      after.item,
      items,
    ]),
  ];
  return wanted.flatMap(([what, id, known]) =>
    id === undefined || known.some(candidate => candidate.id === id) ? [] : [unknownPart(place, what, id)],
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
  const names = order.loop.map(i => items[i]?.title ?? '');
  return [
    {
      code: 'items/loop',
      weight: 'blocks',
      place: '/relationships',
      message: `These items wait for each other in a circle: ${[...names, names[0] ?? ''].join(', then ')}.`,
      meaning: 'There is no schedule, and so no total.',
      remedy: 'Take out one of these relationships.',
    },
  ];
}
