import { FIRST_HULL_TYPE, isStarting, UNNAMED_SHIP, type Funding, type Project } from '../project';
import type { Evaluation } from '../evaluation';

/** Something a reader still has to give before what he needs is his own: in words, and where it is given. */
export interface Missing {
  readonly id: string;
  readonly words: string;
  readonly view: string;
  /** The input, when there is one; ending with a stroke it is the first of a list. */
  readonly at?: string;
}

/** What is missing for each reader, in the order in which it is best given. */
export interface StillMissing {
  readonly lead: string;
  readonly rows: readonly Missing[];
}

interface Rule extends Omit<Missing, 'at'> {
  readonly at?: (project: Project) => string | undefined;
  readonly isMissing: (project: Project, evaluation: Evaluation) => boolean;
}

/** The year in which a ship of a type was usually built: what a new project begins with. */
function usualYear(type: string, { hullTypes }: Evaluation['library']): number | undefined {
  const year = hullTypes.find(({ id }) => id === type)?.quantities['build-year']?.value;
  return year === undefined ? undefined : Number(year);
}

/** Nothing stands there yet, or still what a new project begins with. */
const isOpen = (figure: { source: string } | undefined) => figure === undefined || isStarting(figure);

const SHIP: readonly Rule[] = [
  {
    id: 'name',
    words: 'the name, type and year of the ship',
    view: 'vessel',
    at: () => '/vessel/name',
    isMissing: ({ vessel }) => vessel.name === UNNAMED_SHIP,
  },
  {
    id: 'built',
    words: 'her type and year',
    view: 'vessel',
    at: () => '/vessel/built',
    // The document does not say whether they were given; a year that is no longer the usual one of the type was.
    isMissing: ({ vessel }, { library }) =>
      vessel.name !== UNNAMED_SHIP &&
      [vessel.hullType, FIRST_HULL_TYPE].some(type => vessel.built === usualYear(type, library)),
  },
  {
    id: 'length',
    words: 'her length',
    view: 'vessel',
    at: () => '/vessel/length',
    isMissing: ({ vessel }) => isOpen(vessel.length),
  },
  {
    id: 'lightship',
    words: 'her lightship',
    view: 'vessel',
    at: () => '/vessel/lightship',
    isMissing: ({ vessel }) => vessel.lightship === undefined,
  },
  {
    id: 'depth',
    words: 'the depth of the site',
    view: 'vessel',
    at: () => '/site/waterDepth',
    isMissing: ({ site }) => isOpen(site.waterDepth),
  },
  {
    id: 'clearance',
    words: 'the clearance required above her',
    view: 'vessel',
    at: () => '/site/clearanceRequired',
    isMissing: ({ site }) => isOpen(site.clearanceRequired),
  },
  {
    id: 'tow',
    words: 'the distance of the tow',
    view: 'vessel',
    at: () => '/site/towDistance',
    isMissing: ({ site }) => isOpen(site.towDistance),
  },
  {
    id: 'start',
    words: 'the start of the project',
    view: 'schedule',
    at: () => '/calendars/start',
    // A new project begins on the day that its prices are of; one that is under way has begun.
    isMissing: ({ calendars, rates, statusDate }) =>
      statusDate === undefined && calendars.start === rates.priceDate,
  },
];

const SURVEY: Rule = {
  id: 'survey',
  words: 'quantities found by a survey',
  view: 'materials',
  at: () => '/survey/measured/',
  isMissing: ({ survey }) => survey.measured.length === 0,
};
const BLOCKED: Rule = {
  id: 'blocked',
  words: 'what the findings ask for',
  view: 'review',
  isMissing: (_, { findings }) => findings.some(one => one.weight === 'blocks'),
};

type Source = Funding['sources'][number];

const hasStartingShare = ({ share }: Source) => share !== undefined && isStarting(share);
const hasNoPeriod = ({ form, period }: Source) => form !== 'none' && period === undefined;
const hasNoClass = (contract: Funding['contracts'][number]) => contract.class === undefined;
const placeOf = (list: string, one: { id: string } | undefined, field: string) =>
  one === undefined ? undefined : `/funding/${list}/${one.id}/${field}`;

const GRANT: readonly Rule[] = [
  {
    id: 'sources',
    words: 'the sources of the money',
    view: 'funding',
    at: () => '/funding',
    isMissing: ({ funding }) => funding === undefined,
  },
  {
    id: 'share',
    words: 'the share of the grant',
    view: 'funding',
    at: ({ funding }) => placeOf('sources', funding?.sources.find(hasStartingShare), 'share'),
    isMissing: ({ funding }) => funding?.sources.some(hasStartingShare) === true,
  },
  {
    id: 'period',
    words: 'the period of the grant',
    view: 'funding',
    at: ({ funding }) => placeOf('sources', funding?.sources.find(hasNoPeriod), 'period/start'),
    isMissing: ({ funding }) => funding?.sources.some(hasNoPeriod) === true,
  },
  {
    id: 'class',
    words: 'the class of each contract',
    view: 'funding',
    at: ({ funding }) => placeOf('contracts', funding?.contracts.find(hasNoClass), 'class'),
    isMissing: ({ funding }) =>
      funding !== undefined && funding.indirect.kind !== 'none' && funding.contracts.some(hasNoClass),
  },
];

const BID: readonly Rule[] = [
  {
    id: 'wages',
    words: 'your wages',
    view: 'rates',
    isMissing: ({ rates }) =>
      rates.wages.length === 0 && !rates.overrides.some(one => one.at.startsWith('trades/')),
  },
  {
    id: 'mark-ups',
    words: 'your mark-ups',
    view: 'rates',
    isMissing: ({ rates }) => !rates.overrides.some(one => one.at.startsWith('markUps/')),
  },
  {
    id: 'quotes',
    words: 'quotes of those you buy from',
    view: 'work',
    isMissing: ({ quotes }) => quotes.length === 0,
  },
];

const COMPARISON: readonly Rule[] = [
  {
    id: 'scenarios',
    words: 'a second way to do it',
    view: 'compare',
    isMissing: ({ scenarios }) => scenarios.length < 2,
  },
  {
    id: 'last-date',
    words: 'the last date',
    view: 'schedule',
    at: () => '/calendars/deadline',
    isMissing: ({ calendars }) => calendars.deadline === undefined,
  },
  {
    id: 'weights',
    words: 'what counts for the board',
    view: 'compare',
    isMissing: ({ decision }) => (decision?.weights.length ?? 0) === 0,
  },
  {
    id: 'vote',
    words: 'the vote',
    view: 'decision',
    isMissing: ({ decision }) => decision?.chosen === undefined,
  },
];

const READERS: Readonly<Record<Project['reader'], { readonly of: string; readonly rules: readonly Rule[] }>> =
  {
    grant: { of: 'a grant budget of your own', rules: [...SHIP, ...GRANT, SURVEY, BLOCKED] },
    bid: { of: 'a bid of your own', rules: [...SHIP, SURVEY, ...BID, BLOCKED] },
    comparison: { of: 'a decision', rules: [...SHIP, ...COMPARISON, BLOCKED] },
  };

/** What the reader of a project still has to give, in his order; nothing when all is there. */
export function stillMissing(evaluation: Evaluation): StillMissing {
  const { project } = evaluation;
  const { of, rules } = READERS[project.reader];
  return {
    lead: `Still missing for ${of}:`,
    rows: rules
      .filter(rule => rule.isMissing(project, evaluation))
      .map(({ id, words, view, at }) => {
        const place = at?.(project);
        return { id, words, view, ...(place === undefined ? {} : { at: place }) };
      }),
  };
}
