import { element, type Markup } from './markup';

/** One bar of a chart: its name, its size, and the size in words. */
export interface Bar {
  readonly title: string;
  readonly value: number;
  readonly words: string;
}

const WIDTH = 640;
const NAME = 190;
const WORDS = 120;
const ROW = 14;

/**
 * Horizontal bars from a common zero, each with its name before it and its amount behind it, so that the picture
 * reads without colour. Credits go to the left.
 */
export function barChart(title: string, bars: readonly Bar[]): Markup {
  const least = Math.min(0, ...bars.map(bar => bar.value));
  const most = Math.max(0, ...bars.map(bar => bar.value));
  const room = WIDTH - NAME - WORDS;
  const scale = most > least ? room / (most - least) : 0;
  const zero = NAME - least * scale;
  const rows = bars.flatMap((bar, i) => {
    const y = i * ROW + 3;
    const length = Math.abs(bar.value) * scale;
    const from = bar.value < 0 ? zero - length : zero;
    const end = bar.value < 0 ? zero : zero + length;
    return [
      label(NAME - 8, y + 9, bar.title, 'end'),
      element('rect', { x: px(from), y: px(y), width: px(length), height: '10', class: 'bar' }),
      label(end + 6, y + 9, bar.words, 'start'),
    ];
  });
  const height = bars.length * ROW + 6;
  const axis = element('line', { x1: px(zero), x2: px(zero), y1: '0', y2: px(height), class: 'axis' });
  return picture(title, height, [...rows, axis]);
}

/** A picture in vectors, with the words that stand for it. */
export function picture(title: string, height: number, parts: readonly Markup[]): Markup {
  return element(
    'svg',
    {
      viewBox: `0 0 ${WIDTH} ${px(height)}`,
      width: '100%',
      role: 'img',
      'aria-label': title,
    },
    element('title', {}, title),
    ...parts,
  );
}

/** Words in a picture. */
export function label(x: number, y: number, words: string, anchor: 'start' | 'end' | 'middle'): Markup {
  return element('text', { x: px(x), y: px(y), 'text-anchor': anchor }, words);
}

/** A length of a picture with at most two decimals. */
export function px(length: number): string {
  return String(Math.round(length * 100) / 100);
}

/** How wide all pictures are, in their own units; they are printed as wide as the page. */
export const PICTURE_WIDTH = WIDTH;
