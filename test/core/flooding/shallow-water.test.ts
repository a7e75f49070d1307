import { describe, expect, it } from 'vitest';
import { simulateFlooding } from '../../../core/flooding';
import { bargeShip, link, roomOf, wholeHold, wideVent } from './boxes';

const hold = roomOf(wholeHold);
const afterHold = roomOf({ ...wholeHold, id: 'after', x0: 0, x1: 30 });

/** The barge of 10 m depth flooded in shallow water. */
function sunkIn(waterDepth: number, room = hold) {
  const ship = bargeShip(3, [room], [link({ area: 5 }), wideVent(0)]);
  return simulateFlooding(ship, { seconds: 4000, waterDepth });
}

describe('water shallower than the ship is deep', () => {
  it('takes her upright to the bottom, where she lies with her deck dry', () => {
    const run = sunkIn(6);
    expect(run.outcome).toBe('on the bottom');
    const last = run.history.at(-1);
    expect(last?.event).toBe('on the bottom');
    expect(Math.abs(last?.heel ?? 99)).toBeLessThan(0.1);
    expect(last?.draught).toBeGreaterThan(5.9);
    expect(last?.draught).toBeLessThan(6.1);
    expect(run.volumeError).toBeLessThan(1e-6);
  });

  it('takes the end that floods first to the bottom first', () => {
    const run = sunkIn(5, afterHold);
    expect(run.history.map(({ event }) => event)).toContain('stern on the bottom');
    expect(run.outcome).not.toBe('sunk');
  });
});
