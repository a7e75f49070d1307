import type { Finding } from '../../base';
import { dayOf } from '../../calendar';
import { PCB_ROUTES, pcbRouteDuty } from '../../materials';
import { datedNotices, type DatedNotice, type NoticeParts } from './notices';

/** Each notice as a dated finding: when it is due, or that the schedule gives it too late or not at all. */
export function noticeFindings(parts: NoticeParts): Finding[] {
  const floor = parts.input.statusDate ?? parts.input.calendars.start;
  return [...datedNotices(parts).map(notice => noticeFinding(notice, floor)), ...routeFindings(parts)];
}

function noticeFinding(notice: DatedNotice, floor: string): Finding {
  const { item, title, rule, by, given, before, starts, reasons } = notice;
  const why = `${reasons.join('; ')}; ${before} starts on ${starts}`;
  if (given !== undefined && dayOf(given) <= dayOf(by))
    return {
      code: 'rules/notice-due',
      weight: 'notes',
      place: `/items/${item}`,
      message: `${title}: due by ${by} (${why}). The schedule gives it on ${given}.`,
      meaning: 'The date moves with the work it is for.',
      remedy: 'Send it in writing by that day and keep the proof; send it anew when the work moves earlier.',
      rule,
    };
  const passed = dayOf(by) < dayOf(floor);
  return {
    code: passed
      ? 'rules/notice-day-passed'
      : given === undefined
        ? 'rules/notice-missing'
        : 'rules/notice-too-late',
    weight: 'warns',
    place: `/items/${item}`,
    message: `${title}: due by ${by} (${why}), ${
      given === undefined ? 'and nothing in the scenario gives it' : `but the schedule gives it on ${given}`
    }${passed ? `; that day lies before ${floor}` : ''}.`,
    meaning: 'The work may not start on the day the schedule says.',
    remedy:
      'Start the work later, or give the notice earlier and enter the day it was given as its actual start.',
    rule,
  };
}

/** What the chosen route for solid PCB asks, when there is any to haul. */
function routeFindings({ input, items, schedule }: NoticeParts): Finding[] {
  const route = PCB_ROUTES.find(candidate => candidate === input.options['pcb-route']);
  const hauls = items.filter(item => item.disposes === 'pcb-solids');
  if (route === undefined || hauls.length === 0) return [];
  const duty = pcbRouteDuty(input.library.tripPoints, route);
  const place = '/options/pcb-route';
  const of = (id: string) => schedule.activities.find(activity => activity.id === id);
  const haul = hauls.map(item => of(item.id)).find(activity => activity !== undefined);
  const approval = of('risk-based-application');
  const late =
    duty.approvalFirst &&
    haul !== undefined &&
    (approval === undefined || dayOf(approval.finish) >= dayOf(haul.start));
  if (late)
    return [
      {
        code: 'rules/pcb-approval-first',
        weight: 'warns',
        place,
        message: `Solid PCB is hauled on ${haul.start} under the risk-based route, ${
          approval === undefined ? 'without its application' : `before the approval of ${approval.finish}`
        }.`,
        meaning: duty.words,
        remedy: 'Put the application back, or choose another route.',
        rule: duty.rule,
      },
    ];
  return [
    {
      code: 'rules/pcb-route',
      weight: 'notes',
      place,
      message: `Solid PCB of 50 ppm or more goes ${ROUTE_WORDS[route]}${haul === undefined ? '' : `, first on ${haul.start}`}.`,
      meaning: duty.words,
      remedy: 'Ask the landfill and the State in writing whether they take it.',
      rule: duty.rule,
    },
  ];
}

const ROUTE_WORDS = {
  'state-landfill': 'to a State-permitted landfill',
  'tsca-landfill': 'to a landfill approved under the toxic-substances act',
  'risk-based': 'by the risk-based approval',
} as const;
