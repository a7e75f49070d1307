import { describe, expect, test } from 'vitest';
import { estimated, evaluated, demoProject } from '../core/evaluation/demo';

/**
 * CPI-U, US city average, not seasonally adjusted, 1982-84 = 100, annual means of the monthly series of the US Bureau of
 * Labor Statistics; 2025 is the mean of eleven months (October 2025 was not collected).
 */
const TO_2025 = [
  [2000, '1.869588'],
  [2006, '1.597003'],
  [2009, '1.500641'],
  [2016, '1.34139'],
  [2022, '1.100077'],
] as const;

describe('prices of one year at the prices of another, by CPI-U', () => {
  const project = demoProject();
  const at2025 = estimated(evaluated({ ...project, rates: { ...project.rates, fixedPriceYear: 2025 } }));

  test.each(TO_2025)('from %i to 2025', (year, factor) => {
    expect(at2025.money.result.figure(`years/y${year}/factor`).text).toBe(factor);
  });

  test('2009 is below 2008, and is not held up to it', () => {
    const factor = (year: number) => at2025.money.result.figure(`years/y${year}/factor`).number ?? 0;
    expect(factor(2009)).toBeGreaterThan(factor(2008));
  });

  test('the year 2025 says that it is a mean of eleven months', () => {
    const table = at2025.money.sheet.lookUps.find(candidate => candidate.id === 'cpi');
    expect(table?.entries.find(entry => entry.key === '2025')?.title).toBe('2025, mean of 11 months');
  });

  test('with prices of one year nothing is escalated beyond it', () => {
    const rows = at2025.money.timing.scope.rows;
    for (const row of rows)
      expect(at2025.money.result.figure(`timing/${row.key}/escalation-labour`).number).toBe(1);
  });
});
