import { at, type Figure, type Finding } from '../base';
import { parseIsoDate } from '../calendar';
import { uncheckedTripPoints } from '../materials';
import type { Project } from '../project';
import { amountWords, compareQuantities, isConvertible, isUnit, quantity } from '../units';
import type { Library, WorkItem } from '../work';

/** What is out of date or too low: trip-points, wages, scrap and tug rates, the start of the plan, the offer. */
export function ageingFindings(
  project: Project,
  library: Library,
  items: readonly WorkItem[],
  today: string,
): Finding[] {
  return [
    ...uncheckedTripPoints(library.tripPoints, today),
    ...wageFindings(project, library),
    ...marketFindings(project, library, items, today),
    ...startFindings(project, today),
    ...offerFindings(project, today),
  ];
}

/** An offer whose last day is past: nobody can accept it any more. */
function offerFindings({ bid }: Project, today: string): Finding[] {
  const until = bid?.offer?.validUntil;
  if (until === undefined || until >= today) return [];
  return [
    {
      code: 'bid/offer-expired',
      weight: 'warns',
      place: '/bid/offer/validUntil',
      message: `The offer could be accepted until ${until}; today is ${today}.`,
      meaning: 'The bid is printed with a last day that is past, and nobody can accept it.',
      remedy: 'Give a later last day, or leave it empty.',
    },
  ];
}

function lastBeforeFirst(start: string, deadline: string): Finding {
  return {
    code: 'document/deadline-before-start',
    weight: 'warns',
    place: '/calendars/deadline',
    message: `The last date, ${deadline}, lies before the start of the project, ${start}.`,
    meaning: 'No plan can keep it.',
    remedy: 'Correct the year of one of the two.',
  };
}

/** A plan is begun within the year; one that began earlier says how far it has come. */
const WITHIN_DAYS = 366;

function startFindings({ calendars, statusDate }: Project, today: string): Finding[] {
  const { deadline } = calendars;
  if (deadline !== undefined && deadline < calendars.start)
    return [lastBeforeFirst(calendars.start, deadline)];
  const [start, now] = [parseIsoDate(calendars.start), parseIsoDate(today)];
  if (start === undefined || now === undefined || statusDate !== undefined) return [];
  if (now - start <= WITHIN_DAYS) return [];
  return [
    {
      code: 'document/start-long-past',
      weight: 'warns',
      place: '/calendars/start',
      message: `The project starts on ${calendars.start}, more than a year before today, ${today}.`,
      meaning: 'The work is dated and priced from then.',
      remedy: 'Give the day the work starts; of a plan that is under way, the day its progress was taken.',
    },
  ];
}

function wageFindings(project: Project, library: Library): Finding[] {
  return project.rates.wages.flatMap(({ trade: id, figure }): Finding[] => {
    const trade = library.rateBook.trades.find(candidate => candidate.id === id);
    if (trade === undefined || !isBelow(trade.wage, figure)) return [];
    return [
      {
        code: 'rates/below-wage-table',
        weight: 'notes',
        place: `/rates/wages/${id}`,
        message: `The rate book pays ${trade.title} ${amountWords(trade.wage)}; the wage table asks ${amountWords(figure)}.`,
        meaning: 'The wage table is used.',
        remedy: 'Nothing, when the wage table holds for this work.',
      },
    ];
  });
}

function isBelow(a: Figure, b: Figure): boolean {
  if (!isUnit(a.unit) || !isUnit(b.unit) || !isConvertible(a.unit, b.unit)) return false;
  return compareQuantities(quantity(a.value, a.unit), quantity(b.value, b.unit)) < 0;
}

/** Scrap and tug rates move with the market: of an earlier year they ask, and never stand in silently. */
function marketFindings(
  project: Project,
  library: Library,
  items: readonly WorkItem[],
  today: string,
): Finding[] {
  const grades = new Set(items.flatMap(item => item.scrap?.grade ?? []));
  const hired = new Set(items.flatMap(item => item.equipment.map(hire => hire.equipment)));
  const rows: [string, string, Figure][] = [
    ...library.rateBook.scrap
      .filter(scrap => grades.has(scrap.id))
      .map((scrap): [string, string, Figure] => [`scrap/${scrap.id}/price`, scrap.title, scrap.price]),
    ...library.rateBook.equipment
      .filter(one => hired.has(one.id) && /(^|-)tug(-|$)/.test(one.id))
      .map((one): [string, string, Figure] => [`equipment/${one.id}/rate`, one.title, one.rate]),
  ];
  const year = Number(today.slice(0, 4));
  const old = rows.flatMap(([place, title, given]): OldRate[] => {
    const figure = project.rates.overrides.find(row => row.at === place)?.figure ?? given;
    return (figure.year ?? 0) >= year ? [] : [{ place, title, figure }];
  });
  const years = [...new Set(old.map(({ figure }) => figure.year))];
  return years.map(of =>
    outOfDate(
      old.filter(({ figure }) => figure.year === of),
      `of ${of ?? 'no stated year'}, and it is ${year}`,
    ),
  );
}

interface OldRate {
  readonly place: string;
  readonly title: string;
  readonly figure: Figure;
}

/** Rates of one year that is past: one finding, at the place of the rate when there is but one. */
function outOfDate(old: readonly OldRate[], of: string): Finding {
  const named = old.map(({ title, figure }) => `${title} at ${amountWords(figure)}`);
  const frame = {
    code: 'rates/market-rate-out-of-date',
    weight: 'warns',
    meaning: 'The market moves within months; the old rate is used until another is given.',
    remedy: 'Ask for today’s rate and enter it.',
  } as const;
  if (old.length === 1)
    return {
      ...frame,
      place: `/rates/overrides/${at(old, 0).place}`,
      message: `${at(named, 0)} is ${of}.`,
    };
  return {
    ...frame,
    place: '/rates/overrides',
    message: `${old.length} rates are ${of}: ${named.join('; ')}.`,
  };
}
