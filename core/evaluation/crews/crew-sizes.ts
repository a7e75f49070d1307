import { known } from '../../base';
import type { EstimateParts } from '../evaluate';

/** One crew size that an item may be planned with instead of its own. */
export interface CrewChoice {
  readonly item: string;
  readonly title: string;
  /** Id and words of the size: "twice the usual crews". */
  readonly size: string;
  readonly words: string;
  /** Crews at work at once, and the people of one. */
  readonly crews: number;
  readonly crewSize: number;
  /** Crews at work at once as the plan stands. */
  readonly planned: number;
}

/** An item whose number of crews is open, with its own number and the others. */
export interface SizedItem {
  readonly item: string;
  readonly crew: string;
  readonly planned: number;
  readonly choices: readonly CrewChoice[];
}

/**
 * The items whose crews may be more or fewer, by the crew sizes of the rate book: those whose days come from hours, that
 * have not begun, and where the crews that there are and the people that the place holds leave another number.
 */
export function sizedItems(parts: EstimateParts): SizedItem[] {
  const { problem, planned } = parts;
  const { sizes } = parts.input.library.rateBook.crewSizes;
  const available = new Map(problem.resources.map(({ id, capacity }) => [id, capacity]));
  const room = new Map(problem.zones.map(({ id, crewLimit }) => [id, crewLimit ?? Infinity]));
  return planned.flatMap(({ item, days, crews, crewSize }): SizedItem[] => {
    if (item.crew === undefined || crews === 0 || days < 2 || !isOpen(parts, item.id)) return [];
    const most = Math.min(
      known(available, item.crew),
      Math.floor(known(room, item.place) / Math.max(1, crewSize)),
    );
    const seen = new Set([crews]);
    const choices = sizes.flatMap(({ id, title, share }): CrewChoice[] => {
      const other = Math.max(1, Math.round(Number(share.value) * crews));
      if (seen.has(other) || (other > crews && other > most)) return [];
      seen.add(other);
      return [
        { item: item.id, title: item.title, size: id, words: title, crews: other, crewSize, planned: crews },
      ];
    });
    return choices.length === 0 ? [] : [{ item: item.id, crew: item.crew, planned: crews, choices }];
  });
}

/** Whether the days of an item follow from its hours and it has not begun. */
function isOpen({ planned, input }: EstimateParts, id: string): boolean {
  const item = planned.find(one => one.item.id === id)?.item;
  const change = input.adjustments.get(id);
  if (item === undefined || item.duration !== undefined || change?.duration !== undefined) return false;
  return item.span === undefined && item.window === undefined && change?.actualStart === undefined;
}
