import type { UprightResult } from './result-types';

/** Printed with every result. */
export const CAUTION =
  "Screening, not a naval architect's study. Have a naval architect check the plan with an inclining or a measured weight list before any opening is cut. Planning aid only. Follow the law where you work, the authority having jurisdiction and licensed or competent persons; this program replaces none of them.";

/** What the screen cannot see, printed beside it. */
export const CANNOT_SEE: readonly string[] = [
  'undocumented holes in bulkheads and decks, and doors left open',
  'waves, wind and current on the day',
  'what happens once the deck is under: superstructure, flooding from above, the way down',
  'cargo, ballast, mud or machinery that breaks loose as she heels',
  'corrosion, and plates that give way under the water pressure',
  'the ship turning with speed: every position is taken as settled',
  'trim in the section check (the flooding simulation has it)',
];

/** Where the flooding simulation ends: it follows her until the hull is under, or lies on the bottom before that. */
export function endOfSinking({ stages }: Pick<UprightResult, 'stages'>): 'under' | 'on the bottom' {
  return stages.at(-1)?.event === 'on the bottom' ? 'on the bottom' : 'under';
}
