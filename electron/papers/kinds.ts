/** The papers that can be handed over. `report` prints one for every reader whose matter is there. */
export const PAPERS = ['workbook', 'report', 'bid', 'calendar', 'csv', 'json'] as const;
/** The build-up of a bid, which stays in the house: written only when it is asked for by name. */
export const INTERNAL_PAPER = 'internal';
/** The report of one reader alone, written when it is asked for by name. */
export const PRINTED_PAPERS = ['board-report', 'grant-file', 'bid-print'] as const;
/** What a window asks for, one by one: what stays in the house is among it. */
export const EVERY_PAPER = [...PAPERS, ...PRINTED_PAPERS, INTERNAL_PAPER] as const;
export type PaperKind = (typeof EVERY_PAPER)[number];
/** The papers that show the other scenarios and the trials beside the one they are about. */
export const COMPARING_PAPERS: readonly PaperKind[] = [
  'workbook',
  'report',
  'board-report',
  'grant-file',
  'bid-print',
  'json',
];
