import { describe, expect, it } from 'vitest';
import { evaluate, uprightInput, withChoices } from '../../../core/evaluation';
import { screenedInput } from '../../../core/evaluation/upright';
import { listedChoices, type ChoiceGround } from '../../../core/evaluation/upright-choice-list';
import { atDocument, weightListFindings } from '../../../core/evaluation/upright-findings';
import { slackTanks } from '../../../core/evaluation/upright-hull';
import type { Finding } from '../../../core/base';
import { projectSchema, type Project } from '../../../core/project';
import { demoProject, estimated } from './demo';

const project = demoProject();
const evaluation = evaluate(project, { today: '2026-11-24', seed: 1, schedules: 20, upright: true });
const parts = estimated(evaluation);
const made = { basis: 'surveyed', source: 'A test', year: 2026 } as const;
const figure = (value: string, unit: string) => ({ value, unit, ...made });

/** The screen's input of a document that differs in what only the screen looks at. */
function inputOf(changed: Project, more: Partial<Parameters<typeof uprightInput>[1]> = {}) {
  const found = uprightInput(changed, { ...parts.input, ...more }, parts.work, parts.work);
  if (found === undefined) throw new Error('the hull can be screened');
  return found;
}

function withVessel(change: Partial<Project['vessel']>): Project {
  return projectSchema.parse({ ...project, vessel: { ...project.vessel, ...change } });
}

function ground(): ChoiceGround {
  const input = screenedInput(project, parts);
  const { upright } = evaluation;
  if (input === undefined || upright === undefined) throw new Error('the example is screened');
  return { project, parts, input, upright };
}

function withOptions(options: Record<string, string>): ChoiceGround {
  const input = { ...parts.input, options: { ...parts.input.options, ...options } };
  return { ...ground(), parts: { ...parts, input } };
}

const ids = (of: ChoiceGround) => listedChoices(of).listed.map(choice => choice.id);
const reasons = (of: ChoiceGround) => listedChoices(of).leftOut.map(choice => choice.why);

describe('the choices on offer', () => {
  it('take no more topside off where the plan takes off all the options know, and say so', () => {
    const most = withOptions({ 'topside-extent': 'most' });
    expect(ids(most).filter(id => id.startsWith('topside'))).toEqual([]);
    expect(reasons(most)).toContain('The plan takes off as much as the options know.');
  });

  it('offer solid ballast only where the plan has water', () => {
    expect(ids(withOptions({ ballast: 'water' }))).toContain('solid-ballast');
    expect(ids(withOptions({ ballast: 'solid' }))).not.toContain('solid-ballast');
  });

  it('offer flooding in place of charges as they offer charges in place of flooding', () => {
    const { listed } = listedChoices(withOptions({ 'sinking-method': 'explosive' }));
    expect(listed.at(-1)).toMatchObject({
      ...{ id: 'by-flooding', title: 'Controlled flooding in place of scuttling' },
      changes: [{ at: '/options/sinking-method', to: 'flooding' }],
      effect: { method: 'flooding' },
    });
  });

  it('offer the cuts that the screen sized, all of them counted, before the one between two neighbours', () => {
    const own = ground();
    const cuts = [3, 2].map((count, i) => ({
      ...{ from: `a${String(i)}`, to: `b${String(i)}`, area: 1.5, z: 2, height: 1.2, count },
    }));
    const crossFlooding = { cuts, peakBefore: 4, peakAfter: 1, removedShare: 0.75 };
    const sized = { ...own, upright: { ...own.upright, crossFlooding } } as unknown as ChoiceGround;
    const cut = listedChoices(sized).listed.find(choice => choice.id === 'bulkhead-cut');
    expect(cut?.title).toBe('5 cuts in the bulkheads along the ship');
    expect(cut?.effect.cuts?.map(one => one.kind)).toEqual(['cut', 'cut']);
  });

  it('have no cut and no length kept buoyant where nothing flooded lies side by side', () => {
    const own = ground();
    const { crossFlooding: _, ...upright } = own.upright;
    const alone = { ...own, upright, input: { ...own.input, compartments: [] } };
    expect(reasons(alone)).toEqual([
      'No two flooded compartments share a bulkhead.',
      'The flooded compartments have openings of their own, or there is one alone.',
    ]);
  });

  it('close two openings of a length whose openings were not sized', () => {
    const own = ground();
    const late = (of: ChoiceGround) => listedChoices(of).listed.find(one => one.id === 'late-length');
    const unsized = late({ ...own, upright: { ...own.upright, sizing: [] } });
    expect(unsized?.title).toBe(late(own)?.title);
    expect(unsized?.changes.length).toBeGreaterThan(0);
  });
});

describe('what the document says of weights and tanks', () => {
  it('takes KG as inclined when it was surveyed, and as assumed on any other basis', () => {
    const kg = figure('8.2', 'm');
    expect(inputOf(withVessel({ kg })).kg).toMatchObject({ likely: 8.2, basis: 'inclined' });
    const judged = { ...kg, basis: 'judgement' as const };
    expect(inputOf(withVessel({ kg: judged })).kg).toMatchObject({ likely: 8.2, basis: 'assumed' });
  });

  it('takes KG from the depth where the hull type has no share of it', () => {
    const { ship } = parts.input;
    const { 'kg-over-depth': _, ...quantities } = ship.type.quantities;
    const type = { ...ship.type, quantities };
    const { kg: _kg, ...vessel } = project.vessel;
    const found = inputOf({ ...project, vessel: { ...vessel, weights: [] } }, { ship: { ...ship, type } });
    expect([found.kg.basis, found.kg.low < found.kg.likely, found.kg.likely < found.kg.high]).toEqual([
      'assumed',
      true,
      true,
    ]);
  });

  const whole = inputOf(project).displacement.likely;
  const row = (mass: string, vcg: string) => ({
    ...{ id: 'steel', title: 'Steel', mass: figure(mass, 't'), vcg: figure(vcg, 'm') },
    ...{ lcg: figure('60', 't'), tcg: figure('0', 't') },
  });
  const { kg: _kg, ...unmeasured } = project.vessel;
  const listing = (weights: Project['vessel']['weights']): Project => ({
    ...project,
    vessel: { ...unmeasured, weights },
  });

  it('takes KG from a weight list whose places along and across the ship are in no unit of length, and leaves these out', () => {
    const found = inputOf(listing([row(whole.toFixed(1), '7.5')]));
    expect([found.kg.basis, found.tcg]).toEqual(['weight list', undefined]);
    expect(found.kg.likely).toBeCloseTo(7.5, 9);
    expect(weightListFindings(listing([row(whole.toFixed(1), '7.5')]), whole)).toEqual([]);
  });

  it('tells a weight list that is not all of the ship, and one with an item that weighs nothing', () => {
    const short = listing([row((whole / 2).toFixed(1), '7.5')]);
    expect(inputOf(short).kg.basis).toBe('assumed');
    expect(weightListFindings(short, whole).map(one => one.message)).toEqual([
      `The weight list adds up to ${(whole / 2).toFixed(0)} t and the lightship is ${whole.toFixed(0)} t.`,
    ]);
    const nothing = listing([{ ...row('0', '7.5'), mass: figure('5', 'm') }]);
    expect(weightListFindings(nothing, whole).map(one => one.message)).toEqual([
      'The weight list holds an item without a mass above zero or a height above the keel.',
    ]);
  });

  it('counts the free surface of tanks that have capacity, sounding and size, in one part unless told', () => {
    const tank = {
      ...{ id: 't', title: 'Tank', contents: 'ballast' as const, capacity: figure('40', 'm3') },
      ...{ sounding: figure('20', 'm3') },
      ...{ surfaceLength: figure('5', 'm'), surfaceBreadth: figure('4', 'm') },
    };
    const slack = (tanks: object[]) =>
      slackTanks({ ...project, vessel: { ...project.vessel, tanks } } as unknown as Project);
    expect(slack([tank])).toMatchObject([{ parts: 1, length: 5, breadth: 4, emptied: false }]);
    expect(slack([{ ...tank, surfaceParts: 2 }])).toMatchObject([{ parts: 2 }]);
    expect(slack([{ ...tank, sounding: undefined }])).toEqual([]);
    expect(slack([{ ...tank, surfaceBreadth: undefined }])).toEqual([]);
  });

  it('reads an offset table in metres as it stands', () => {
    const points = [
      { height: '0', halfBreadth: '7' },
      { height: '11', halfBreadth: '9' },
    ];
    const stations = [{ id: 'midships', at: '60', points }];
    const { particulars } = inputOf(withVessel({ offsets: { unit: 'm', ...made, stations } }));
    expect(particulars.stations).toEqual([
      {
        x: 60,
        outline: [
          [7, 0],
          [9, 11],
          [-9, 11],
          [-7, 0],
        ],
      },
    ]);
  });

  it('takes an observed list with the moment that was found for it, and without', () => {
    const observedList = figure('2.5', '1');
    expect(inputOf(withVessel({ observedList })).facts).toMatchObject({
      ...{ afloatUpright: false, list: { degrees: 2.5 } },
    });
    const listMoment = figure('310', 't');
    const { facts } = inputOf({ ...project, vessel: { ...project.vessel, observedList, listMoment } });
    expect(facts?.list).toEqual({ degrees: 2.5, moment: 310 });
  });

  it('keeps the usual limit where the planner set the other alone', () => {
    const usual = inputOf(project).limits;
    const set = (upright: object) =>
      inputOf({ ...project, upright: { ...project.upright, ...upright } }).limits;
    const one = set({ staysUp: figure('0.8', '1') });
    const other = set({ leans: figure('0.4', '1') });
    expect([usual, one?.staysUp, other?.leans]).toEqual([undefined, 0.8, 0.4]);
    expect([one?.leans, other?.staysUp].every(limit => limit !== undefined && limit > 0)).toBe(true);
  });
});

describe('a finding of the screen', () => {
  const finding: Finding = {
    ...{ code: 'upright/any', weight: 'warns', place: '', message: 'm', meaning: 'm', remedy: 'r' },
  };
  const input = inputOf(project);
  const placed = (place: string) => atDocument({ ...finding, place }, input).place;

  it('stands at its compartment of the document by the name of that, and elsewhere where it was', () => {
    const [first] = input.compartments;
    expect(placed('/compartments/0/openings')).toBe(`/vessel/compartments/${first?.id ?? ''}/openings`);
    expect(placed('/compartments/0')).toBe(`/vessel/compartments/${first?.id ?? ''}`);
    expect(placed('/compartments')).toBe('/vessel/compartments');
    expect(placed('/nowhere')).toBe('/nowhere');
  });
});

describe('a ship towed with her propellers locked', () => {
  it('has the other way priced: taken off before the tow', { timeout: 120_000 }, () => {
    const options = { today: '2026-11-24', seed: 1 };
    const locked = { ...project, options: { ...project.options, propellers: 'locked' } };
    const { upright } = withChoices(evaluate(locked, { ...options, schedules: 20 }), options);
    expect(upright?.choices).toHaveProperty('propellers.bollardPull');
    expect(upright?.choices).toMatchObject({
      propellers: {
        title: 'Propellers taken off before the tow',
        changes: [{ at: '/options/propellers', to: 'removed' }],
      },
    });
  });
});
