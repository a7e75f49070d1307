import fs from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';

const css = fs.readFileSync(path.join(import.meta.dirname, '../../renderer/tokens.css'), 'utf8');

/** The colours of a theme, as its block in the tokens file has them. */
function colours(selector: string): Record<string, string> {
  const at = css.indexOf(`${selector} {`);
  const block = css.slice(at, css.indexOf('}', at));
  return Object.fromEntries(
    [...block.matchAll(/--([a-z0-9-]+): (#[0-9a-f]{6});/g)].map(found => [found[1] ?? '', found[2] ?? '']),
  );
}

const light = colours(':root');
const THEMES = {
  light,
  dark: colours(":root[data-theme='dark']"),
  contrast: { ...light, ...colours(":root[data-theme='contrast']") },
};

/** Relative luminance. @source WCAG 2.2, definition of relative luminance (with the sRGB threshold 0.04045). */
function luminance(hex: string): number {
  const [r, g, b] = [1, 3, 5]
    .map(at => parseInt(hex.slice(at, at + 2), 16) / 255)
    .map(part => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
  return 0.2126 * (r ?? 0) + 0.7152 * (g ?? 0) + 0.0722 * (b ?? 0);
}

/** Contrast ratio. @source WCAG 2.2, success criterion 1.4.3. */
function contrast(one: string, other: string): number {
  const [high = 0, low = 0] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (high + 0.05) / (low + 0.05);
}

const READING = ['paper', 'side', 'sel', 'wash', 'accent-wash', 'water', 'bed'].map(
  ground => ['text', ground, 7] as const,
);
const SECOND = ['paper', 'side', 'sel', 'wash', 'water', 'bed'].map(
  ground => ['text2', ground, 4.5] as const,
);
const THIRD = ['paper', 'side', 'wash', 'sel'].map(ground => ['text3', ground, 4.5] as const);
const INK = ['paper', 'side', 'sel'].map(ground => ['data', ground, 4.5] as const);
const ACCENT = ['paper', 'side', 'accent-wash', 'sel'].map(ground => ['accent', ground, 4.5] as const);
const PAIRS: readonly (readonly [string, string, number])[] = [
  ...READING,
  ...SECOND,
  ...THIRD,
  ...INK,
  ...ACCENT,
  ['on-data', 'data', 4.5],
  ['data', 'wash', 3],
  ['data', 'water', 3],
  ['data2', 'paper', 3],
  ['data2', 'wash', 3],
  ['text', 'data3', 3],
  ['accent', 'water', 3],
  ['accent', 'wash', 3],
  ['rule2', 'paper', 3],
  ['rule2', 'side', 3],
  ['bed-ink', 'paper', 3],
  ['bed-ink', 'bed', 3],
];

for (const [theme, tokens] of Object.entries(THEMES)) {
  test.each(PAIRS)(`${theme}: %s on %s is at least %d to 1`, (front, ground, least) => {
    const [one, other] = [tokens[front], tokens[ground]];
    expect(one, front).toBeDefined();
    expect(other, ground).toBeDefined();
    expect(contrast(one ?? '', other ?? '')).toBeGreaterThanOrEqual(least);
  });
}

test('black on white is 21 to 1 and equal colours are 1 to 1', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
  expect(contrast('#777777', '#777777')).toBe(1);
  expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.478, 3);
});

test('no style sheet but the tokens names a colour', () => {
  const folder = path.join(import.meta.dirname, '../../renderer');
  const sheets = fs
    .readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter(name => name.endsWith('.css') && name !== 'tokens.css');
  expect(sheets.length).toBeGreaterThan(5);
  for (const name of sheets) {
    expect(fs.readFileSync(path.join(folder, name), 'utf8'), name).not.toMatch(
      /#[0-9a-f]{3,8}\b|rgba?\(|hsla?\(/i,
    );
  }
});

/**
 * Linear RGB as it is seen with one kind of cone missing.
 * @source Machado, Oliveira, Fernandes, A Physiologically-based Model for Simulation of Color Vision Deficiency, IEEE
 * Transactions on Visualization and Computer Graphics 15(6), 2009, severity 1.0 (from memory).
 */
const SEEN: Readonly<Record<string, readonly (readonly [number, number, number])[]>> = {
  'without red cones': [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  'without green cones': [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  'without blue cones': [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
  'in grey': [
    [0.2126, 0.7152, 0.0722],
    [0.2126, 0.7152, 0.0722],
    [0.2126, 0.7152, 0.0722],
  ],
};

/** Linear RGB of a colour. */
function linear(hex: string): readonly number[] {
  return [1, 3, 5]
    .map(at => parseInt(hex.slice(at, at + 2), 16) / 255)
    .map(part => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
}

/** CIELAB of linear RGB under D65. @source CIE 15, and IEC 61966-2-1 for the primaries. */
function lab([r = 0, g = 0, b = 0]: readonly number[]): readonly number[] {
  const f = (t: number) => (t > (6 / 29) ** 3 ? Math.cbrt(t) : t / (3 * (6 / 29) ** 2) + 4 / 29);
  const x = f((0.4124564 * r + 0.3575761 * g + 0.1804375 * b) / 0.95047);
  const y = f(0.2126729 * r + 0.7151522 * g + 0.072175 * b);
  const z = f((0.0193339 * r + 0.119192 * g + 0.9503041 * b) / 1.08883);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

function apart(one: string, other: string, sight: readonly (readonly number[])[]): number {
  const [a, b] = [one, other].map(hex => {
    const rgb = linear(hex);
    return lab(sight.map(row => row.reduce((sum, part, at) => sum + part * (rgb[at] ?? 0), 0)));
  });
  return Math.hypot(...[0, 1, 2].map(at => (a?.[at] ?? 0) - (b?.[at] ?? 0)));
}

/** Pairs that stand side by side in a picture and mean different things. In grey, accent has its words and its weight. */
const SIDE_BY_SIDE = [
  ['data', 'data2'],
  ['data', 'data3'],
  ['data2', 'data3'],
  ['data', 'paper'],
  ['data3', 'paper'],
  ['accent', 'paper'],
] as const;

for (const [theme, tokens] of Object.entries(THEMES)) {
  describe.each(Object.entries(SEEN))(`${theme}, %s`, (name, sight) => {
    test.each(SIDE_BY_SIDE)('%s and %s are told apart', (one, other) => {
      expect(apart(tokens[one] ?? '', tokens[other] ?? '', sight)).toBeGreaterThan(12);
    });
    test.runIf(name !== 'in grey')('the ink and the accent are told apart', () => {
      expect(apart(tokens['data'] ?? '', tokens['accent'] ?? '', sight)).toBeGreaterThan(20);
    });
  });
}
