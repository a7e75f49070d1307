import { at, lowerFirst, withId, type Figure } from '../base';
import type { PlannedItem } from '../estimate';
import { idOf } from '../sheet';
import type { WorkItem } from '../work';
import { figureCell, type EstimateContext } from './context';
import { changeOf, indexBy } from './index-of';
import { inMeasures, unitWords } from './measures';
import { shortNumber } from './number-text';
import { ownUnit, timedCell } from './timed';
import type { Edit, Sentence, Shown } from './rows';

/**
 * A work item as a contractor would write it, each of its numbers to be changed in place. Hours that come of a quantity,
 * of conditions or of setting up have a sentence of their own.
 */
export function workSentence(context: EstimateContext, item: WorkItem): Sentence {
  const does = item.does.replace(/\.$/, '');
  const measured = [
    quantityClause(context, item),
    rateClause(context, item),
    conditionClause(context, item),
    setupClause(context, item),
  ];
  const hours = hoursClause(context, item);
  const staffed = [crewClause(context, item), daysClause(context, item)];
  const whole = hours.length === 0 ? joined([...measured, ...staffed]) : joined(measured);
  const said: Sentence = whole.length === 0 ? [`${does}.`] : [`${does}: `, ...whole, '.'];
  return hours.length === 0 ? said : [...said, ' In all ', ...joined([hours, ...staffed]), '.'];
}

function joined(clauses: readonly Sentence[]): Sentence {
  return clauses
    .filter(clause => clause.length > 0)
    .flatMap((clause, place) => (place === 0 ? clause : [', ', ...clause]));
}

function edited(
  context: EstimateContext,
  item: WorkItem,
  field: string,
  label: string,
  shown: Shown,
  unit: string,
): Shown {
  const to = inMeasures('0', unit, context.measures).unit;
  const edit: Edit = {
    at: `/items/${item.id}/${field}`,
    kind: 'figure',
    value: shown.absent === true ? '' : shown.text.replaceAll(',', '').replace('\u2212', '-'),
    unit: to,
    label: `${label} of ${lowerFirst(item.title)}`,
  };
  return { ...shown, edit };
}

function quantityClause(context: EstimateContext, item: WorkItem): Sentence {
  const { parts } = context;
  const unit = ownUnit(context, item.id);
  if (item.span !== undefined) return spanClause(context, item);
  const shown = figureCell(
    context,
    parts.work.result,
    parts.work.items.columns.quantity,
    item.id,
    item.decimals,
  );
  if (item.disposes !== undefined) return withWords(shown, shown.unit);
  const value = edited(context, item, 'quantity', 'Quantity', shown, unit);
  const driver = lowerFirst(withId(context.evaluation.library.drivers, item.driver).title);
  if (isOnce(context, item)) return [];
  if (unit === '1') return ['scaled by ', value, ` for the ${driver}`];
  return withWords(value, unit === 'each' ? driver : shown.unit);
}

/** A figure with its unit and other words behind it; one that is absent has no unit. */
function withWords(shown: Shown, ...words: readonly (string | undefined)[]): Sentence {
  return [shown, ...words.flatMap(one => (one === undefined || one === '' ? [] : [` ${one}`]))];
}

/** An item of which a project has exactly one: its quantity goes without saying. */
function isOnce(context: EstimateContext, item: WorkItem): boolean {
  const driver = context.evaluation.library.drivers.find(one => one.id === item.driver);
  const isChanged = changeOf(context.evaluation.project, item.id)?.quantity !== undefined;
  return driver?.base === 'one' && !isChanged;
}

/** A time-dependent item: how long its span lasts, from the schedule. */
function spanClause(context: EstimateContext, item: WorkItem): Sentence {
  if (context.parts.money === undefined) return [];
  const shown = timedCell(context, item, 'quantity');
  return withWords(shown, shown.unit, 'by the schedule');
}

/** The hours for one of an item's unit, to be changed in place; none where it names none. */
export function rateOf(
  context: EstimateContext,
  item: WorkItem,
): (Shown & { readonly unit: string }) | undefined {
  const change = changeOf(context.evaluation.project, item.id)?.hoursPerUnit;
  const figure: Figure | undefined = change ?? item.hoursPerUnit;
  if (figure === undefined) return undefined;
  const shown = inMeasures(figure.value, figure.unit, context.measures);
  const place = `/items/${item.id}/hoursPerUnit`;
  return {
    text: shortNumber(shown.value),
    unit: unitWords(shown.unit),
    why: change === undefined ? `rate:${item.id}` : `given:${place}`,
    edit: {
      at: place,
      kind: 'figure',
      value: shown.value,
      unit: shown.unit,
      label: `Hours per unit of ${lowerFirst(item.title)}`,
    },
  };
}

function rateClause(context: EstimateContext, item: WorkItem): Sentence {
  const rate = rateOf(context, item);
  const hours = timedCell(context, item, 'hours', 0);
  if (rate === undefined || hours.text === '0') return [];
  return isOnce(context, item) ? [rate, ' hours'] : ['at ', rate, ` ${rate.unit}`];
}

function conditionClause(context: EstimateContext, item: WorkItem): Sentence {
  const factor = partOfHours(context, item, 'condition', 1);
  return factor === undefined ? [] : ['times ', factor, ` ${conditionNames(context, item)}`];
}

function setupClause(context: EstimateContext, item: WorkItem): Sentence {
  const setup = partOfHours(context, item, 'setup-hours', 0);
  return setup === undefined ? [] : ['with ', setup, ' hours to set up'];
}

/** The hours in all, where they are not those of the rate alone. */
function hoursClause(context: EstimateContext, item: WorkItem): Sentence {
  const all = timedCell(context, item, 'hours', 0);
  const isPlain =
    isOnce(context, item) &&
    [conditionClause(context, item), setupClause(context, item)].every(clause => clause.length === 0);
  return all.text === '0' || all.absent === true || isPlain ? [] : [all, ' hours'];
}

/** A part of the hours of an item, when it changes them. */
function partOfHours(
  { parts: { work } }: EstimateContext,
  item: WorkItem,
  column: string,
  neutral: number,
): Shown | undefined {
  const hours = work.result.at(work.items.columns.hours, item.id).text;
  if (hours === undefined || Number(hours) === 0) return undefined;
  const id = `${item.disposes === undefined ? 'worked' : 'hauled'}/${item.id}/${column}`;
  const text = work.result.has(id) ? work.result.figure(id).text : undefined;
  return text === undefined || Number(text) === neutral ? undefined : { text: shortNumber(text), why: id };
}

/** The conditions of work in words: `in a confined space and in heat`. */
function conditionNames({ evaluation: { library } }: EstimateContext, item: WorkItem): string {
  const titles = item.conditions.map(id => lowerFirst(withId(library.rateBook.conditions, id).title));
  const last = at(titles, titles.length - 1);
  return titles.length === 1 ? last : `${titles.slice(0, -1).join(', ')} and ${last}`;
}

function crewClause(context: EstimateContext, item: WorkItem): Sentence {
  const crew = context.evaluation.library.rateBook.crews.find(one => one.id === item.crew);
  if (crew === undefined) return [];
  const { work } = context.parts;
  const crews = figureCell(context, work.result, work.items.columns.crews, item.id, 0);
  if (crews.absent === true || crews.text === '0') return [lowerFirst(crew.title)];
  const isSet = context.parts.input.adjustments.get(item.id)?.crews !== undefined;
  const value = edited(context, item, isSet ? 'crews' : 'crewsAtOnce', 'Crews', crews, 'each');
  return [value, ` × ${lowerFirst(crew.title)}`];
}

const plannedById = indexBy((planned: PlannedItem) => planned.item.id);

function daysClause(context: EstimateContext, item: WorkItem): Sentence {
  const { parts } = context;
  const planned = plannedById(parts.planned).get(item.id);
  if (planned === undefined || planned.days === 0 || item.span !== undefined) return [];
  const shown = figureCell(context, parts.work.result, parts.work.items.columns.days, item.id, 0);
  const unit = planned.unit === 'day' ? 'day' : 'work-day';
  const isGiven = item.duration !== undefined && !('perUnit' in item.duration);
  const value = isGiven ? edited(context, item, 'duration', 'Duration', shown, unit) : shown;
  const words =
    planned.days === 1
      ? unit === 'day'
        ? 'calendar day'
        : 'work day'
      : unit === 'day'
        ? 'calendar days'
        : 'work days';
  return [{ ...value, why: idOf(parts.work.items.columns.days, item.id) }, ` ${words}`];
}
