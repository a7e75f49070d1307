import type { Finding } from '../base';
import { isoOf, parseIsoDate } from '../calendar';
import type { Library } from '../work';
import { knownItems } from './check-items';
import type { Project } from './schema';

/** What the schema cannot see in the sections on funding, bid and record: dates that do not exist, and names of nothing. */
export function checkFunding(project: Project, library: Library): Finding[] {
  return [
    ...checkDates(project),
    ...checkPeriods(project),
    ...checkShortPeriods(project),
    ...checkNames(project, library),
  ];
}

function checkDates({ funding, bid, record, receivedBids = [] }: Project): Finding[] {
  const dates: [string, string | undefined][] = [
    ['/funding/awardDate', funding?.awardDate],
    ['/bid/offer/validUntil', bid?.offer?.validUntil],
    ['/record/approval/on', record?.approval?.on],
    ['/record/baseline/keptOn', record?.baseline?.keptOn],
    ['/record/baseline/finish', record?.baseline?.finish],
    ['/record/independent/on', record?.independent?.on],
    ['/record/earlier/on', record?.earlier?.on],
    ...receivedBids.map((bid): [string, string | undefined] => [
      `/receivedBids/${bid.id}/openedOn`,
      bid.openedOn,
    ]),
    ...(funding?.sources ?? []).flatMap(({ id, period }): [string, string][] =>
      period === undefined
        ? []
        : [
            [`/funding/sources/${id}/period/start`, period.start],
            [`/funding/sources/${id}/period/finish`, period.finish],
          ],
    ),
  ];
  return dates.flatMap(([place, text]) => {
    if (text === undefined) return [];
    const day = parseIsoDate(text);
    if (day !== undefined && isoOf(day) === text) return [];
    return [
      blocked('no-such-date', place, `"${text}" is not a date of the calendar.`, 'Write it as YYYY-MM-DD.'),
    ];
  });
}

function checkPeriods({ funding }: Project): Finding[] {
  return (funding?.sources ?? []).flatMap(({ id, title, period }) =>
    period === undefined || period.start <= period.finish
      ? []
      : [
          blocked(
            'period-order',
            `/funding/sources/${id}/period`,
            `The award period of ${title} finishes on ${period.finish}, before it starts on ${period.start}.`,
            'Put its start and finish in order.',
          ),
        ],
  );
}

/** An award of fewer days than this is more likely a date in the wrong field than a grant (judgement, 2026). */
const SHORT_AWARD = 28;

function checkShortPeriods({ funding }: Project): Finding[] {
  return (funding?.sources ?? []).flatMap(({ id, title, period }): Finding[] => {
    const [start, finish] = [parseIsoDate(period?.start ?? ''), parseIsoDate(period?.finish ?? '')];
    if (start === undefined || finish === undefined || finish < start) return [];
    const days = finish - start + 1;
    if (days >= SHORT_AWARD) return [];
    return [
      {
        code: 'funding/period-short',
        weight: 'warns',
        place: `/funding/sources/${id}/period`,
        message: `The award of ${title} lasts ${days === 1 ? 'one day' : `${days} calendar days`}.`,
        meaning: 'Work outside these days is counted as not paid by the grant.',
        remedy: 'Check the first and the last day of the award.',
      },
    ];
  });
}

function checkNames(project: Project, library: Library): Finding[] {
  const { funding, bid, record } = project;
  const items = knownItems(project, library);
  const ids = new Set(items.map(item => item.id));
  const headings = new Set(items.map(item => item.bidItem));
  const lines: [string, string][] = [
    ...(funding?.sources ?? []).flatMap(one => named(`/funding/sources/${one.id}/lines`, one.lines)),
    ...(funding?.contracts ?? []).flatMap(one => named(`/funding/contracts/${one.id}/lines`, one.lines)),
    ...(funding?.notAllowable ?? []).flatMap(one => named('/funding/notAllowable', [one.item])),
    ...(funding?.lineFacts ?? []).flatMap(one => named('/funding/lineFacts', [one.item])),
    ...(record?.crossChecks ?? []).flatMap(one => named('/record/crossChecks', [one.item])),
    ...(record?.reasons ?? []).flatMap(one => named('/record/reasons', [one.item])),
    ...(bid?.items ?? []).flatMap(one => named(`/bid/items/${one.id}/lines`, one.lines)),
  ];
  const titles = (bid?.items ?? []).flatMap(one => named(`/bid/items/${one.id}/headings`, one.headings));
  return [
    ...lines.filter(([, id]) => !ids.has(id)).map(([place, id]) => unknown(place, id, 'work item')),
    ...titles
      .filter(([, title]) => !headings.has(title))
      .map(([place, title]) => unknown(place, title, 'heading of the bid')),
  ];
}

function named(place: string, names: readonly string[] = []): [string, string][] {
  return names.map(name => [place, name]);
}

function unknown(place: string, name: string, what: string): Finding {
  return blocked('names-nothing', place, `There is no ${what} "${name}".`, `Name a ${what} of the library.`);
}

function blocked(code: string, place: string, message: string, remedy: string): Finding {
  return {
    code: `funding/${code}`,
    weight: 'blocks',
    place,
    message,
    meaning: 'The grant budget or the bid is left out until this is put right; the estimate stands.',
    remedy,
  };
}
