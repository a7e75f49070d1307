import { describe, expect, test } from 'vitest';
import { summarise } from '../../../core/evaluation';
import type { Project } from '../../../core/project';
import { demoProject, estimated, evaluated } from '../evaluation/demo';

const demo = demoProject();
const figure = (value: string, unit: string) => ({
  ...{ value, unit },
  ...{ basis: 'judgement' as const, source: 'Entered by hand' },
});
const withRates = (rates: Partial<Project['rates']>): Project => ({
  ...demo,
  rates: { ...demo.rates, ...rates },
});
const withRate = (at: string, value: string, unit: string) =>
  withRates({ overrides: [...demo.rates.overrides, { at, figure: figure(value, unit) }] });

/** The total, the codes and places of what the rates are told, and the scheduling faults. */
function told(project: Project) {
  const evaluation = evaluated(project);
  const { total } = summarise(estimated(evaluation));
  const found = evaluation.findings.filter(({ weight }) => weight === 'blocks');
  return {
    total,
    blocks: found.filter(one => one.code !== 'sheet/not-given').map(({ code, place }) => [code, place]),
  };
}

describe('a rate that cannot be meant', () => {
  test.each([
    ['trades/foreman/wage', '-4', 'USD/h'],
    ['streams/used-oil/unitPrice', '-91.4', 'USD/t'],
    ['markUps/profit/share', '-0.1', '1'],
    ['crews/tank-crew/tank-cleaner', '-5', 'person'],
  ])('%s of %s is refused where it stands, and the total is left out', (at, value, unit) => {
    expect(told(withRate(at, value, unit))).toEqual({
      total: undefined,
      blocks: [['given/out-of-limits', `/rates/overrides/${at}/value`]],
    });
  });

  test('a wage below zero in the wage table is refused there', () => {
    expect(told(withRates({ wages: [{ trade: 'foreman', figure: figure('-5', 'USD/h') }] }))).toEqual({
      total: undefined,
      blocks: [['given/out-of-limits', '/rates/wages/foreman/figure/value']],
    });
  });

  test('a crew of nobody leaves out its work', () => {
    const none = ['tank-cleaner', 'foreman', 'equipment-operator'].map(trade => ({
      at: `crews/tank-crew/${trade}`,
      figure: figure('0', 'person'),
    }));
    const { total, blocks } = told(withRates({ overrides: none }));
    expect(total).toBeUndefined();
    expect(blocks).toContainEqual(['rates/crew-of-nobody', '/rates/overrides/crews/tank-crew/tank-cleaner']);
  });

  test('a crew of which there is none at once is told where it is mended, and nothing else', () => {
    expect(told(withRate('crews/tank-crew/available', '0', 'each'))).toEqual({
      total: told(demo).total,
      blocks: [['rates/no-crew-at-once', '/rates/overrides/crews/tank-crew/available']],
    });
  });

  test('a mark-up above the cost asks whether per cent was meant', () => {
    const { findings } = evaluated(withRate('markUps/profit/share', '12', '1'));
    expect(findings.filter(({ code }) => code === 'rates/mark-up-above-cost')).toMatchObject([
      {
        weight: 'warns',
        place: '/rates/overrides/markUps/profit/share',
        remedy: 'If 12 per cent was meant, write 0.12.',
      },
    ]);
  });

  test('a share beyond its limits is told them once, without the unit of a bare number', () => {
    const { funding } = demo;
    if (funding === undefined) throw new Error('the example has a grant');
    const retainage = { value: '5', unit: '1', basis: 'judgement' as const, source: 'This test' };
    const { findings } = evaluated({
      ...demo,
      funding: { ...funding, payment: { ...funding.payment, retainage } },
    });
    expect(findings.find(({ place }) => place === '/funding/payment/retainage/value')).toMatchObject({
      message: expect.stringMatching(/is given as 5; it must be 0 or more and at most [\d.]+\.$/) as string,
      remedy: 'A share is a number from 0 to 1: for 5 per cent, write 0.05.',
    });
  });

  test('a quote below zero is refused, and puts nothing in place of its lines', () => {
    const [quote, ...others] = demo.quotes;
    if (quote === undefined) throw new Error('the example has quotes');
    const below = { ...quote, chosen: true, amount: { ...quote.amount, value: '-98000' } };
    const { findings, estimate } = evaluated({ ...demo, quotes: [below, ...others] });
    expect(findings.filter(({ code }) => code === 'given/out-of-limits')).toMatchObject([
      { weight: 'blocks', place: `/quotes/${quote.id}/amount/value` },
    ]);
    const places = [...(estimate?.quoted?.quotes.values() ?? [])].map(({ place }) => place);
    expect(places).not.toContain(`/quotes/${quote.id}`);
  });

  test('none of the rates and quotes of the example is beyond its limits', () => {
    expect(told(demo).blocks).toEqual([]);
  });
});
