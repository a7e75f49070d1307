import type { ItemRelationship, Library, WorkItem } from '../../work';

/** The item that notifies the agency of a planned episodic event. */
export const EPISODIC_NOTICE = 'episodic-notice';

/**
 * Work that makes waste counting towards the generator category waits for the notice of the planned episodic event,
 * so that the event can begin with the first of it.
 * @source 40 CFR 262.232(a)(2): notice at least 30 calendar days before the event begins
 */
export function noticeRelationships(library: Library, items: readonly WorkItem[]): ItemRelationship[] {
  if (!items.some(item => item.id === EPISODIC_NOTICE)) return [];
  const counting = new Set(library.rateBook.streams.filter(stream => stream.counts).map(stream => stream.id));
  return items
    .filter(item => item.span === undefined && item.wastes.some(waste => counting.has(waste.stream)))
    .map(({ id }) => ({ from: EPISODIC_NOTICE, to: id, kind: 'FS' }));
}
