import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { uprightScreen, type UprightInput } from '../../../core/flooding';

const number = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

/** Any ship that floats, with compartments anywhere, also outside her. */
const ships: fc.Arbitrary<UprightInput> = fc
  .record({
    length: number(20, 250),
    breadth: number(4, 35),
    depth: number(2, 25),
    draught: number(0.2, 0.9),
    block: number(0.36, 1),
    kg: number(0.2, 1.2),
    spaces: fc.array(
      fc.record({
        x: number(0, 0.9),
        y: number(-0.5, 0.4),
        z: number(0, 0.8),
        size: number(0.05, 1),
        permeability: number(0.3, 1),
        opening: fc.option(number(0.05, 3), { nil: undefined }),
        vent: fc.option(number(0.01, 1), { nil: undefined }),
        door: fc.option(fc.boolean(), { nil: undefined }),
      }),
      { maxLength: 6 },
    ),
  })
  .map(({ length, breadth, depth, draught, block, kg, spaces }) => {
    const mass = 1.025 * length * breadth * depth * draught * block;
    return {
      particulars: { length, breadth, depth, lightDraught: draught * depth },
      displacement: { low: 0.97 * mass, likely: mass, high: mass },
      kg: { low: 0.9 * kg * depth, likely: kg * depth, high: 1.1 * kg * depth, basis: 'assumed' as const },
      compartments: spaces.map((s, i) => ({
        id: `space ${i}`,
        title: `Space ${i}`,
        x0: s.x * length,
        x1: (s.x + s.size) * length,
        y0: s.y * breadth,
        y1: (s.y + s.size) * breadth,
        z0: s.z * depth,
        z1: (s.z + s.size) * depth,
        permeability: s.permeability,
        openings:
          s.opening === undefined
            ? []
            : [
                {
                  id: 'o',
                  side: 'port' as const,
                  area: s.opening,
                  z: s.z * depth + 0.5,
                  height: 1,
                  count: 2,
                },
              ],
        vents: s.vent === undefined ? [] : [{ area: s.vent, z: 1.2 * depth }],
        connections:
          s.door === undefined || i === 0
            ? []
            : [{ to: `space ${i - 1}`, area: 1, z: s.z * depth + 1, kind: 'door' as const, closed: s.door }],
        floods: s.opening !== undefined || s.size > 0.5,
      })),
      removedWeights: [],
      method: 'explosive scuttling' as const,
      targetSinkTime: 120,
    };
  });

function isSound(input: UprightInput): void {
  const result = uprightScreen(input);
  expect(result.verdict).not.toBe('stays up');
  expect(JSON.parse(JSON.stringify(result))).toEqual(result);
  expect(result.sinkMinutes === undefined || result.sinks).toBe(true);
}

describe('the screen on any ship', () => {
  // A ship takes up to a second, so a failing one is told as it is and not made smaller.
  it('gives a verdict, never "stays up" on an assumed KG, with finite figures only', () => {
    fc.assert(fc.property(ships, isSound), { numRuns: 25, endOnFailure: true });
  });

  it('gives no time of sinking where the range of what is known leaves her afloat', () => {
    fc.assert(fc.property(ships, isSound), { seed: -1112474191, path: '5', numRuns: 1, endOnFailure: true });
  });
});
