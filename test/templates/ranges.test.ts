import { describe, expect, it } from 'vitest';
import { evaluate } from '../../core/evaluation';
import { startingProject, type Project } from '../../core/project';
import { shipped } from './library';
import { librarySpans, rangeOf } from './ranges';

const library = shipped();
/** Drivers of the site and the plan, not of the ship: their ranges are judged. */
const JUDGED = new Set(['one-project', 'tow-route', 'depth-at-site', 'years-watched']);
/** Openings are sized by the flooding, so the least is one small opening: only the greatest follows from the hull types. */
const SIZED = new Map([
  ['shell-openings', 1],
  ['vent-openings', 1],
  ['inner-openings', 1],
  ['shell-cut', 2],
  ['lead-strip', 0.5],
]);

describe('ranges of validity', () => {
  it('are half the least and twice the greatest that the hull types give at their usual lengths', () => {
    const spans = librarySpans(library);
    const wrong = library.items.flatMap(item => {
      const key = item.disposes === undefined ? item.driver : `stream ${item.disposes}`;
      const span = spans.get(key);
      if (JUDGED.has(key)) return [];
      if (span === undefined || item.valid === undefined)
        return [`${item.id}: no ship of the library has ${key}`];
      const { to, from: least } = rangeOf(span);
      const from = SIZED.get(key) ?? least;
      const stated = [Number(item.valid.from.value), Number(item.valid.to.value)];
      return stated[0] === from && stated[1] === to
        ? []
        : [`${item.id}: ${stated.join(' to ')} is stated, ${from} to ${to} follows from the rule`];
    });
    expect(wrong).toEqual([]);
  });

  it('say that they are judged, and by which rule', () => {
    const sources = new Set(
      library.items.map(item => `${item.valid?.from.basis ?? ''}: ${item.valid?.to.source ?? ''}`),
    );
    expect(sources.size).toBe(6);
    expect([...sources].filter(source => !source.startsWith('judgement: '))).toEqual([]);
  });
});

describe('a quantity outside its range', () => {
  const ship = (length: string): Project =>
    startingProject(library, {
      reader: 'grant',
      hullType: 'naval-auxiliary',
      title: 'A ship',
      start: '2027-01-04',
      length: { value: length, unit: 'm', basis: 'judgement', source: 'Length of the test', year: 2026 },
    });
  const outside = (project: Project) =>
    evaluate(project, { today: '2026-11-24', seed: 1, schedules: 1, upright: false }).findings.filter(
      finding => finding.code === 'estimate/outside-range',
    );

  it('is a finding with the driver, its value and the range; a usual ship has none', () => {
    expect(outside(ship('130'))).toEqual([]);
    const found = outside(ship('7'));
    expect(found.map(finding => finding.message).join('\n')).toMatch(/length-overall is 7; .* 7.5 to 680 m/);
    expect(found.length).toBeGreaterThan(3);
  });

  it('is told of a measured quantity too', () => {
    const base = ship('130');
    const project: Project = {
      ...base,
      survey: {
        ...base.survey,
        measured: [
          {
            driver: 'halon',
            figure: { value: '1501', unit: 'kg', basis: 'surveyed', source: 'Count of the test', year: 2026 },
          },
        ],
      },
    };
    const at = (value: string) =>
      outside({
        ...project,
        survey: {
          ...project.survey,
          measured: project.survey.measured.map(row => ({ ...row, figure: { ...row.figure, value } })),
        },
      }).map(finding => finding.place);
    expect(at('1501')).toContain('/items/halon-removal');
    expect(at('1500')).not.toContain('/items/halon-removal');
  });
});
