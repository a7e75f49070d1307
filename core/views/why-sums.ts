import { BASES, lowerFirst, UNCHECKED_BASES, type Basis } from '../base';
import { stageTitle } from '../estimate';
import type { EstimateLine, EstimateSummary } from '../evaluation';
import { STAGES } from '../work';
import { monthsOfLines } from '../papers';
import { monthWords } from '../calendar';
import { ABSENT, type EstimateContext } from './context';
import { ELEMENT_TITLES, ELEMENTS, type ElementKey } from './elements';
import { printed, roundText } from './number-text';
import type { Shown, WhyRow, WhyRows } from './rows';

/** One part of a sum: whole cents, its name, and where it comes from. A part that is not known leaves no sum. */
export interface Part {
  readonly cents: number | undefined;
  readonly words: string;
  readonly why?: string;
}

function amount(cents: number | undefined): Shown {
  return cents === undefined ? ABSENT : { text: printed(roundText((cents / 100).toFixed(2), 2)), unit: '$' };
}

/** A derivation that is a sum of parts, those not known first, then the largest; nothing that is nothing. */
export function sumRows(id: string, title: string, words: string, parts: readonly Part[]): WhyRows {
  const kept = parts.filter(part => part.cents !== 0).toSorted((a, b) => largestFirst(a.cents, b.cents));
  const rows = kept.map((part, at): WhyRow => ({
    depth: 0,
    operator: at === 0 ? '=' : '+',
    value: { ...amount(part.cents), ...(part.why === undefined ? {} : { why: part.why }) },
    words: part.words,
  }));
  if (rows.length === 0)
    rows.push({ depth: 0, operator: '=', value: amount(0), words: 'no line has any of it' });
  return {
    id,
    title,
    path: 'Budget, sum',
    value: amount(sumOf(kept.map(part => part.cents))),
    words,
    rows,
    usedBy: [],
    bases: BASES,
  };
}

/** Order of the parts of a sum: those not known first, then the largest. */
export function largestFirst(a: number | undefined, b: number | undefined): number {
  if (a !== undefined && b !== undefined) return b - a;
  return Number(a !== undefined) - Number(b !== undefined);
}

/** A sum; not known while one of its parts is not. */
export function sumOf(parts: readonly (number | undefined)[]): number | undefined {
  const known = parts.filter(cents => cents !== undefined);
  return known.length < parts.length ? undefined : known.reduce((sum, cents) => sum + cents, 0);
}

/** An estimate with its money in figures. */
interface Priced {
  readonly context: EstimateContext;
  readonly summary: EstimateSummary;
}

type Answer = (priced: Priced, rest: string) => WhyRows | undefined;

function isElement(text: string): text is ElementKey {
  return ELEMENTS.some(element => element === text);
}

function stageElement({ summary }: Priced, rest: string): WhyRows | undefined {
  const [named, element = ''] = rest.split(':');
  const stage = STAGES.find(one => one === named);
  if (stage === undefined || !isElement(element)) return undefined;
  return sumRows(
    `stage:${rest}`,
    `${ELEMENT_TITLES[element]}, ${stageTitle(stage)}`,
    'The sum of this element over the lines of the stage.',
    summary.lines
      .filter(line => line.stage === stage)
      .map(line => ({
        cents: line.elements[element]?.cents,
        words: line.title,
        why: `lines/${line.id}/${element}`,
      })),
  );
}

function elements(prefix: string): Answer {
  return ({ summary }, rest) => {
    const keys = rest.split('+').filter(isElement);
    const parts = STAGES.flatMap(stage =>
      keys.map(element => ({
        cents: sumOf(
          summary.lines.filter(line => line.stage === stage).map(line => line.elements[element]?.cents),
        ),
        words: `${stageTitle(stage)}${keys.length > 1 ? `, ${lowerFirst(ELEMENT_TITLES[element])}` : ''}`,
        why: `stage:${stage}:${element}`,
      })),
    );
    return sumRows(
      `${prefix}:${rest}`,
      keys.map(key => ELEMENT_TITLES[key]).join(' and '),
      'The sum over the stages.',
      parts,
    );
  };
}

/** A sum of whole lines, each at its total. */
export function lineParts(lines: readonly EstimateLine[]): readonly Part[] {
  return lines.map(line => ({
    cents: line.total?.cents,
    words: line.title,
    why: `lines/${line.id}/total`,
  }));
}

function lineSum(
  prefix: string,
  title: (context: EstimateContext, rest: string) => string,
  isIn: (context: EstimateContext, line: string, rest: string) => boolean,
): Answer {
  return ({ context, summary }, rest) =>
    sumRows(
      `${prefix}:${rest}`,
      title(context, rest),
      'The sum of the lines that belong to it.',
      lineParts(summary.lines.filter(line => isIn(context, line.id, rest))),
    );
}

/** What the lines spend in a month: each by the days of its work that fall in it. */
function monthSum({ context, summary }: Priced, rest: string): WhyRows {
  const months = monthsOfLines(context.parts, summary);
  const parts = summary.lines.flatMap(({ id, title }): Part[] => {
    const all = months.get(id) ?? [];
    return all
      .filter(({ month = '' }) => month === rest)
      .map(({ amount }) => ({
        cents: amount,
        words: all.length > 1 ? `${title}, its days in this month` : title,
        why: `lines/${id}/total`,
      }));
  });
  return sumRows(
    `month:${rest}`,
    rest === '' ? 'Without a month' : monthWords(rest),
    'The lines, each spread over the calendar days from its start to its finish.',
    parts,
  );
}

/** The money that rests on a basis: elements by their own, mark-ups in proportion to the elements they follow. */
function basisSum({ summary }: Priced, rest: string): WhyRows | undefined {
  const { byBasis, lines, uncheckedShare: share } = summary;
  if (byBasis === undefined) return undefined;
  if (rest === 'unchecked') {
    const rows = sumRows(
      'basis:unchecked',
      'Not yet checked',
      'Money that rests on judgement, memory or invented figures.',
      UNCHECKED_BASES.map(basis => ({ cents: byBasis[basis].cents, words: basis, why: `basis:${basis}` })),
    );
    return share === undefined
      ? rows
      : { ...rows, words: `${rows.words} It is ${roundText((share * 100).toFixed(4), 1)} % of the total.` };
  }
  const basis: Basis | undefined = BASES.find(one => one === rest);
  if (basis === undefined) return undefined;
  const parts = lines.flatMap(line =>
    ELEMENTS.flatMap(element => {
      const amount = line.elements[element];
      if (amount === undefined || line.bases[element] !== basis) return [];
      const words = `${line.title}, ${lowerFirst(ELEMENT_TITLES[element])}`;
      return [{ cents: amount.cents, words, why: `lines/${line.id}/${element}` }];
    }),
  );
  const direct = parts.reduce((sum, part) => sum + part.cents, 0);
  const markUp = {
    cents: byBasis[basis].cents - direct,
    words: 'Mark-ups that follow these elements',
    why: 'element:mark-up',
  };
  return sumRows(
    `basis:${rest}`,
    `Money that rests on: ${basis}`,
    'Each element of a line takes the weakest basis among its givens; its mark-ups follow it.',
    [...parts, markUp],
  );
}

function total({ summary }: Priced): WhyRows {
  const parts = STAGES.map(stage => ({
    cents: sumOf(summary.lines.filter(line => line.stage === stage).map(line => line.total?.cents)),
    words: stageTitle(stage),
    why: `stages/${stage}/total`,
  }));
  const rows = sumRows(
    'sums/total',
    'Total',
    'What the owner pays: contract work at the contractor’s price and the owner’s own cost, at the month of spending. No contingency.',
    parts,
  );
  const budget =
    summary.budget === undefined
      ? []
      : [{ why: 'sums/budget', title: 'Total with contingency', view: 'Budget' }];
  return { ...rows, usedBy: budget };
}

const SUMS: Readonly<Record<string, Answer>> = {
  stage: stageElement,
  element: elements('element'),
  payee: elements('payee'),
  basis: basisSum,
  material: lineSum(
    'material',
    (context, rest) =>
      context.evaluation.library.materials.find(one => one.id === rest)?.title ?? 'Not for one material',
    (context, line, rest) => (context.parts.items.find(item => item.id === line)?.meets[0] ?? '') === rest,
  ),
  month: monthSum,
};

/** What a sum opens while nothing has a date: it is absent, and why. */
function unpriced(id: string): WhyRows {
  return sumRows(
    id,
    'Not priced yet',
    'Without a schedule nothing has a date, and without a date nothing has a price; Review says what stops it.',
    [{ cents: undefined, words: 'all lines wait for the schedule' }],
  );
}

/** The derivation of a sum that stands on no sheet by itself. */
export function sumWhy(context: EstimateContext, id: string): WhyRows | undefined {
  const stage = /^stages\/([a-z-]+)\/total$/.exec(id)?.[1];
  const at = id.indexOf(':');
  const sum = at < 0 ? undefined : SUMS[id.slice(0, at)];
  const { summary } = context;
  if (summary === undefined)
    return id === 'sums/total' || stage !== undefined || sum !== undefined ? unpriced(id) : undefined;
  const priced = { context, summary };
  if (id === 'sums/total' && summary.total !== undefined) return total(priced);
  return stage === undefined ? sum?.(priced, id.slice(at + 1)) : stageWhy(priced, stage);
}

function stageWhy({ summary }: Priced, named: string): WhyRows | undefined {
  const stage = STAGES.find(one => one === named);
  if (stage === undefined) return undefined;
  const lines = lineParts(summary.lines.filter(line => line.stage === stage));
  return sumRows(
    `stages/${stage}/total`,
    stageTitle(stage),
    'The sum of the lines that belong to it.',
    lines,
  );
}
