import { describe, expect, it } from 'vitest';
import { shippedLibrary } from '../../core/evaluation';
import { assumedKg } from '../../core/stability';

const coaster = shippedLibrary().hullTypes.find(type => type.id === 'coaster');
if (coaster === undefined) throw new Error('the library has a coaster');
const amount = (key: string) => Number(coaster.quantities[key]?.value);

describe('a coaster', () => {
  // Deadweight over displacement of general cargo ships 0.62 to 0.72: published table of estimating formulas (lecture
  // text of ship design, chapter 5, table 5.1), so that lightship is 0.28 to 0.38 of the full displacement.
  it('has the lightship over full displacement of a general cargo ship', () => {
    const lightship = amount('lightship-per-lbd') * amount('depth-per-length');
    const full = 1.025 * amount('draught-full-per-length') * amount('block-coefficient');
    expect(lightship / full).toBeGreaterThan(0.28);
    expect(lightship / full).toBeLessThan(0.38);
  });

  // Archimedes: what she weighs light is the water she displaces light, at a block coefficient below the full one.
  it('floats light at a draught that fits her weight', () => {
    const block =
      (amount('lightship-per-lbd') * amount('depth-per-length')) /
      (1.025 * amount('draught-light-per-length'));
    expect(block).toBeGreaterThan(0.5);
    expect(block).toBeLessThan(amount('block-coefficient'));
  });

  it('has an assumed height of the centre of gravity, as every cargo ship', () => {
    expect(assumedKg('coaster', 5)).toEqual(assumedKg('freighter', 5));
  });
});
