import type { SectionGiven } from './funding-rules';
import type { RiskSection } from './sections/risk';

const MOST_MONEY = '1000000000';

const money = (title: string) => ({ title, unit: 'USD', from: '0', to: MOST_MONEY }) as const;
const share = (title: string) => ({ title, unit: '1', from: '0', to: '1' }) as const;
const days = (title: string) => ({ title, unit: 'work-day', from: '0', to: '2000' }) as const;

/** Every given of the risk section, with its unit and the limits beyond which it is a mistake. */
export function riskGivens({ register, surveys, correlations, drivers }: RiskSection): SectionGiven[] {
  return [
    ...register.flatMap(event => eventGivens(event)),
    ...surveys.flatMap(({ title, cost, rangeLeft }, i): SectionGiven[] => [
      { place: `/risk/surveys/${i}/cost`, figure: cost, rule: money(`Price of ${title}`) },
      { place: `/risk/surveys/${i}/rangeLeft`, figure: rangeLeft, rule: share(`Range left by ${title}`) },
    ]),
    ...correlations.map(({ first, second, correlation }, i) => ({
      place: `/risk/correlations/${i}`,
      figure: correlation,
      rule: {
        title: `Correlation of ${first} with ${second}`,
        unit: '1',
        from: '-0.999',
        to: '0.999',
      } as const,
    })),
    ...drivers.map(({ driver, factor }) => ({
      place: `/risk/drivers/${driver}`,
      figure: factor,
      rule: { title: `Factor of ${driver}`, unit: '1', above: '0', to: '10' } as const,
    })),
  ];
}

function eventGivens(event: RiskSection['register'][number]): SectionGiven[] {
  const place = `/risk/register/${event.id}`;
  const { title, probability, costs, delays, mitigation } = event;
  return [
    { place: `${place}/probability`, figure: probability, rule: share(`Probability of ${title}`) },
    ...costs.map(({ item, dollars }) => ({
      place: `${place}/costs/${item}`,
      figure: dollars,
      rule: money(`Cost of ${title}`),
    })),
    ...delays.map(({ item, workDays }) => ({
      place: `${place}/delays/${item}`,
      figure: workDays,
      rule: days(`Delay by ${title}`),
    })),
    ...(mitigation === undefined
      ? []
      : [
          {
            place: `${place}/mitigation/cost`,
            figure: mitigation.cost,
            rule: money(`Price of ${mitigation.title}`),
          },
          {
            place: `${place}/mitigation/probability`,
            figure: mitigation.probability,
            rule: share(`Probability after ${mitigation.title}`),
          },
          {
            place: `${place}/mitigation/impactLeft`,
            figure: mitigation.impactLeft,
            rule: share(`Share of the impact left by ${mitigation.title}`),
          },
        ]),
  ];
}
