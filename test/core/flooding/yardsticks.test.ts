import { describe, expect, it } from 'vitest';
import { uprightScreen } from '../../../core/flooding';
import { coasterInput } from './invented-ship';

const measured = { low: 4.4, likely: 4.5, high: 4.6, basis: 'inclined' } as const;
const result = uprightScreen(coasterInput({ kg: measured }));

describe('yardsticks of public rules', () => {
  it('stand beside the result for the ship afloat and at her worst flood level', () => {
    expect([...new Set(result.yardsticks.map(({ rule }) => rule))]).toEqual([
      '46 CFR 170.173(b)',
      '46 CFR 170.173(c)',
      '46 CFR 28.570',
      '46 CFR 172.245',
      '33 CFR 157.21',
      'IMO guidance after damage',
      'SOLAS II-1/7-2',
    ]);
    for (const { found } of result.yardsticks) expect(Number.isFinite(found ?? 0)).toBe(true);
  });

  it('never carry the verdict: a ship that meets those afloat may still lean while sinking', () => {
    const high = uprightScreen(coasterInput({ kg: { low: 5.5, likely: 5.5, high: 5.5, basis: 'inclined' } }));
    const gm = high.yardsticks.find(({ asks }) => asks.startsWith('GM of at least 0.15'));
    expect(gm?.meets).toBe(true);
    expect(high.verdict).not.toBe('stays up');
  });
});

describe('after the deck edge', () => {
  it('says what the footprint of the superstructure holds, and what the air still aboard does', () => {
    const with_ = uprightScreen(coasterInput({ kg: measured, superstructure: { length: 20, breadth: 10 } }));
    const wider = uprightScreen(coasterInput({ kg: measured, superstructure: { length: 20, breadth: 12 } }));
    const light = (20 * (12 ** 3 - 10 ** 3)) / 12;
    const change = (wider.afterDeckEdge?.houseGmMetres ?? NaN) - (with_.afterDeckEdge?.houseGmMetres ?? NaN);
    // BM of the footprint over the light volume: I / V, Lewis (ed.), Principles of Naval Architecture, 1988, vol. I.
    expect((change * 2000) / 1.025).toBeGreaterThan(0.8 * light);
    expect((change * 2000) / 1.025).toBeLessThan(1.4 * light);
    expect(with_.afterDeckEdge?.notes).toHaveLength(2);
  });

  it('a tight space low in the ship lowers the middle of the air, one high up raises it', () => {
    const input = coasterInput({ kg: measured });
    const [first, ...others] = input.compartments;
    if (first === undefined) throw new Error('the ship has compartments');
    const withTight = (z0: number, z1: number) =>
      uprightScreen({ ...input, compartments: [{ ...first, z0, z1, floods: false }, ...others] })
        .afterDeckEdge;
    const [low, high] = [withTight(first.z0, first.z0 + 1), withTight(first.z1 - 1, first.z1)];
    expect(low?.airLeverMetres).toBeLessThan(high?.airLeverMetres ?? NaN);
    expect(high?.notes[1]).toMatch(/above the centre of gravity: it helps to hold her upright/);
  });
});
