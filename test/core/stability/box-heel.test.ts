import { describe, expect, it } from 'vitest';
import {
  floodEnd,
  floodPath,
  gmLengthwise,
  gmUpright,
  hullFromParticulars,
  hullSolid,
  levelOf,
  restAt,
  rollOverPath,
  sinkScreenGm,
  spaceSolid,
  type FloodPlan,
} from '../../../core/stability';

const hull = hullFromParticulars({
  length: 100,
  breadth: 20,
  depth: 10,
  draught: 2,
  blockCoefficient: 1,
  waterplaneCoefficient: 1,
});

function box(share: number): FloodPlan {
  const space = { id: 'hold', x0: 0, x1: 100, y0: -10, y1: 10, z0: 0, z1: 10, permeability: share };
  const solid = spaceSolid(hull, space, 5);
  return {
    hull: hullSolid(hull, 20),
    depth: 10,
    breadth: 20,
    lightVolume: 4000,
    mismatch: 0,
    spaces: [{ solid, floor: 0, y: 0, sill: 0 }],
  };
}

describe('the box barge 100 x 20 x 10 m of 4,100 t flooded over its whole length', () => {
  it.each([
    [4, [4.99, 9.18, 15.27, 0]],
    [5, [5.73, 10.52, 17.62, 22.01]],
    [6, [6.53, 11.94, 19.84, 24.94]],
  ])('heels as computed by clipping and by strips elsewhere, KG %s m', (kg, heels) => {
    const plan = box(1);
    [0.5, 1, 2, 3].forEach((level, i) => {
      const rest = restAt(levelOf(plan, level), plan, { kg, tcg: 0 });
      expect(Math.abs((rest.heel ?? 99) - (heels[i] ?? 0))).toBeLessThanOrEqual(0.05);
    });
  });

  it('separates KG 4.5 m, which comes back upright, from KG 5.5 m, which finds no rest', () => {
    const path = floodPath(box(1), 160);
    const back = rollOverPath(path, { kg: 4.5, tcg: 0 });
    const peak = back.reduce((a, b) => ((b.heel ?? 99) > (a.heel ?? 99) ? b : a));
    expect(peak.heel).toBeCloseTo(20.5, 0);
    expect(Math.abs(peak.level - 3.25)).toBeLessThan(0.3);
    expect(back.at(-1)?.heel).toBe(0);
    const over = rollOverPath(path, { kg: 5.5, tcg: 0 }).find(point => point.heel === undefined);
    expect(over?.level).toBeCloseTo(3.85, 1);
  });

  it.each([
    [1, 1],
    [0.6, 1],
    [1, 2],
  ])('has the small-angle GM of the closed form, flooded share %s in %s strips', (share, strips) => {
    const breadth = 20 / strips;
    const spaces = Array.from({ length: strips }, (_, i) => {
      const y0 = -10 + i * breadth;
      const space = {
        id: `strip ${i}`,
        x0: 0,
        x1: 100,
        y0,
        y1: y0 + breadth,
        z0: 0,
        z1: 10,
        permeability: share,
      };
      return { solid: spaceSolid(hull, space, 5), floor: 0, y: y0 + breadth / 2, sill: 0 };
    });
    const plan = { ...box(share), spaces };
    const inertia = (100 * 20 ** 3) / 12;
    const closed = { displacement: 4100, kg: 6, area: 2000, inertia, floodedShare: share, strips };
    for (const level of [0.01, 1, 2, 4])
      expect(gmUpright(levelOf(plan, level).ship, 6)).toBeCloseTo(sinkScreenGm(closed, level), 6);
  });

  it('is unstable along her length too while the water runs free from end to end, not with bulkheads across', () => {
    const { ship } = levelOf(box(1), 1);
    expect(gmLengthwise(ship, 6)).toBeCloseTo(1 + 1 - 6, 6);
    const solids = Array.from({ length: 5 }, (_, i) =>
      spaceSolid(
        hull,
        { id: `hold ${i}`, x0: 20 * i, x1: 20 * i + 20, y0: -10, y1: 10, z0: 0, z1: 10, permeability: 1 },
        5,
      ),
    );
    const divided = { ...ship, spaces: solids, volumes: solids.map(() => 400) };
    expect(gmLengthwise(divided, 6)).toBeGreaterThan(100);
  });

  it('stays afloat at 5.000 m when only 0.6 of it floods', () => {
    const end = floodEnd(box(0.6));
    expect(end.sinks).toBe(false);
    expect(end.level).toBeCloseTo(5, 3);
  });
});
