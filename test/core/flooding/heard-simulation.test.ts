import { describe, expect, it } from 'vitest';
import type { SimulationResult, Snapshot, UprightInput } from '../../../core/flooding';
import { screenCases } from '../../../core/flooding/upright/cases';
import { hearSimulation, listBeforeUnder } from '../../../core/flooding/upright/hear-simulation';
import { resolveShip } from '../../../core/flooding/upright/resolved';
import { siteOf } from '../../../core/flooding/upright/site-result';
import type { Judged } from '../../../core/flooding/upright/verdict';
import { bargeInput } from './invented-ship';

const limits = { staysUp: 7, leans: 15 };
const ranges = { displacements: [4100], kgs: [4], mismatches: [0] };
const [some] = screenCases(resolveShip(bargeInput(4)), ranges, limits, 4);
if (some === undefined) throw new Error('one value each gives one case');
const likely = some;

const moment = (heel: number, draught: number, event?: string): Snapshot => ({
  ...{ t: 0, water: 0, volumes: [], levels: [], trim: 0, heel, draught },
  ...(event === undefined ? {} : { event }),
});
const run = (history: Snapshot[], outcome: SimulationResult['outcome'] = 'sunk'): SimulationResult => ({
  ...{ outcome, history, seconds: 60, fullAt: [], volumeError: 0, steps: 1, trappedAir: [] },
});

/** The verdict of the section check with what a simulation of the ship of 10 m depth shows. */
function heard(verdict: Judged['verdict'], result: SimulationResult, change: Partial<UprightInput> = {}) {
  const standing = verdict === 'does not sink' ? 'does not sink' : 'stays up';
  const judged = { verdict, reasons: ['By the section.'] };
  return hearSimulation(judged, { ...likely, standing }, result, bargeInput(4, change));
}

describe('what the simulation adds to the verdict', () => {
  it('counts the greatest list until nine tenths of the depth are under, to either side', () => {
    const history = [moment(0, 2), moment(-6, 5), moment(5, 8), moment(20, 9), moment(30, 9.5)];
    expect(listBeforeUnder(run(history), 10)).toBe(6);
    expect(listBeforeUnder(run([moment(20, 9)]), 10)).toBe(0);
    expect(listBeforeUnder(run([moment(20, 8.9)]), 10)).toBe(20);
  });

  it('makes it worse where she lists past a limit, and never better', () => {
    const words = (list: string) =>
      `The flooding simulation of the likely values lists up to ${list} degrees while there is freeboard left.`;
    expect(heard('stays up', run([moment(7, 5)]))).toEqual({
      verdict: 'stays up',
      reasons: ['By the section.'],
    });
    expect(heard('stays up', run([moment(7.5, 5)]))).toEqual({
      verdict: 'leans',
      reasons: [words('7.5'), 'By the section.'],
    });
    expect(heard('leans', run([moment(15, 5)])).reasons).toEqual(['By the section.']);
    expect(heard('leans', run([moment(-15.5, 5)]))).toEqual({
      verdict: 'may roll over',
      reasons: [words('15.5'), 'By the section.'],
    });
    expect(heard('may roll over', run([moment(1, 5)]))).toEqual({
      verdict: 'may roll over',
      reasons: ['By the section.'],
    });
    // By limits of the user's own.
    const own = { limits: { staysUp: 1, leans: 2 } };
    expect(heard('stays up', run([moment(1.5, 5)]), own).verdict).toBe('leans');
    expect(heard('stays up', run([moment(2.5, 5)]), own).verdict).toBe('may roll over');
  });

  it('tells what is shown with the deck nearly under as not judged, and past 60 degrees that she rolls', () => {
    const later = heard('stays up', run([moment(9, 5), moment(-33.3, 9.5)]));
    expect(later.reasons[0]).toBe(
      'The flooding simulation of the likely values lists up to 9.0 degrees while there is freeboard left; the 33.3 degrees it shows with the deck nearly under are not judged.',
    );
    expect(heard('stays up', run([moment(61, 5)])).reasons[0]).toBe(
      'The flooding simulation of the likely values rolls over.',
    );
    expect(heard('stays up', run([moment(60, 5)])).reasons[0]).toContain('lists up to 60.0 degrees');
  });

  it('only explains a verdict that cannot tell, behind the other reasons', () => {
    const told = heard('cannot tell', run([moment(20, 5)]));
    expect(told.verdict).toBe('cannot tell');
    expect(told.reasons).toEqual([
      'By the section.',
      'The flooding simulation of the likely values lists up to 20.0 degrees while there is freeboard left.',
    ]);
  });

  it('is "does not sink" where it ends afloat and the section check did not see that', () => {
    expect(heard('stays up', run([moment(20, 5)], 'afloat'))).toEqual({
      verdict: 'does not sink',
      reasons: [
        'The flooding simulation ends afloat: air or openings above the water hold her up.',
        'By the section.',
      ],
    });
    // Where the section check says so itself nothing is added, whatever she lists.
    for (const outcome of ['afloat', 'still flooding'] as const)
      expect(heard('does not sink', run([moment(20, 5)], outcome))).toEqual({
        verdict: 'does not sink',
        reasons: ['By the section.'],
      });
  });
});

describe('what is said of the site', () => {
  const site = (change: UprightInput['site'], history: Snapshot[] = []) =>
    siteOf(bargeInput(4, { site: { ...change } }), run(history));
  const over = (depth: string, half: string) =>
    `The water (${depth} m) is deeper than half the diagonal of the section (${half} m): she could turn over on the way down. No credit is given for coming upright.`;

  it('is nothing where it is not known', () => {
    const nothing = { notes: ['The depth of the site is not given: nothing is said about it.'] };
    expect(siteOf(bargeInput(4), run([]))).toEqual(nothing);
    expect(site({ highestPoint: 15, permitClearance: 10 })).toEqual(nothing);
  });

  it('goes by the section of 20 m breadth and its highest point: half of hypot(20, 15) is 12.5 m', () => {
    expect(site({ waterDepth: 110, highestPoint: 15 })).toEqual({
      ...{ canTurnOver: true, halfDiagonal: 12.5, firstEnd: 'neither', clearance: 95 },
      notes: [over('110.0', '12.5'), "Clear water over the wreck 95.0 m; the permit's figure is not given."],
    });
    const shallow = site({ waterDepth: 12.5, highestPoint: 15, permitClearance: 2 });
    expect(shallow.canTurnOver).toBe(false);
    expect(shallow.notes[0]).toBe(
      'The water (12.5 m) is shallower than half the diagonal of the section (12.5 m): she cannot turn right over, but can still come to rest on her side. Shallow water does not replace preparation.',
    );
    // Without a highest point the depth of the hull is taken: half of hypot(20, 10), and no clearance is told.
    const bare = site({ waterDepth: 110 });
    expect(bare.halfDiagonal).toBeCloseTo(Math.sqrt(500) / 2, 12);
    expect(bare.notes).toEqual([over('110.0', '11.2')]);
    expect(bare).not.toHaveProperty('clearance');
  });

  it('tells a ship longer than the water is deep at what angle she stands: asin(50 / 100) is 30 degrees', () => {
    const said = (...history: Snapshot[]) => site({ waterDepth: 50 }, history);
    const stands =
      'She is longer than the water is deep: with one end on the bottom and the other at the surface she stands at 30.0 degrees';
    expect(said().notes[1]).toBe(`${stands}.`);
    expect(said().endAngleDegrees).toBeCloseTo(30, 9);
    for (const end of ['bow', 'stern'] as const) {
      const { notes, firstEnd } = said(
        moment(0, 2, 'deck edge under'),
        moment(0, 2, `${end} on the bottom`),
        moment(0, 2, 'on the bottom'),
      );
      expect(firstEnd).toBe(end);
      expect(notes[1]).toBe(`${stands}; the ${end} grounds first.`);
    }
    expect(said(moment(0, 2, 'on the bottom'), moment(0, 2, 'bow on the bottom')).firstEnd).toBe('neither');
  });

  it('holds the clearance to that of the permit, and the bed to 1 in 50', () => {
    const notes = (permitClearance: number, bottomSlope: number) =>
      site({ waterDepth: 110, highestPoint: 15, permitClearance, bottomSlope }).notes.slice(1);
    expect(notes(95, 0.02)).toEqual(["Clear water over the wreck 95.0 m meets the permit's 95.0 m."]);
    expect(notes(96, 0.04)).toEqual([
      "Clear water over the wreck 95.0 m is less than the permit's 96.0 m.",
      'The bed slopes 1 in 25, steeper than 1 in 50: she may settle with a list.',
    ]);
  });

  it('tells both factors of the waves where a wave is given', () => {
    const wave = { height: 6, period: 10 };
    const told = site({ waterDepth: 110, wave });
    expect(told.notes.at(-1)).toBe(
      'Wave loads need a coastal engineer; both factors against sliding stand in the annex.',
    );
    const { dragOnly = 0, inertia = 0 } = told.waveFactors ?? {};
    expect(inertia).toBeGreaterThan(0);
    expect(inertia).toBeLessThan(dragOnly);
    // Half the weight holds her half as well: 2,050 t come off.
    const lighter = siteOf(
      bargeInput(4, { site: { waterDepth: 110, wave }, removedWeights: [{ mass: 2050, vcg: 4 }] }),
      run([]),
    );
    expect(lighter.waveFactors?.dragOnly).toBeLessThan(dragOnly);
    expect(site({ waterDepth: 110 })).not.toHaveProperty('waveFactors');
  });
});
