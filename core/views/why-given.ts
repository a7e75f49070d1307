import { at as entryAt, BASES, figureSchema, sourceWithYear, upperFirst, type Figure } from '../base';
import { asStep, atItsPrices } from './cells';
import type { EstimateContext } from './context';
import { figureInMeasures, unitWords } from './measures';
import { printed } from './number-text';
import type { Edit, WhyRow, WhyRows } from './rows';
import { rateFigures } from './rates';
import { homeOf } from './finding-rows';

/** A named entry of a list, or a field. */
function step(place: unknown, name: string): unknown {
  if (Array.isArray(place)) {
    return place.find(
      (entry: unknown) =>
        isRecord(entry) &&
        [entry['id'], entry['item'], entry['driver'], entry['at'], entry['trade']].includes(name),
    );
  }
  return isRecord(place) ? place[name] : undefined;
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return value !== null && typeof value === 'object' && !Array.isArray(value);
}

/** The given number at a place of the document, or of the rate book when the project has none of its own. */
function figureAt(
  context: EstimateContext,
  at: string,
): { figure: Figure; title: string; isOwn: boolean } | undefined {
  const steps = at
    .split('/')
    .slice(1)
    .map(name => name.replaceAll('~1', '/').replaceAll('~0', '~'));
  const found = figureSchema.safeParse(steps.reduce<unknown>(step, context.evaluation.project));
  const rate = rateFigures(context.evaluation.library).find(one => one.place === steps[2]);
  const title = rate === undefined ? '' : titleOfRate(rate);
  if (found.success)
    return { figure: found.data, title: rate === undefined ? titleOf(context, steps) : title, isOwn: true };
  return rate === undefined ? undefined : { figure: rate.figure, title, isOwn: false };
}

const FIELD_WORDS: Readonly<Record<string, string>> = {
  hoursPerUnit: 'hours for one',
  crewsAtOnce: 'crews at once',
  crews: 'crews planned',
  waterDepth: 'water depth',
  clearanceRequired: 'clearance required',
  towDistance: 'tow distance',
  yardDistance: 'road to the disposal sites',
  draughtLight: 'draught light',
  draughtFull: 'draught full',
};

function titleOf({ parts }: EstimateContext, steps: readonly string[]): string {
  const field = entryAt(steps, steps.length - 1);
  const words = FIELD_WORDS[field] ?? field;
  const item = parts.items.find(one => one.id === steps[1])?.title;
  const text = item === undefined ? words : `${item}: ${words}`;
  return upperFirst(text);
}

/** Where a given number comes from. */
export function givenWhy(context: EstimateContext, id: string): WhyRows | undefined {
  if (id.startsWith('rate:')) return libraryRate(context, id.slice(5));
  if (id.startsWith('book:')) return bookRate(context, id.slice(5));
  if (!id.startsWith('given:')) return undefined;
  const at = id.slice(6);
  const found = figureAt(context, at);
  return found === undefined ? undefined : figureWhy(context, { id, at, ...found });
}

function libraryRate(context: EstimateContext, item: string): WhyRows | undefined {
  const row = context.parts.items.find(one => one.id === item);
  if (row?.hoursPerUnit === undefined) return undefined;
  return figureWhy(context, {
    id: `rate:${item}`,
    at: `/items/${item}/hoursPerUnit`,
    figure: row.hoursPerUnit,
    title: `${row.title}: hours for one`,
    isOwn: false,
  });
}

/** A number as the rate book has it, whatever the project puts in its place. */
function bookRate(context: EstimateContext, place: string): WhyRows | undefined {
  const rate = rateFigures(context.evaluation.library).find(one => one.place === place);
  if (rate === undefined) return undefined;
  return figureWhy(context, {
    id: `book:${place}`,
    at: `/rates/overrides/${asStep(place)}/figure`,
    figure: rate.figure,
    title: titleOfRate(rate),
    isOwn: false,
  });
}

function titleOfRate({ title, beside }: ReturnType<typeof rateFigures>[number]): string {
  return [title, beside].filter(part => part !== undefined).join(', ');
}

interface Found {
  readonly id: string;
  readonly at: string;
  readonly figure: Figure;
  readonly title: string;
  readonly isOwn: boolean;
}

function figureWhy(context: EstimateContext, { id, at, figure, title, isOwn }: Found): WhyRows {
  const shown = figureInMeasures(figure, context.measures);
  const unit = unitWords(shown.unit);
  const source = sourceWithYear(figure);
  const edit: Edit = { at, kind: 'figure', value: shown.value, unit: shown.unit, label: title };
  const given: WhyRow = {
    depth: 0,
    operator: '=',
    value: { text: printed(shown.value), unit, basis: figure.basis, source },
    words: isOwn ? 'given in this project' : 'from the library',
    ...(shown.low === undefined || shown.high === undefined
      ? {}
      : { range: rangeOf(shown.low, shown.value, shown.high) }),
  };
  return {
    id,
    title,
    path: 'Given number',
    value: { text: printed(shown.value), unit },
    words: figure.note === undefined || figure.note === '' ? `${source}.` : `${source}. Note: ${figure.note}`,
    rows: [given],
    usedBy: [],
    bases: BASES,
    edit: at.startsWith('/rates/') ? atItsPrices(edit, figure, context.evaluation.today) : edit,
    home: homeOf(at),
  };
}

function rangeOf(low: string, value: string, high: string): NonNullable<WhyRow['range']> {
  const span = Number(high) - Number(low);
  const at = span <= 0 ? 0.5 : (Number(value) - Number(low)) / span;
  return { low: printed(low), high: printed(high), at: Math.min(1, Math.max(0, at)) };
}
