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
