import { describe, expect, it } from 'vitest';
import { evaluate } from '../../../core/evaluation';
import { idOf } from '../../../core/sheet';
import { WhyDesk } from '../../../core/views';
import { demoProject } from '../evaluation/demo';

const EVALUATION = evaluate(demoProject(), { today: '2026-11-24', seed: 1, schedules: 20 });

// One foot is 0.3048 m exactly, a long ton 1.0160469 t (NIST Special Publication 811, appendix B.8).
describe('a derivation of the sheets, which count in metric units', () => {
  it('tells a length in feet as well to those who read feet', () => {
    const value = new WhyDesk(EVALUATION, 'us').answer('ship/length')?.value;
    expect(value?.text).toBe('130.15');
    expect(value?.unit).toBe('m (427 ft)');
  });

  it('tells it once to those who read metres', () => {
    expect(new WhyDesk(EVALUATION, 'metric').answer('ship/length')?.value.unit).toBe('m');
  });

  it('tells a mass in long tons as well, and money and rates once', () => {
    const rows = new WhyDesk(EVALUATION, 'us').answer('lines/tank-washing/labour');
    expect(rows?.value.unit).toBe('$');
    const units = rows?.rows.map(row => row.value.unit ?? '') ?? [];
    expect(units.length).toBeGreaterThan(3);
    expect(units.filter(unit => unit.includes('/') && unit.includes('('))).toEqual([]);
    const lightship = new WhyDesk(EVALUATION, 'us').answer('ship/lightship')?.value;
    expect(lightship?.unit).toMatch(/^tonnes \([\d,.]+ long tons\)$/);
  });

  it('tells a liquid in gallons, as the tables do', () => {
    // A gallon is 0.003785411784 m³ (NIST Special Publication 811, appendix B.8).
    const step = EVALUATION.estimate?.work.drivers.columns.value;
    const id = step === undefined ? '' : idOf(step, 'fuel-left');
    const fuel = new WhyDesk(EVALUATION, 'us').answer(id)?.value.unit;
    expect(fuel).toMatch(/^m³ \([\d,.]+ gal\)$/);
  });
});
