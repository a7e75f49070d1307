import { addMonths, dayOf, monthOf, monthStart } from '../../calendar';
import { monthWords } from '../../calendar';
import { roundText } from '../number-text';
import type { Tick } from './rows';

const MILLION = 1_000_000;
const STEPS = [10_000, 25_000, 50_000, 100_000, 250_000, 500_000, MILLION, 2 * MILLION, 5 * MILLION];
/** Fewer than this many ticks on an axis. */
const MOST = 7;

/** Ticks of a money axis in millions, from below the least to above the most. */
export function moneyTicks(least: number, most: number): readonly Tick[] {
  const size = STEPS.find(step => (most - least) / step < MOST - 1) ?? 10 * MILLION;
  const [first, last] = [Math.floor(least / size), Math.ceil(most / size)];
  const decimals = size % MILLION === 0 ? 0 : size % 100_000 === 0 ? 1 : size % 10_000 === 0 ? 2 : 3;
  return Array.from({ length: last - first + 1 }, (_, at) => {
    const value = (first + at) * size;
    return { at: value, text: roundText((value / MILLION).toFixed(4), decimals) };
  });
}

/** Ticks of a time axis at the starts of months; the first and each January carry their year. */
export function monthTicks(least: number, most: number): readonly Tick[] {
  const first = monthStart(least);
  const span = (most - first) / 30;
  const every = span < MOST ? 1 : span < 2 * MOST ? 2 : span < 3 * MOST ? 3 : span < 6 * MOST ? 6 : 12;
  const ticks: Tick[] = [];
  let year = '';
  for (let day = first; ; day = addMonths(day, every)) {
    const month = monthOf(day);
    const words = monthWords(month);
    ticks.push({ at: day, text: month.startsWith(year) && year !== '' ? words.slice(0, 3) : words });
    year = month.slice(0, 4);
    if (day >= most) return ticks;
  }
}

export function dayNumber(iso: string): number {
  return dayOf(iso);
}
