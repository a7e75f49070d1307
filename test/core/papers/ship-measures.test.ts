import { describe, expect, it } from 'vitest';
import { evaluate } from '../../../core/evaluation';
import { uprightSheet } from '../../../core/papers/workbook/upright';
import { demoProject } from '../evaluation/demo';
import { said } from '../../../core/papers/report/decision-page';
import { measuresOf } from '../../../core/units';

describe('lengths of a paper', () => {
  const gm = { kind: 'number', value: -1.082, unit: 'm' } as const;

  it('are in the measures in which the ship’s length is given', () => {
    expect(measuresOf('ft')).toBe('us');
    expect(measuresOf('m')).toBe('metric');
  });

  it('are converted for readers of feet, and left as they are for those of metres', () => {
    // 1 ft = 0.3048 m exactly (NIST SP 811, 2008, appendix B.8): 1.082 / 0.3048 = 3.5499.
    expect(said(gm, 'us')).toBe('−3.55 ft');
    expect(said(gm, 'metric')).toBe('−1.082 m');
  });

  it('leave what is no length alone', () => {
    expect(said({ kind: 'number', value: 12.4, unit: 'degrees' }, 'us')).toBe('12.4 degrees');
    expect(said({ kind: 'number', value: 1834, unit: '' }, 'us')).toBe('1,834');
  });

  it('stand beside dates in words', () => {
    expect(said({ kind: 'date', iso: '2029-07-05' }, 'us')).toBe('July 5, 2029');
  });
});

describe('the sheet of the upright screen', () => {
  const evaluation = evaluate(demoProject(), { today: '2026-11-24', seed: 1, schedules: 20 });
  const { vessel } = evaluation.project;
  const metres = { ...vessel.length, value: '130.15', unit: 'm' as const };
  const cellsIn = (length: typeof vessel.length) =>
    uprightSheet({ ...evaluation, project: { ...evaluation.project, vessel: { ...vessel, length } } })
      ?.cells ?? [];
  const wordsIn = (length: typeof vessel.length) =>
    cellsIn(length).flatMap(cell => (cell.content.kind === 'text' ? [cell.content.text] : []));
  const numbersIn = (length: typeof vessel.length) =>
    cellsIn(length).flatMap(cell => (cell.content.kind === 'number' ? [cell.content.value] : []));

  it('counts in feet for a ship of feet, in its reasons and headings too', () => {
    const words = wordsIn(vessel.length);
    expect(words).toContain('ft');
    expect(words).toContain('Level, ft');
    expect(words.filter(one => / m\b|, m$/.test(one))).toEqual([]);
    expect(words.some(one => /KG [\d.]+ ft/.test(one))).toBe(true);
  });

  it('counts in metres for a ship of metres, the same lengths', () => {
    const words = wordsIn(metres);
    expect(words).toContain('Level, m');
    expect(words.filter(one => / ft\b|, ft$/.test(one))).toEqual([]);
    // The first number after the heel is the lowest metacentric height.
    const [heel, inFeet = 0] = numbersIn(vessel.length);
    const [same, inMetres = 0] = numbersIn(metres);
    expect(same).toBe(heel);
    expect(Math.abs(inFeet * 0.3048 - inMetres)).toBeLessThan(1e-6);
    expect(inMetres).not.toBe(0);
  });
});
