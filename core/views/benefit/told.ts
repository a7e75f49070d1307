import { BASES } from '../../base';
import { PLANNING_FIGURE } from '../../benefit';
import { printed, roundText, shownNumber } from '../number-text';
import type { Shown, WhyRow, WhyRows } from '../rows';

/** Where the figures of the benefit case stand. */
export const HERE = { path: 'Decision, life and benefits', home: 'decision' };

export const SAID = `A ${PLANNING_FIGURE}.`;

export const money = (cents: number, why?: string): Shown => ({
  text: printed(roundText((cents / 100).toFixed(2), 2)),
  unit: '$',
  ...(why === undefined ? {} : { why }),
});

export const number = (value: number, decimals: number): Shown => ({
  text: shownNumber(value.toFixed(12), decimals),
});

export const row = (operator: string, value: Shown, words: string): WhyRow => ({
  depth: 0,
  operator,
  value,
  words,
});

export const told = (
  id: string,
  title: string,
  value: Shown,
  words: string,
  rows: readonly WhyRow[],
): WhyRows => ({
  id,
  title,
  value,
  words,
  rows,
  usedBy: [],
  bases: BASES,
  ...HERE,
});
