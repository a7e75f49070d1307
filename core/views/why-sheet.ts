import { at, BASES, known, lowerFirst, sourceWithYear } from '../base';
import { why, type Why, type WhyStep } from '../sheet';
import type { Shown, WhyRow, WhyRows } from './rows';
import type { EstimateContext } from './context';
import { readersUnit } from './liquids';
import { readable, unitWords, type Measures } from './measures';
import { printed } from './number-text';
import { inputOf } from './why-inputs';
import { factorDecimals, isNothing, valueText } from './why-values';

/** How deep a derivation is spread out before its steps are followed one by one. */
const DEPTH = 3;
/** Rows of a derivation before the rest is left to be followed. */
const MOST = 44;
/** A sum of more than this is not spread out inside another step, and its largest come first. */
const MANY = 12;

const OPERATORS: Readonly<Record<string, string>> = {
  sum: '+',
  product: '×',
  quotient: '÷',
  difference: '−',
  total: '+',
  'total where': '+',
};

/** Sources of what stands for a field that is not used, and of exact constants. */
const NEUTRAL = new Set([
  'does not apply here',
  'applies here',
  'by definition',
  'Decimals the figure is printed with',
]);

/** What a sheet knows of a figure, and where it is used. */
export interface SheetWhy {
  readonly explanation: Why;
  readonly usedBy: (id: string) => readonly string[];
}

/** The explanation of the total holds every step below it: worked out once, it answers for all of them. */
export function wholeWhy(context: EstimateContext): SheetWhy | undefined {
  const { money } = context.parts;
  if (money === undefined) return undefined;
  const explanation = why(money.result, 'sums/total');
  const users = new Map<string, string[]>();
  for (const step of explanation.steps.values()) {
    for (const input of step.inputs) users.set(input, [...(users.get(input) ?? []), step.id]);
  }
  return { explanation, usedBy: id => users.get(id) ?? [] };
}

/** The steps that explain a figure of the sheets; undefined when no sheet has it. */
export function stepsOf(
  { parts }: EstimateContext,
  whole: SheetWhy | undefined,
  id: string,
): Why | undefined {
  if (whole?.explanation.steps.has(id) === true) return { root: id, steps: whole.explanation.steps };
  if (parts.money?.result.has(id) === true) return why(parts.money.result, id);
  return parts.work.result.has(id) ? why(parts.work.result, id) : undefined;
}

/** Whether a step only hands a value on: a link, a carried value, a choice of one, a rounding that changes nothing. */
function passes(step: WhyStep, inputs: readonly WhyStep[]): boolean {
  return step.given === undefined && inputs.length === 1 && inputs[0]?.value === step.value;
}

/** The inputs that matter: no added nothing, no factor of one that stands for a field not used. */
function living(explanation: Why, step: WhyStep): readonly WhyStep[] {
  const inputs = step.inputs.map(id => known(explanation.steps, id));
  const isAdded = OPERATORS[step.operation] === '+' || step.operation === 'difference';
  const kept = inputs.filter(input => {
    if (isAdded && isNothing(input.value)) return false;
    const isUnused = input.value === '1' || (!isAdded && isNothing(input.value) && !isNothing(step.value));
    return !(isUnused && isNeutral(explanation, input));
  });
  return kept.length === 0 ? inputs.slice(0, 1) : kept;
}

function isNeutral(explanation: Why, step: WhyStep): boolean {
  if (step.given !== undefined) return NEUTRAL.has(step.given.source);
  return step.inputs.every(id => isNeutral(explanation, known(explanation.steps, id)));
}

/** A step without those that only hand its value on; it keeps the name of the first that has one. */
function settled(explanation: Why, step: WhyStep): { step: WhyStep; name: string; id: string } {
  let at = step;
  let named = isHidden(step) ? undefined : step;
  for (;;) {
    const inputs = living(explanation, at);
    const next = inputs[0];
    if (next === undefined || !(passes(at, inputs) || isRounding(at, inputs))) break;
    at = next;
    if (named === undefined && !isHidden(at)) named = at;
  }
  return { step: at, name: nameOf(named ?? at), id: (named ?? at).id };
}

/** A rounding is told with the step it rounds, not as a step of its own. */
function isRounding(step: WhyStep, inputs: readonly WhyStep[]): boolean {
  return (
    inputs.length === 1 &&
    (step.operation === 'rounded' || step.operation === 'dollars') &&
    step.given === undefined
  );
}

function isHidden(step: WhyStep): boolean {
  return /\.\d+$/.test(step.id);
}

/** The title without the row it repeats. */
function nameOf(step: WhyStep): string {
  return step.title;
}

/** The unit of a step, and the amount in the reader's own: the steps themselves stay in the units they are worked out in. */
function unitOf({ id, value, unit }: WhyStep, measures: Measures): string {
  const [table = '', row = ''] = id.split('/');
  const wanted = readersUnit(table.startsWith('drivers') ? row : '', unit, measures);
  const own = value === undefined || unit.includes('/') ? undefined : readable(value, unit, wanted);
  if (own === undefined || own.unit === unit) return unitWords(unit);
  return `${unitWords(unit)} (${valueText(own.value, own.unit).text} ${unitWords(own.unit)})`;
}

function shownStep(
  into: Reader,
  value: WhyStep,
  step: WhyStep,
  id: string,
  canFollow: boolean,
  least = 0,
): Shown {
  const basis = BASES.find(one => one === step.given?.basis);
  return {
    ...valueText(value.value, value.unit, least),
    unit: unitOf(value, into.measures),
    ...(canFollow ? { why: id } : {}),
    ...(step.given === undefined || basis === undefined ? {} : { basis, source: sourceWithYear(step.given) }),
  };
}

/** Who reads: whose measures stand beside those of the sheets. */
type Reader = Pick<EstimateContext, 'measures'>;

interface Spread extends Reader {
  readonly explanation: Why;
  readonly rows: WhyRow[];
}

function spread(into: Spread, parent: WhyStep, depth: number): void {
  const operator = OPERATORS[parent.operation] ?? '';
  const inputs = living(into.explanation, parent);
  const isLong = operator === '+' && inputs.length > MANY;
  const ordered = isLong ? inputs.toSorted((a, b) => sizeOf(b) - sizeOf(a)) : inputs;
  ordered.forEach((input, place) => {
    if (into.rows.length === MOST && depth === 0)
      into.rows.push({ depth, operator, value: { text: '' }, words: `${ordered.length - place} more` });
    if (into.rows.length >= MOST) return;
    const { step, name, id } = settled(into.explanation, input);
    const isGiven = step.given !== undefined;
    const isShort = !isLong && step.inputs.length <= MANY;
    const isOpen =
      !isGiven && step.inputs.length > 0 && (isHidden({ ...step, id }) || (depth < DEPTH && isShort));
    const range = rangeOf(step);
    into.rows.push({
      depth,
      operator: place === 0 ? '=' : operator,
      value: shownStep(
        into,
        input,
        step,
        id,
        !isHidden({ ...step, id }),
        factorDecimals(input, parent, ordered.length),
      ),
      words: name,
      ...(range === undefined ? {} : { range }),
    });
    if (isOpen && depth < DEPTH + 2) spread(into, step, depth + 1);
  });
}

function sizeOf({ value }: WhyStep): number {
  return Math.abs(Number(value ?? 0));
}

function rangeOf(step: WhyStep): WhyRow['range'] {
  const { low, high } = step.given ?? {};
  if (low === undefined || high === undefined || step.value === undefined) return undefined;
  const span = Number(high) - Number(low);
  const at = span <= 0 ? 0.5 : (Number(step.value) - Number(low)) / span;
  return { low: printed(low), high: printed(high), at: Math.min(1, Math.max(0, at)) };
}

/** The derivation of a figure of the sheets. */
export function sheetRows(
  context: EstimateContext,
  whole: SheetWhy | undefined,
  id: string,
): WhyRows | undefined {
  const explanation = stepsOf(context, whole, id);
  const root = explanation?.steps.get(id);
  if (explanation === undefined || root === undefined) return undefined;
  const { step } = settled(explanation, root);
  const into: Spread = { explanation, rows: [], measures: context.measures };
  if (step.given === undefined) spread(into, step, 0);
  const input = inputOf(context, step.id) ?? inputOf(context, id);
  return {
    id,
    title: nameOf(root),
    path: pathOf(id),
    value: shownStep(context, root, step, id, false),
    words: wordsOf(root, step),
    rows: into.rows.length > 0 ? into.rows : givenRows(context, step),
    usedBy: users(whole, id),
    bases: BASES,
    ...(input === undefined ? {} : input),
  };
}

function givenRows(reader: Reader, step: WhyStep): readonly WhyRow[] {
  const range = rangeOf(step);
  return [
    {
      depth: 0,
      operator: '=',
      value: shownStep(reader, step, step, step.id, false),
      words: step.given === undefined ? step.words : 'as given',
      ...(range === undefined ? {} : { range }),
    },
  ];
}

function wordsOf(root: WhyStep, step: WhyStep): string {
  if (root.value === undefined) return 'It is absent because something it needs is absent; Review says what.';
  if (step.given !== undefined) return `Given: ${sourceWithYear(step.given)}.`;
  return `Worked out as ${lowerFirst(step.words)}.`;
}

const VIEW_OF_TABLE: Readonly<Record<string, string>> = {
  lines: 'Work',
  worked: 'Work',
  hauled: 'Work',
  items: 'Work',
  stages: 'Budget',
  sums: 'Budget',
  ship: 'Vessel',
  tanks: 'Vessel',
  trades: 'Rates',
  burdens: 'Rates',
  'mark-ups': 'Rates',
};

function pathOf(id: string): string {
  const [table = '', row, column] = id.split('/');
  return [VIEW_OF_TABLE[table] ?? 'Estimate', column ?? row]
    .filter(part => part !== undefined)
    .join(', ')
    .replaceAll('-', ' ');
}

/** Who else uses the figure, by the first steps above it that have a name. */
function users(whole: SheetWhy | undefined, id: string): WhyRows['usedBy'] {
  if (whole === undefined) return [];
  const found = new Map<string, WhyStep>();
  const open = [...whole.usedBy(id)];
  for (let next = open.pop(); next !== undefined && found.size < 6; next = open.pop()) {
    const step = known(whole.explanation.steps, next);
    if (isHidden(step)) open.push(...whole.usedBy(next));
    else found.set(step.id, step);
  }
  return [...found.values()].map(step => ({
    why: step.id,
    title: step.title,
    view: VIEW_OF_TABLE[at(step.id.split('/'), 0)] ?? 'Estimate',
  }));
}
