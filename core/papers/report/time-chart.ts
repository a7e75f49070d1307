import { at } from '../../base';
import { dayOf, monthsBetween } from '../../calendar';
import { firstDayOf } from '../../cash-flow';
import { stageTitle } from '../../estimate';
import type { EstimateParts } from '../../evaluation';
import { STAGES, type StageKey } from '../../work';
import { PICTURE_WIDTH, label, picture, px } from './charts';
import { element, type Markup } from './markup';

/** From when to when a stage is worked on. */
export interface StageSpan {
  readonly stage: StageKey;
  readonly title: string;
  readonly start: string;
  readonly finish: string;
}

/** Stages with activities, each from its first start to its last finish. */
export function stageSpans({ schedule, items }: EstimateParts): StageSpan[] {
  return STAGES.flatMap(stage => {
    const own = new Set(items.filter(item => item.stage === stage).map(item => item.id));
    const activities = schedule.activities.filter(activity => own.has(activity.id));
    return activities.length === 0
      ? []
      : [{ stage, title: stageTitle(stage), start: firstOf(activities), finish: lastOf(activities) }];
  });
}

/** Whether some stage begins before one that is listed before it has ended. */
export function stagesOverlap(spans: readonly StageSpan[]): boolean {
  return spans.some((span, i) => spans.slice(0, i).some(({ finish }) => span.start <= finish));
}

/** The first start of some spans, of which there is one at least. */
function firstOf(spans: readonly { readonly start: string }[]): string {
  return at(spans.map(span => span.start).sort(), 0);
}

/** The last finish of some spans, of which there is one at least. */
function lastOf(spans: readonly { readonly finish: string }[]): string {
  return at(spans.map(span => span.finish).sort(), spans.length - 1);
}

const NAME = 130;
const ROW = 17;
const HEAD = 18;

/** Stages as bars over time, years marked, each with its name on its own row. */
export function timeChart(spans: readonly StageSpan[]): Markup {
  const [first, last] = [dayOf(firstOf(spans)), dayOf(lastOf(spans))];
  const scale = (PICTURE_WIDTH - NAME - 24) / Math.max(1, last - first + 1);
  const x = (day: number) => NAME + (day - first) * scale;
  const height = HEAD + spans.length * ROW + 6;
  const years = monthsBetween(first, last)
    .filter(month => month.endsWith('-01') || month.endsWith('-07'))
    .map(month => ({ month, from: x(firstDayOf(month)) }))
    .filter(({ from }) => from >= NAME);
  const parts = [
    ...years.map(({ from }) =>
      element('line', { x1: px(from), x2: px(from), y1: px(HEAD - 4), y2: px(height), class: 'grid' }),
    ),
    ...years.map(({ month, from }) => label(from, HEAD - 7, month, 'middle')),
    ...spans.flatMap((span, i) => {
      const y = HEAD + i * ROW + 3;
      const [from, to] = [x(dayOf(span.start)), x(dayOf(span.finish) + 1)];
      return [
        label(NAME - 8, y + 10, span.title, 'end'),
        element('rect', {
          x: px(from),
          y: px(y),
          width: px(Math.max(2, to - from)),
          height: '12',
          class: 'bar',
        }),
      ];
    }),
  ];
  return picture('Stages over time', height, parts);
}
