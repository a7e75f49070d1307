import { describe, expect, test } from 'vitest';
import { at } from '../../../core/base';
import type { Project } from '../../../core/project';
import { demoProject, estimated, evaluated } from './demo';

const demo = demoProject();

/** The example with another number of tank cleaners in its tank cleaning crew. */
const withCleaners = (people: string): Project => ({
  ...demo,
  rates: {
    ...demo.rates,
    overrides: [
      ...demo.rates.overrides,
      {
        at: `crews/${CREW}/tank-cleaner`,
        figure: { value: people, unit: 'person', basis: 'judgement', source: 'Entered by hand' },
      },
    ],
  },
});

const CREW = 'tank-crew';

function crewOf(project: Project) {
  const { work, money, planned } = estimated(evaluated(project));
  const items = planned.filter(({ item }) => item.crew === CREW);
  return {
    people: work.result.number(work.crews.crews.columns.people, CREW),
    rate: money.result.number(money.crewRates.columns.rate, CREW),
    size: at(items, 0).crewSize,
    days: items.reduce((sum, { days }) => sum + days, 0),
    total: money.result.money(money.sums.total)?.cents,
  };
}

describe('the people of a crew that the project sets', () => {
  const [usual, more] = [crewOf(demo), crewOf(withCleaners('9'))];

  test('count in the size of the crew, in its rate and in the days of its work', () => {
    expect([usual.people, more.people]).toEqual([6, 10]);
    expect([usual.size, more.size]).toEqual([6, 10]);
    expect(more.rate).not.toBe(usual.rate);
    expect(more.days).toBeLessThan(usual.days);
    expect(more.total).not.toBe(usual.total);
  });

  test('the number of the rate book typed again changes nothing', () => {
    expect(crewOf(withCleaners('5'))).toEqual(usual);
  });
});
