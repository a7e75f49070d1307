import type { PaperCell } from '../../core/papers';

/** The height of a line of text, in points: 10 pt type with its lead. */
const LINE = 13;
/** Room to the left and right of the words of a cell, in characters. */
const MARGIN = 2;

/**
 * The height that a row needs for the words that are wrapped in it, in points. Not every program fits rows to their
 * words when it opens a book, and words would then stand over those of the next row.
 * @returns nothing for a row of single lines.
 */
export function rowHeight(cells: readonly PaperCell[], widths: readonly number[]): number | undefined {
  const lines = cells.map(({ content, style, column }) =>
    content.kind === 'text' && (style === 'words' || style === 'heading')
      ? linesOf(content.text, (widths[column - 1] ?? 10) - MARGIN, style === 'heading')
      : 1,
  );
  const most = Math.max(1, ...lines);
  return most === 1 ? undefined : most * LINE + 2;
}

/** Bold words take this much more room. */
const BOLD = 1.1;

/** Into how many lines words are broken between blanks; a word wider than its column is cut. */
function linesOf(words: string, width: number, isBold: boolean): number {
  const room = Math.max(1, isBold ? width / BOLD : width);
  let [lines, used] = [1, 0];
  for (const word of words.split(/\s+/)) {
    const needed = used === 0 ? word.length : used + 1 + word.length;
    if (needed <= room) {
      used = needed;
      continue;
    }
    lines += used === 0 ? 0 : 1;
    lines += Math.ceil(word.length / room) - 1;
    used = Math.min(word.length, room);
  }
  return lines;
}
