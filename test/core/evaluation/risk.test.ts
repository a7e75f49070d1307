import { describe, expect, it } from 'vitest';
import { civilOf } from '../../../core/calendar';
import {
  prepareRisk,
  rangedGivens,
  shippedRisk,
  type PreparedEstimate,
  type RiskChoices,
} from '../../../core/evaluation';
import { momentsOf, simulate, TRIALS_PER_CHUNK, trialRunner } from '../../../core/risk';
import { demoProject, estimated, evaluated } from './demo';

const evaluation = evaluated(demoProject());
const parts = estimated(evaluation);

function made(choices: RiskChoices = {}): PreparedEstimate {
  const { prepared, findings } = prepareRisk(evaluation, choices);
  if (prepared === undefined) throw new Error(JSON.stringify(findings));
  return prepared;
}

describe('with all ranges collapsed', () => {
  it('every trial is the estimate to the cent, in total and line by line, and the schedule to the day', () => {
    const { run } = made({ ranges: false, events: false });
    const result = simulate(run, { trials: 300, seed: 3, ranksDrivers: false });
    const total = parts.money.result.money(parts.money.sums.total);
    expect([...new Set(result?.samples.total)]).toEqual([(total?.cents ?? 0) / 100]);
    expect([...new Set(result?.samples.finish)]).toEqual([parts.schedule.calendarDays]);
    const excess = [...(result?.samples.lineExcess ?? [])].map(sum => Math.abs(sum) < 0.005);
    expect(excess).toEqual(run.lines.map(() => true));
    expect(result?.cost.planShare).toBe(1);
  });

  it('every activity lies where the plan has it', () => {
    const { run, first } = made({ ranges: false, events: false });
    const { scheduler } = run;
    if (!('chunk' in scheduler)) throw new Error('the example is scheduled a chunk at a time');
    const column = () => run.activities.map(() => new Float64Array(TRIALS_PER_CHUNK));
    const durations = run.work({ n: 1, inputs: run.columns });
    const dates = { n: 1, durations, starts: column(), finishes: column(), finish: new Float64Array(1) };
    scheduler.chunk({ ...dates, gates: new Map(), stands: () => false });
    const [starts, finishes] = [dates.starts, dates.finishes].map(of => of.map(c => c[0] ?? Number.NaN));
    const worked = parts.schedule.activities.filter(activity => activity.workDays > 0);
    const planned = new Map(worked.map(activity => [activity.id, activity]));
    const off = run.activities.filter((id, i) => {
      const plan = planned.get(id);
      return (
        plan !== undefined &&
        (iso(first + (starts?.[i] ?? 0)) !== plan.start ||
          iso(first + (finishes?.[i] ?? 0) - 1) !== plan.finish)
      );
    });
    expect([off, dates.finish[0]]).toEqual([[], parts.schedule.calendarDays]);
  });
});

describe('a simulation of the example', () => {
  const prepared = made();
  const result = simulate(prepared.run, { trials: 2000, seed: 7 });

  it('has an answer in every trial, a spread, and at least five drivers in falling order', () => {
    expect(result?.withoutAnswer).toBe(0);
    const of = (share: number) => result?.cost.percentiles.find(p => p.share === share)?.value ?? Number.NaN;
    expect(of(0.1) < of(0.5) && of(0.5) < of(0.8) && of(0.8) < of(0.9)).toBe(true);
    const shares = result?.drivers.map(driver => driver.contribution) ?? [];
    expect(shares.length).toBeGreaterThanOrEqual(5);
    expect(shares).toEqual(shares.toSorted((a, b) => b - a));
  });

  it('gives the same bits from the same seed, whichever thread runs which chunk', () => {
    const plan = { trials: 2 * TRIALS_PER_CHUNK, seed: 7 };
    const [one, other] = [trialRunner(prepared.run, plan), trialRunner(made().run, plan)];
    const first = [0, 1].map(chunk => one.run({ chunk, adjustment: {} }).total);
    const second = [1, 0].map(chunk => other.run({ chunk, adjustment: {} }).total);
    expect([second[1], second[0]]).toEqual(first);
  });

  it('counts no doubt twice without a note', () => {
    expect(result?.findings.filter(finding => finding.code === 'risk/counted-twice')).toEqual([]);
  });

  it('costs more in the mean when the lien stops the yard for certain', () => {
    const { run } = prepared;
    const sure = run.events.map(event => (event.id === 'lien' ? { ...event, probability: 1 } : event));
    const plan = { trials: 512, seed: 7, ranksDrivers: false };
    const [before, after] = [simulate(run, plan), simulate({ ...run, events: sure }, plan)];
    expect(after?.cost.mean).toBeGreaterThan(before?.cost.mean ?? Infinity);
    expect(after?.finish.mean).toBeGreaterThan(before?.finish.mean ?? Infinity);
  });

  it('draws one price once, whatever it is used for', () => {
    const ids = rangedGivens(parts).map(given => given.id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids.filter(id => id.startsWith('equipment/forklift/rate'))).toHaveLength(1);
  });

  it('starts a tow only at the head of as many open days as the plan keeps for it', () => {
    const project = demoProject();
    const inSeason = evaluated({
      ...project,
      options: { ...project.options, season: 'avoid-hurricane-season' },
    });
    const run = prepareRisk(inSeason).prepared?.run;
    const tow = run?.weather?.operations.find(operation => operation.activity === 'ocean-tow');
    const planned = estimated(inSeason).problem.activities.find(activity => activity.id === 'ocean-tow');
    expect(tow?.windowDays).toBe((planned?.workDays ?? 0) + (planned?.consecutive?.weatherDays ?? 0));
    const months = run?.weather?.month ?? new Uint8Array(0);
    const openMonths = new Set(
      [...months].filter((_, day) => tow?.open?.[day] === 1).map(month => month + 1),
    );
    // The Atlantic hurricane season runs from 1 June to 30 November (US National Hurricane Center).
    expect([...openMonths].sort((a, b) => a - b)).toEqual([1, 2, 3, 4, 5, 12]);
  });

  it('leaves undrawn only ranges that bring less than a hundredth of the variance together', () => {
    const { run } = prepared;
    const ranges = new Map(rangedGivens(parts).map(given => [given.id, given]));
    const isDrawn = (id: string) =>
      run.inputs.some(input => input.id === id && input.distribution.kind !== 'certain');
    const variance = (drawn: boolean) => {
      const inputs = run.inputs.map(input => {
        const { low = 0, likely = 0, high = 0 } = ranges.get(input.id) ?? {};
        return isDrawn(input.id) === drawn
          ? { ...input, distribution: { kind: 'pert', low, likely, high } as const }
          : { ...input, distribution: { kind: 'certain', value: likely } as const };
      });
      const alone = { ...run, inputs, drivers: [], events: [], correlations: [] };
      const result = simulate(alone, { trials: 1024, seed: 5, ranksDrivers: false });
      return momentsOf(result?.samples.total ?? new Float64Array(0)).variance;
    };
    expect(prepared.drawn).toBeLessThan(prepared.ranged);
    expect(variance(false) / variance(true)).toBeLessThan(0.01);
  });
});

describe('the risk file that is shipped', () => {
  const file = shippedRisk();

  it('has events with a probability, an impact that rises, an owner and what can be done', () => {
    for (const { id, probability, cost, delay, owner, mitigation } of file.events) {
      const impacts = [cost?.share, delay?.workDays].filter(impact => impact !== undefined);
      const rises = impacts.map(f => Number(f.low) < Number(f.value) && Number(f.value) < Number(f.high));
      const likely = Number(probability.value);
      expect([
        id,
        likely > 0 && likely < 1,
        rises.length > 0 && rises.every(Boolean),
        owner !== '',
        Number(mitigation.probability.value) <= likely && Number(mitigation.impactLeft.value) < 1,
      ]).toEqual([id, true, true, true, true]);
    }
  });

  it('has drivers that each move something of the example', () => {
    expect(made().run.drivers.map(driver => driver.id)).toEqual(file.drivers.map(driver => driver.id));
  });

  it('has a share of workable days for every month', () => {
    for (const { workable } of file.weather.series)
      expect(workable.every(share => Number(share) > 0 && Number(share) < 1)).toBe(true);
  });
});

function iso(day: number): string {
  const { year, month, day: date } = civilOf(day);
  return `${year}-${String(month).padStart(2, '0')}-${String(date).padStart(2, '0')}`;
}
