import type { EstimateInput, WorkSheet } from '../../estimate';
import { dayOf, isoOf, noticeBy } from '../../calendar';
import type { GeneratorPlan } from '../../disposal';
import {
  asbestosDuty,
  asbestosNoticeBy,
  limitOf,
  pcbNoticeBy,
  tripPoint,
  type AsbestosAmounts,
} from '../../materials';
import type { ScheduledActivity, ScheduleResult } from '../../scheduling';
import { convert, isConvertible, quantity, type PlainUnit } from '../../units';
import type { WorkItem } from '../../work';
import { EPISODIC_NOTICE } from './notice-relationships';

/** A written notice that a rule asks for, with the last day for it as the schedule stands. */
export interface DatedNotice {
  /** The item that gives it. */
  readonly item: string;
  readonly title: string;
  readonly rule: string;
  /** The last day, `YYYY-MM-DD`. */
  readonly by: string;
  /** The day the schedule gives it on; none when no activity of the scenario does. */
  readonly given?: string;
  /** What waits for it, and when that starts. */
  readonly before: string;
  readonly starts: string;
  /** Why it is asked for. */
  readonly reasons: readonly string[];
}

/** What the notices are told from. */
export interface NoticeParts {
  readonly input: EstimateInput;
  readonly items: readonly WorkItem[];
  readonly work: WorkSheet;
  readonly schedule: ScheduleResult;
  readonly generator?: GeneratorPlan;
}

/** The notices of a scenario that rules ask for, dated from the schedule, earliest first. */
export function datedNotices(parts: NoticeParts): DatedNotice[] {
  const found = [
    asbestosNotice(parts),
    landfillNotice(parts),
    episodicNotice(parts),
    safetyZoneRequest(parts),
    explosivesPermit(parts),
  ];
  return found
    .filter(notice => notice !== undefined)
    .sort((a, b) => dayOf(a.by) - dayOf(b.by) || (a.item < b.item ? -1 : 1));
}

const REGULATED_STREAM = 'asbestos-friable';

/** Ten working days before the first activity that disturbs asbestos or takes out a load-bearing member. */
function asbestosNotice(parts: NoticeParts): DatedNotice | undefined {
  const { input, items, work, schedule } = parts;
  const { tripPoints, materials } = input.library;
  const asbestos = new Set(materials.filter(row => row.family === 'asbestos').map(row => row.id));
  const cuts = items.filter(item => item.disturbs?.includes('load-bearing member') === true);
  const disturbing = items.filter(
    item =>
      item.hazard === 'asbestos-enclosure' ||
      item.disturbs?.includes('asbestos') === true ||
      item.meets.some(id => asbestos.has(id)),
  );
  const duty = asbestosDuty(tripPoints, regulatedAmounts(work), cuts.length > 0);
  const first = earliest(schedule, [...disturbing, ...cuts]);
  if (!duty.notice || first === undefined) return undefined;
  return {
    ...dated(parts, 'asbestos-notice', first.title, first.start),
    rule: tripPoint(tripPoints, 'asbestos-notice').rule,
    by: asbestosNoticeBy(tripPoints, first.start),
    reasons: [...duty.reasons, updateWords(parts)],
  };
}

/** The notice is sent anew when the amount changes by the share the rule names. */
function updateWords({ input }: NoticeParts): string {
  const share = Number(tripPoint(input.library.tripPoints, 'asbestos-update').figure.value);
  return `to be updated when the amount changes by ${Math.round(share * 100)} % or more`;
}

/** Friable asbestos by the unit it is measured in: on pipes, on other components, off components. */
function regulatedAmounts(work: WorkSheet): AsbestosAmounts {
  const rows = work.rows.filter(({ item }) => item.wastes.some(({ stream }) => stream === REGULATED_STREAM));
  const total = (unit: PlainUnit) =>
    rows.reduce((sum, { item, own }) => {
      const amount = work.result.number(work.items.columns.number, item.id) ?? 0;
      return isConvertible(own, unit)
        ? sum + Number(convert(quantity(amount.toFixed(6), own), unit).value)
        : sum;
    }, 0);
  const text = (unit: PlainUnit) => String(Math.round(total(unit) * 100) / 100);
  return { pipeFeet: text('ft'), squareFeet: text('ft2'), cubicFeet: text('ft3') };
}

/** Fifteen days before the first load of solid PCB to a State-permitted landfill. */
function landfillNotice(parts: NoticeParts): DatedNotice | undefined {
  const { input, items, schedule } = parts;
  if (input.options['pcb-route'] !== 'state-landfill') return undefined;
  const first = earliest(
    schedule,
    items.filter(item => item.disposes === 'pcb-solids'),
  );
  if (first === undefined) return undefined;
  return {
    ...dated(parts, 'pcb-landfill-notice', first.title, first.start),
    rule: tripPoint(input.library.tripPoints, 'pcb-landfill-notice').rule,
    by: pcbNoticeBy(input.library.tripPoints, first.start),
    reasons: ['solid PCB goes to a State-permitted landfill'],
  };
}

/** Thirty days before a planned episodic event. */
function episodicNotice(parts: NoticeParts): DatedNotice | undefined {
  const event = parts.generator?.event;
  if (event === undefined) return undefined;
  return {
    ...dated(parts, EPISODIC_NOTICE, `the planned episodic event, until ${event.finish}`, event.start),
    rule: '40 CFR 262.232(a)(2)',
    by: event.noticeBy,
    reasons: ['a planned episodic event is elected'],
  };
}

/** Items that sink the ship. */
const SINKING = ['sinking-by-flooding', 'scuttling-firm'];

/** Five working days before the sinking, in writing; commonly asked for far earlier. */
function safetyZoneRequest(parts: NoticeParts): DatedNotice | undefined {
  const { input, items, schedule } = parts;
  const first = earliest(
    schedule,
    items.filter(item => SINKING.includes(item.id)),
  );
  if (first === undefined) return undefined;
  const point = tripPoint(input.library.tripPoints, 'safety-zone-notice');
  return {
    ...dated(parts, 'safety-zone-request', first.title, first.start),
    rule: point.rule,
    by: isoOf(noticeBy(dayOf(first.start), Number(point.figure.value))),
    reasons: ['a zone is kept clear around the sinking'],
  };
}

/** Ninety days before the licensed firm works with explosives. */
function explosivesPermit(parts: NoticeParts): DatedNotice | undefined {
  const { input, items, schedule } = parts;
  const first = earliest(
    schedule,
    items.filter(item => item.id === 'scuttling-firm'),
  );
  if (first === undefined) return undefined;
  const { tripPoints } = input.library;
  return {
    ...dated(parts, 'explosives-permit', first.title, first.start),
    rule: tripPoint(tripPoints, 'explosives-permit').rule,
    by: isoOf(dayOf(first.start) - limitOf(tripPoints, 'explosives-permit', 'day')),
    reasons: ['the permit takes that long'],
  };
}

function dated(
  { items, schedule }: NoticeParts,
  item: NoticeItem,
  before: string,
  starts: string,
): Pick<DatedNotice, 'item' | 'title' | 'given' | 'before' | 'starts'> {
  const given = schedule.activities.find(activity => activity.id === item)?.start;
  const title = items.find(candidate => candidate.id === item)?.title ?? TITLES[item];
  return { item, title, before, starts, ...(given === undefined ? {} : { given }) };
}

type NoticeItem =
  | 'asbestos-notice'
  | 'pcb-landfill-notice'
  | 'safety-zone-request'
  | 'explosives-permit'
  | typeof EPISODIC_NOTICE;

/** What the notices are called when the scenario has no item for them. */
const TITLES: Readonly<Record<NoticeItem, string>> = {
  'asbestos-notice': 'Asbestos notice',
  'pcb-landfill-notice': 'Notice to the landfill that takes PCB',
  'safety-zone-request': 'Request for a safety zone',
  'explosives-permit': 'Explosives licence and permits',
  [EPISODIC_NOTICE]: 'Notice of a planned episodic event',
};

function earliest(schedule: ScheduleResult, items: readonly WorkItem[]): ScheduledActivity | undefined {
  const ids = new Set(items.map(item => item.id));
  return schedule.activities
    .filter(activity => ids.has(activity.id))
    .reduce<ScheduledActivity | undefined>(
      (first, next) => (first === undefined || dayOf(next.start) < dayOf(first.start) ? next : first),
      undefined,
    );
}
