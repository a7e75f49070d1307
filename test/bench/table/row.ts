/** One line of the bench's table: a figure, and the same job done by a peer in the same run. */
export interface BenchRow {
  readonly name: string;
  /** Absent where this machine lacks what the figure needs; `said` tells what. */
  readonly figure?: number;
  readonly unit: string;
  readonly peer?: string;
  /** In the unit of the figure. */
  readonly peerFigure?: number;
  /** What the ratio says, in words, with its value. */
  readonly ratio?: { readonly words: string; readonly value: number };
  /** Under which conditions, or why there is no figure. */
  readonly said?: string;
}

const digits = (value: number) => (Math.abs(value) >= 100 ? 0 : Math.abs(value) >= 10 ? 1 : 2);
const shown = (value: number) =>
  value.toLocaleString('en-US', {
    minimumFractionDigits: digits(value),
    maximumFractionDigits: digits(value),
  });

/** The table as text, one line a row. */
export function tableText(rows: readonly BenchRow[]): string {
  const name = Math.max(...rows.map(row => row.name.length));
  return rows
    .map(row => {
      const figure = row.figure === undefined ? '–' : shown(row.figure);
      const peer =
        row.peer === undefined
          ? ''
          : `${row.peer} ${row.peerFigure === undefined ? '–' : `${shown(row.peerFigure)} ${row.unit}`}`;
      const ratio = row.ratio === undefined ? '' : `${row.ratio.words} ${shown(row.ratio.value)}`;
      const more = [peer, ratio, row.said ?? ''].filter(text => text !== '').join('; ');
      return `${row.name.padEnd(name)}  ${figure.padStart(9)} ${row.unit.padEnd(12)} ${more}`.trimEnd();
    })
    .join('\n');
}
