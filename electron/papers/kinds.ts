/** The papers that can be handed over. */
export const PAPERS = ['workbook'] as const;
export type PaperKind = (typeof PAPERS)[number];
