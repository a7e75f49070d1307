import { expect, test } from 'vitest';
import { bookBasis } from '../../../core/evaluation';
import { demoProject, evaluated } from './demo';

/** The example with a length that no ship has. */
function longShip() {
  const project = demoProject();
  const { length } = project.vessel;
  return evaluated({
    ...project,
    vessel: { ...project.vessel, length: { ...length, value: '-68', unit: 'ft' } },
  });
}

test('a length beyond its limits is told once, and not as missing, nor with all that each line might have had', () => {
  const blocking = longShip().findings.filter(({ weight }) => weight === 'blocks');
  expect(blocking.filter(({ place }) => place.startsWith('/vessel/length'))).toMatchObject([
    { code: 'given/out-of-limits' },
  ]);
  expect(blocking.filter(({ code }) => code.startsWith('sheet/')).length).toBeLessThan(5);
  expect(blocking.length).toBeLessThan(15);
});

test('the books name one of many lines without an amount, and how many there are', () => {
  const { findings } = bookBasis(longShip());
  expect(findings).toMatchObject([{ code: 'books/line-absent' }]);
  expect(findings[0]?.message).toMatch(/^\d+ lines have no amount, .+ first, so the books are not made\.$/);
});

test('a wage below zero is told once', () => {
  const project = demoProject();
  const figure = { value: '-5', unit: 'USD/h', basis: 'quoted', source: 'Invented letter' } as const;
  const overrides = [...project.rates.overrides, { at: 'trades/burner/wage', figure }];
  const { findings } = evaluated({ ...project, rates: { ...project.rates, overrides } });
  const blocking = findings.filter(({ weight }) => weight === 'blocks');
  expect(blocking.filter(({ place }) => place.includes('burner')).length).toBe(1);
});
