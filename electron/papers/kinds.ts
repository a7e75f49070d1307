/** The papers that can be handed over. */
export const PAPERS = ['workbook', 'report', 'bid', 'calendar', 'csv', 'json'] as const;
/** The build-up of a bid, which stays in the house: written only when it is asked for by name. */
export const INTERNAL_PAPER = 'internal';
export const EVERY_PAPER = [...PAPERS, INTERNAL_PAPER] as const;
export type PaperKind = (typeof EVERY_PAPER)[number];
