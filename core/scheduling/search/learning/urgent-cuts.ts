import { intAt, valueAt } from '../../../base';

/** Scores fade by this share with every conflict. */
const FADING = 0.9;
const TOO_LARGE = 1e100;

/**
 * The cuts that took part in conflicts, the most and latest involved first: a binary heap.
 * @source Moskewicz, Madigan, Zhao, Zhang and Malik, Proceedings of the Design Automation Conference (2001) 530-535
 *   (variable state independent decaying sum).
 */
export class UrgentCuts {
  private readonly scores: Float64Array;
  private readonly heap: Int32Array;
  private readonly places: Int32Array;
  private size = 0;
  private weight = 1;

  constructor(count: number) {
    this.scores = new Float64Array(count);
    this.heap = new Int32Array(count);
    this.places = new Int32Array(count).fill(-1);
  }

  /** Raises the score of a cut that takes part in a conflict. */
  raise(cut: number): void {
    const score = valueAt(this.scores, cut) + this.weight;
    this.scores[cut] = score;
    if (score > TOO_LARGE) this.scaleDown();
    const place = intAt(this.places, cut);
    if (place >= 0) this.lift(place);
    else this.add(cut);
  }

  /** After a conflict: what comes later counts more. */
  fade(): void {
    this.weight /= FADING;
  }

  /** Takes the cuts from one up to, not including, another in again when they have a score. */
  returnAll(from: number, to: number): void {
    for (let cut = from; cut < to; cut++) {
      if (valueAt(this.scores, cut) > 0 && intAt(this.places, cut) < 0) this.add(cut);
    }
  }

  /** Takes the most urgent cut out; -1 when there is none. */
  take(): number {
    if (this.size === 0) return -1;
    const cut = intAt(this.heap, 0);
    this.places[cut] = -1;
    const last = intAt(this.heap, --this.size);
    if (this.size > 0) {
      this.heap[0] = last;
      this.places[last] = 0;
      this.sink();
    }
    return cut;
  }

  private add(cut: number): void {
    this.heap[this.size] = cut;
    this.places[cut] = this.size;
    this.lift(this.size++);
  }

  private lift(from: number): void {
    const { heap, places, scores } = this;
    const cut = intAt(heap, from);
    const score = valueAt(scores, cut);
    let place = from;
    while (place > 0) {
      const above = (place - 1) >> 1;
      const other = intAt(heap, above);
      if (valueAt(scores, other) >= score) break;
      heap[place] = other;
      places[other] = place;
      place = above;
    }
    heap[place] = cut;
    places[cut] = place;
  }

  private sink(): void {
    const { heap, places, scores, size } = this;
    const cut = intAt(heap, 0);
    const score = valueAt(scores, cut);
    let place = 0;
    for (let below = 1; below < size; below = 2 * place + 1) {
      const right = below + 1;
      if (right < size && valueAt(scores, intAt(heap, right)) > valueAt(scores, intAt(heap, below))) {
        below = right;
      }
      const other = intAt(heap, below);
      if (valueAt(scores, other) <= score) break;
      heap[place] = other;
      places[other] = place;
      place = below;
    }
    heap[place] = cut;
    places[cut] = place;
  }

  private scaleDown(): void {
    for (let cut = 0; cut < this.scores.length; cut++) {
      this.scores[cut] = valueAt(this.scores, cut) / TOO_LARGE;
    }
    this.weight /= TOO_LARGE;
  }
}
