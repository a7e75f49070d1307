import type { PaperCell } from './model';

/**
 * Keeps the cells of the sheet that was read last and lets go of those before: so a large workbook can be read sheet by
 * sheet without being held whole.
 */
export class LastMade {
  #maker: (() => readonly PaperCell[]) | undefined;
  #cells: readonly PaperCell[] = [];

  /** The cells that a maker makes: made anew unless it was asked last. */
  of(maker: () => readonly PaperCell[]): readonly PaperCell[] {
    if (this.#maker === maker) return this.#cells;
    this.#maker = undefined;
    this.#cells = [];
    this.#cells = maker();
    this.#maker = maker;
    return this.#cells;
  }
}
