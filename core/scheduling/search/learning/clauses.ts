import { at, intAt } from '../../../base';

/** Learned clauses: at least one of the literals of each must hold. The first two of each are watched. */
export class Clauses {
  count = 0;
  /** The literals of all clauses in a row; clause `c` from `starts[c]` to before `starts[c + 1]`. */
  literals: Int32Array = new Int32Array(1 << 14);
  starts: Int32Array = new Int32Array(1 << 10);
  /** The first watch of each literal, twice the clause plus which of the two; -1: none. */
  readonly heads: Int32Array;
  /** The next watch of the same literal. */
  next: Int32Array = new Int32Array(1 << 11);
  /** How many levels the literals of each came from when it was learned. */
  private spreads: Int32Array = new Int32Array(1 << 10);
  /** When each last took part in a conflict. */
  private uses: Int32Array = new Int32Array(1 << 10);

  /** @param literals how many there are. */
  constructor(literals: number) {
    this.heads = new Int32Array(literals).fill(-1);
  }

  /** Adds a clause of two literals or more and watches its first two; returns its number. */
  add(clause: ArrayLike<number>, length: number, spread: number, now: number): number {
    this.makeRoom(length);
    const number = this.count++;
    const start = intAt(this.starts, number);
    for (let k = 0; k < length; k++) this.literals[start + k] = at(clause, k);
    this.starts[number + 1] = start + length;
    this.spreads[number] = spread;
    this.uses[number] = now;
    this.watch(number, 0);
    this.watch(number, 1);
    return number;
  }

  /** Notes that a clause took part in a conflict. */
  use(clause: number, now: number): void {
    this.uses[clause] = now;
  }

  private watch(clause: number, which: number): void {
    const literal = intAt(this.literals, intAt(this.starts, clause) + which);
    const watch = 2 * clause + which;
    this.next[watch] = intAt(this.heads, literal);
    this.heads[literal] = watch;
  }

  private makeRoom(length: number): void {
    const end = intAt(this.starts, this.count) + length;
    if (end > this.literals.length) this.literals = grown(this.literals, 2 * end);
    if (this.count + 2 > this.starts.length) {
      const size = 2 * this.starts.length;
      this.starts = grown(this.starts, size);
      this.spreads = grown(this.spreads, size);
      this.uses = grown(this.uses, size);
      this.next = grown(this.next, 2 * size);
    }
  }

  /**
   * Drops the half that is worth least: those spread over many levels and long not used. Only where nothing rests on a
   * clause.
   * @param valueOf whether a literal holds in any case (1), so that its clause says nothing more, never holds (-1), or
   *   is open (0).
   */
  shrink(valueOf: (literal: number) => number): void {
    const order = Array.from({ length: this.count }, (_, clause) => clause);
    const rank = (clause: number): number => Math.min(intAt(this.spreads, clause), 30);
    order.sort((a, b) => rank(a) - rank(b) || intAt(this.uses, b) - intAt(this.uses, a) || a - b);
    const isKept = new Uint8Array(this.count);
    order.forEach((clause, place) => {
      isKept[clause] = place < this.count / 2 || intAt(this.spreads, clause) <= 2 ? 1 : 0;
    });
    // What is kept never overtakes what is still to be read.
    const { literals } = this;
    const starts = this.starts.slice();
    const count = this.count;
    this.heads.fill(-1);
    this.count = 0;
    for (let clause = 0; clause < count; clause++) {
      if (isKept[clause] === 0) continue;
      const own = literals.subarray(intAt(starts, clause), intAt(starts, clause + 1));
      if (own.some(literal => valueOf(literal) === 1)) continue;
      const open = own.filter(literal => valueOf(literal) === 0);
      this.add(open, open.length, intAt(this.spreads, clause), intAt(this.uses, clause));
    }
  }
}

function grown(old: Int32Array, size: number): Int32Array {
  const larger = new Int32Array(size);
  larger.set(old);
  return larger;
}
