/** The papers that can be handed over. */
export const PAPERS = ['workbook', 'report', 'bid', 'calendar', 'csv', 'json'] as const;
export type PaperKind = (typeof PAPERS)[number];
