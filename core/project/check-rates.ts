import type { Figure, Finding } from '../base';
import { isCrewLimit } from '../rate-book';
import { compareQuantities, quantity } from '../units';
import type { Library } from '../work';
import type { Project } from './schema';

/** What limits alone do not see in the rates of a project: a crew of nobody, a per cent taken for a share. */
export function checkRates({ rates }: Project, library: Library): Finding[] {
  return [
    ...emptyCrews(rates, library),
    ...crewLimits(rates, library),
    ...rates.overrides.flatMap(({ at, figure }) => aboveTheCost(at, figure, library)),
  ];
}

/** Crews whose people the project sets to nothing, all of them. */
function emptyCrews({ overrides }: Project['rates'], { rateBook }: Library): Finding[] {
  const own = new Map(overrides.map(({ at, figure }) => [at, figure]));
  return rateBook.crews.flatMap(({ id, title, members }): Finding[] => {
    const first = members[0]?.trade;
    const people = members.map(({ trade, people: usual }) => own.get(`crews/${id}/${trade}`) ?? usual);
    if (people.some(({ value }) => Number(value) !== 0)) return [];
    return [
      {
        code: 'rates/crew-of-nobody',
        weight: 'blocks',
        place: `/rates/overrides/crews/${id}${first === undefined ? '' : `/${first}`}`,
        message: `${title} has nobody in it.`,
        meaning: 'Its rate, its work and everything that depends on them is left out.',
        remedy: 'Give at least one of its trades a number of people above 0.',
      },
    ];
  });
}

function crewLimits({ overrides }: Project['rates'], { rateBook }: Library): Finding[] {
  return rateBook.crews.flatMap(({ id, title, available }): Finding[] => {
    const place = `crews/${id}/available`;
    const own = overrides.find(({ at }) => at === place)?.figure;
    if (own === undefined || isCrewLimit(own)) return [];
    return [
      {
        code: 'rates/no-crew-at-once',
        weight: 'blocks',
        place: `/rates/overrides/${place}`,
        message: `${title}: ${own.value} crews at once, so its work could never begin.`,
        meaning: `Until this is put right, the ${available.value} of the rate book are taken.`,
        remedy: 'Give 1 or more, or leave the work of this crew out of the estimate.',
      },
    ];
  });
}

function aboveTheCost(at: string, figure: Figure, { rateBook }: Library): Finding[] {
  const markUp = rateBook.markUps.find(({ id }) => at === `markUps/${id}/share`);
  if (markUp === undefined || !isAbove(figure, '1')) return [];
  const [percent, meant] = [Number(figure.value) * 100, Number(figure.value) / 100];
  return [
    {
      code: 'rates/mark-up-above-cost',
      weight: 'warns',
      place: `/rates/overrides/${at}`,
      message: `${markUp.title} is given as a share of ${figure.value}: ${Number(percent.toPrecision(12))} % of what it stands on.`,
      meaning: 'The share is used as it is given, so the price more than doubles.',
      remedy: `If ${figure.value} per cent was meant, write ${Number(meant.toPrecision(12))}.`,
    },
  ];
}

function isAbove({ value, unit }: Figure, limit: string): boolean {
  return unit === '1' && compareQuantities(quantity(value, '1'), quantity(limit, '1')) > 0;
}
