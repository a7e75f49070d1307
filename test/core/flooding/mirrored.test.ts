import { describe, expect, it } from 'vitest';
import { simulateFlooding, type Snapshot } from '../../../core/flooding';
import { bargeShip, link, roomOf, wholeHold, wideVent } from './boxes';

describe('what floods forward is what floods aft, seen from the other end', () => {
  /** The barge flooded in an end of 30 m, in water of 5 m. */
  const flooded = (x0: number, x1: number) => {
    const room = roomOf({ ...wholeHold, id: 'end', x0, x1 });
    const hole = link({ area: 5, x: (x0 + x1) / 2 });
    return simulateFlooding(bargeShip(3, [room], [hole, wideVent(0)]), { seconds: 1500, waterDepth: 5 });
  };
  const [aft, fore] = [flooded(0, 30), flooded(70, 100)];

  it('with the trim turned and the other end on the bottom', () => {
    expect(fore.outcome).toBe(aft.outcome);
    expect(fore.seconds).toBeCloseTo(aft.seconds, 6);
    const events = (history: readonly Snapshot[]) => history.flatMap(({ event }) => event ?? []);
    expect(events(aft.history)).toContain('stern on the bottom');
    expect(events(fore.history)).toEqual(events(aft.history).map(event => event.replace('stern', 'bow')));
    fore.history.forEach((moment, i) => {
      const other = aft.history[i];
      expect(moment.trim).toBeCloseTo(-(other?.trim ?? Number.NaN), 4);
      expect(moment.water).toBeCloseTo(other?.water ?? Number.NaN, 2);
      expect(moment.draught).toBeCloseTo(other?.draught ?? Number.NaN, 4);
    });
  });
});

describe('what floods to port is what floods to starboard', () => {
  const flooded = (y0: number, y1: number) => {
    const room = roomOf({ ...wholeHold, id: 'side', y0, y1 });
    const hole = link({ area: 8, y: (y0 + y1) / 2 });
    return simulateFlooding(bargeShip(2, [room], [hole, wideVent(0)]), { seconds: 1500 });
  };

  it('with the heel turned, and the deck edge under at the same time', () => {
    const [port, starboard] = [flooded(-10, -2), flooded(2, 10)];
    const under = ({ history }: typeof port) => history.find(({ event }) => event === 'deck edge under');
    expect(under(starboard)?.heel).toBeGreaterThan(5);
    expect(under(port)?.heel).toBeCloseTo(-(under(starboard)?.heel ?? Number.NaN), 4);
    expect(under(port)?.t).toBeCloseTo(under(starboard)?.t ?? Number.NaN, 6);
  });
});

describe('a ship into which no water comes', () => {
  it('stays afloat as she is, with nothing lost', () => {
    const run = simulateFlooding(bargeShip(3, [roomOf(wholeHold)], []), { seconds: 60 });
    expect(run).toMatchObject({ outcome: 'afloat', volumeError: 0, trappedAir: [], fullAt: [undefined] });
    for (const { draught, water, heel, trim } of run.history) {
      expect([water, heel, trim]).toEqual([0, 0, 0]);
      expect(draught).toBeCloseTo(2, 6);
    }
  });
});
