import { describe, expect, test } from 'vitest';
import { evaluate } from '../../../core/evaluation';
import type { Project } from '../../../core/project';
import { demoProject } from './demo';

const demo = demoProject();
const withCrews = (available: string, more: Partial<Project> = {}): Project => ({
  ...demo,
  ...more,
  rates: {
    ...demo.rates,
    overrides: [
      ...demo.rates.overrides,
      {
        at: 'crews/abatement-crew/available',
        figure: {
          value: available,
          unit: 'each',
          basis: 'judgement',
          source: 'What the yard has',
          year: 2026,
        },
        note: '',
      },
    ],
  },
});

describe('crews that the project can field', () => {
  const of = (project: Project) => {
    const { estimate } = evaluate(project, { today: '2026-11-24', seed: 1, schedules: 20, upright: false });
    if (estimate === undefined) throw new Error('the example can be estimated');
    const planned = estimate.planned.filter(({ item }) => item.crew === 'abatement-crew');
    return {
      planned,
      capacity: estimate.problem.resources.find(({ id }) => id === 'abatement-crew')?.capacity,
      most: Math.max(...(estimate.schedule.profiles['abatement-crew']?.units ?? [])),
      finish: estimate.schedule.finish ?? '',
    };
  };
  const [usual, few] = [of(demo), of(withCrews('1'))];

  test('hold in the schedule: no more of them work at once, and the work takes longer', () => {
    expect(usual.most).toBeGreaterThan(1);
    expect(few.capacity).toBe(1);
    expect(few.most).toBe(1);
    expect(few.finish > usual.finish).toBe(true);
  });

  test('hold for an item alone: it has no more of them, and more days', () => {
    const largest = usual.planned.toSorted((a, b) => b.crews - a.crews)[0];
    const now = few.planned.find(({ item }) => item.id === largest?.item.id);
    expect(largest?.crews).toBeGreaterThan(1);
    expect(now?.crews).toBe(1);
    expect(now?.days).toBeGreaterThan(largest?.days ?? 0);
  });

  test('more of them than the rate book has change nothing of an item that may have no more', () => {
    const many = of(withCrews('40'));
    expect(many.capacity).toBe(40);
    expect(many.planned.map(({ crews }) => crews)).toEqual(usual.planned.map(({ crews }) => crews));
  });
});
