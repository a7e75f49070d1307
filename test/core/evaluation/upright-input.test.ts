import { describe, expect, it } from 'vitest';
import { evaluate, uprightInput } from '../../../core/evaluation';
import { checkProject, projectSchema, type Project } from '../../../core/project';
import { shippedLibrary } from '../../../core/evaluation';
import { demoProject, estimated, evaluated } from './demo';

const project = demoProject();
const made = { basis: 'surveyed', source: 'Test', year: 2026 } as const;
const figure = (value: string, unit: string, low?: string, high?: string) => ({
  value,
  unit,
  ...(low === undefined ? {} : { low }),
  ...(high === undefined ? {} : { high }),
  ...made,
});

/** The screen's input of a project, as the evaluation makes it. */
function inputOf(changed: Project) {
  const { input, work } = estimated(evaluated(changed));
  return uprightInput(changed, input, work, work);
}

function withVessel(change: Partial<Project['vessel']>): Project {
  return projectSchema.parse({ ...project, vessel: { ...project.vessel, ...change } });
}

describe('what the document says of the hull reaches the upright screen', () => {
  it('an offset table, in place of the coefficients', () => {
    const points = [
      { height: '0', halfBreadth: '25' },
      { height: '38', halfBreadth: '30' },
    ];
    const stations = [{ id: 'midships', at: '200', points }];
    const input = inputOf(withVessel({ offsets: { unit: 'ft', ...made, stations } }));
    expect(input?.particulars.stations?.[0]?.x).toBeCloseTo(60.96, 9);
    expect(input?.particulars.stations?.[0]?.outline).toEqual([
      [25 * 0.3048, 0],
      [30 * 0.3048, 38 * 0.3048],
      [-30 * 0.3048, 38 * 0.3048],
      [-25 * 0.3048, 0],
    ]);
  });

  it('a weight list that is all of the ship: KG and its range by the law of propagation of uncertainty', () => {
    const row = (id: string, mass: string, vcg: string) => ({
      id,
      title: id,
      mass: figure(mass, 't', String(Number(mass) * 0.9), String(Number(mass) * 1.1)),
      vcg: figure(vcg, 'm', String(Number(vcg) - 0.2), String(Number(vcg) + 0.2)),
      lcg: figure('60', 'm'),
      tcg: figure('0.1', 'm'),
    });
    const input = inputOf(withVessel({ weights: [row('steel', '4000', '6.5'), row('house', '1200', '13')] }));
    const kg = (4000 * 6.5 + 1200 * 13) / 5200;
    // JCGM 100:2008 (GUM) 5.1.2, first order: each item's mass and height independent.
    const parts = [400 * (6.5 - kg), 120 * (13 - kg), 4000 * 0.2, 1200 * 0.2].map(part => part / 5200);
    const spread = Math.hypot(...parts);
    expect(input?.kg).toMatchObject({ basis: 'weight list' });
    expect(input?.kg.likely).toBeCloseTo(kg, 9);
    expect((input?.kg.high ?? 0) - kg).toBeCloseTo(spread, 9);
    expect(input?.tcg).toBeCloseTo(0.1, 9);
  });

  it('a weight list of the heavy items alone is a finding and gives no KG', () => {
    const one = {
      id: 'mast',
      title: 'Mast',
      mass: figure('40', 't'),
      vcg: figure('25', 'm'),
      lcg: figure('50', 'm'),
      tcg: figure('0', 'm'),
    };
    const seen = evaluate(withVessel({ weights: [one] }), { today: '2026-11-24', seed: 1, schedules: 20 });
    expect(seen.findings.map(({ code }) => code)).toContain('upright/weight-list');
    expect(inputOf(withVessel({ weights: [one] }))?.kg.basis).toBe('assumed');
  });

  it('a slack tank raises the centre of gravity by its free surface, a pressed one does not', () => {
    const tank = (sounding: string) => ({
      id: 'ballast-wide',
      title: 'Wide ballast tank',
      capacity: figure('400', 'm3'),
      contents: 'ballast' as const,
      sounding: figure(sounding, 'm3'),
      surfaceLength: figure('20', 'm'),
      surfaceBreadth: figure('10', 'm'),
      surfaceParts: 2,
    });
    const lowest = (sounding: string) =>
      evaluate(withVessel({ tanks: [tank(sounding)] }), { today: '2026-11-24', seed: 1, schedules: 20 })
        .upright;
    const [slack, pressed] = [lowest('200'), lowest('399')];
    // rho l b^3 / 12 / n^2 over the displacement: Lewis (ed.), Principles of Naval Architecture, 1988, vol. I.
    const moment = (1.025 * 20 * 10 ** 3) / 12 / 4;
    const fall = (pressed?.lowestGmMetres ?? NaN) - (slack?.lowestGmMetres ?? NaN);
    expect(fall).toBeGreaterThan(0.9 * (moment / 6000));
    expect(fall).toBeLessThan(1.1 * (moment / 4700));
  });

  it('an observed list with its moment and a timed roll bound KG, and a default against them is a finding', () => {
    const options = { today: '2026-11-24', seed: 1, schedules: 20 };
    const rolled = evaluate(withVessel({ rollPeriod: figure('6', '1') }), options);
    expect(rolled.findings.map(({ code }) => code)).toContain('upright/kg-contradicted');
    const listed = withVessel({ observedList: figure('2', '1'), listMoment: figure('300', '1') });
    expect(inputOf(listed)?.facts).toEqual({ afloatUpright: false, list: { degrees: 2, moment: 300 } });
    const heard = evaluate(listed, options);
    expect(heard.findings.find(({ code }) => code === 'upright/kg-contradicted')?.place).toBe('/vessel/kg');
  });

  it('the planner’s own limits, time, unevenness, vents, late spaces, closed doors and design wave', () => {
    const [first, second, ...others] = project.vessel.compartments;
    if (first === undefined || second === undefined) throw new Error('the example has compartments');
    const door = {
      to: second.id,
      area: figure('1.6', 'm2'),
      centre: figure('2', 'm'),
      kind: 'door' as const,
      closed: true,
    };
    const changed = projectSchema.parse({
      ...project,
      vessel: {
        ...project.vessel,
        compartments: [
          { ...first, floods: 'late', connections: [door] },
          { ...second, floods: 'no' },
          ...others,
        ],
      },
      site: { ...project.site, waveHeight: figure('8', 'm'), wavePeriod: figure('12', '1') },
      upright: {
        staysUp: figure('5', '1'),
        sinkTime: figure('0.5', 'h'),
        unevenness: figure('0.05', '1'),
        ventShare: figure('0.2', '1'),
      },
    });
    const input = inputOf(changed);
    expect(input).toMatchObject({
      limits: { staysUp: 5, leans: 15 },
      targetSinkTime: 1800,
      openingsMismatch: 0.05,
      ventShare: 0.2,
      site: { wave: { height: 8, period: 12 } },
    });
    expect(input?.compartments[0]?.entry).toBeCloseTo(0.8 * 11.6, 9);
    expect(input?.compartments[0]?.connections[0]?.closed).toBe(true);
    expect(input?.compartments[1]?.floods).toBe(false);
  });

  it('an extent that measures no length is a finding, and there is no hull to screen', () => {
    const [first, ...others] = project.vessel.compartments;
    if (first === undefined) throw new Error('the example has compartments');
    const changed = withVessel({ compartments: [{ ...first, top: figure('11', 'kg') }, ...others] });
    expect(checkProject(changed, shippedLibrary()).map(({ place }) => place)).toContain(
      `/vessel/compartments/${first.id}/top/unit`,
    );
    expect(inputOf(changed)).toBeUndefined();
  });
});
