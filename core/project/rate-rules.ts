import type { Figure } from '../base';
import { isUnit } from '../units';
import type { PlacedGiven } from './given-rules';
import type { Project } from './schema';

type Rates = Project['rates'];

/** The limits of a rate in the unit it is given in, as decimal text; whether that unit fits is told where it is read. */
interface RateLimits {
  readonly at: RegExp;
  /** What it is, before the words of its place. */
  readonly title: string;
  readonly above?: string;
  readonly from?: string;
  readonly to: string;
  /** What to do about it, where that is not plain. */
  readonly remedy?: string;
}

const MOST_MONEY = '1000000000';
const MOST_AN_HOUR = '10000';
const MOST_PEOPLE = '1000';

/**
 * Limits beyond which a rate is certainly a mistake, by its place; the first that fits holds. Prices and wages are
 * never below zero: what brings money in is scrap.
 */
const LIMITS: readonly RateLimits[] = [
  { at: /^trades\/[^/]+\/wage$/, title: 'Wage of', from: '0', to: MOST_AN_HOUR },
  {
    at: /^burdens\/(smallTools|protectiveGear)$/,
    title: 'Cost an hour of',
    from: '0',
    to: MOST_AN_HOUR,
  },
  { at: /^burdens\/[^/]+$/, title: 'Share of the wage for', from: '0', to: '5' },
  // How many crews there are at once is told by `check-rates`.
  { at: /^crews\/[^/]+\/(?!available$)[^/]+$/, title: 'People of', from: '0', to: MOST_PEOPLE },
  { at: /^equipment\/[^/]+\/[^/]+$/, title: 'Price of', from: '0', to: MOST_MONEY },
  {
    at: /^streams\/[^/]+\/container(Tonnes|Volume)$/,
    title: 'What a container holds of',
    above: '0',
    to: '1000',
  },
  {
    at: /^streams\/[^/]+\/[^/]+$/,
    title: 'Price of',
    from: '0',
    to: MOST_MONEY,
    remedy:
      'Give what taking it away costs, or 0 when it is taken for nothing; what a buyer pays for it is not counted here.',
  },
  { at: /^scrap\/[^/]+\/shareReceived$/, title: 'Share received of', from: '0', to: '1' },
  { at: /^scrap\/[^/]+\/[^/]+$/, title: 'Price of', from: '0', to: MOST_MONEY },
  { at: /^markUps\/[^/]+\/share$/, title: 'Share of the mark-up for', from: '0', to: '100' },
  { at: /^conditions\/[^/]+\/factor$/, title: 'Factor on hours of', above: '0', to: '100' },
];

/** Every wage and rate that the project sets itself, with its limits. One in no unit that is known has none. */
export function rateGivens({ wages, overrides }: Pick<Rates, 'wages' | 'overrides'>): PlacedGiven[] {
  return [
    ...wages.flatMap(({ trade, figure }) =>
      placed(`trades/${trade}/wage`, `/rates/wages/${trade}/figure`, figure),
    ),
    ...overrides.flatMap(({ at, figure }) => placed(at, `/rates/overrides/${at}`, figure)),
  ];
}

function placed(at: string, place: string, figure: Figure): PlacedGiven[] {
  const limits = LIMITS.find(one => one.at.test(at));
  const { unit } = figure;
  if (limits === undefined || !isUnit(unit)) return [];
  const { title, above, from, to, remedy } = limits;
  const rule = {
    title: `${title} ${wordsOf(at)}`,
    unit,
    to,
    ...(above === undefined ? {} : { above }),
    ...(from === undefined ? {} : { from }),
    ...(remedy === undefined ? {} : { remedy }),
  };
  return [{ place, figure, rule }];
}

/** The words of a place of the rate book: `crews/tank-crew/foreman` is "tank crew, foreman". */
function wordsOf(at: string): string {
  const [, id = '', field = ''] = at.split('/');
  const own = at.startsWith('crews/') ? [id, field] : [id];
  return own
    .map(one =>
      one
        .replaceAll(/([a-z])([A-Z])/g, '$1 $2')
        .replaceAll('-', ' ')
        .toLowerCase(),
    )
    .join(', ');
}
