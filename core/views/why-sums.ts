import { BASES, UNCHECKED_BASES, type Basis } from '../base';
import { stageTitle } from '../estimate';
import { STAGES } from '../work';
import { monthOfLine, monthWords } from './budget-tables';
import type { EstimateContext } from './context';
import { ELEMENT_TITLES, ELEMENTS, type ElementKey } from './elements';
import { printed, roundText } from './number-text';
import type { WhyRow, WhyRows } from './rows';

/** One part of a sum: whole cents, its name, and where it comes from. */
export interface Part {
  readonly cents: number;
  readonly words: string;
  readonly why?: string;
}

function amount(cents: number): string {
  return printed(roundText((cents / 100).toFixed(2), 2));
}

/** A derivation that is a sum of parts, largest first; nothing that is nothing. */
export function sumRows(id: string, title: string, words: string, parts: readonly Part[]): WhyRows {
  const kept = parts.filter(part => part.cents !== 0).toSorted((a, b) => b.cents - a.cents);
  const total = kept.reduce((sum, part) => sum + part.cents, 0);
  const rows = kept.map((part, at): WhyRow => ({
    depth: 0,
    operator: at === 0 ? '=' : '+',
    value: { text: amount(part.cents), unit: '$', ...(part.why === undefined ? {} : { why: part.why }) },
    words: part.words,
  }));
  if (rows.length === 0)
    rows.push({
      depth: 0,
      operator: '=',
      value: { text: '0.00', unit: '$' },
      words: 'no line has any of it',
    });
  return {
    id,
    title,
    path: 'Budget, sum',
    value: { text: amount(total), unit: '$' },
    words,
    rows,
    usedBy: [],
    bases: BASES,
  };
}

type Answer = (context: EstimateContext, rest: string) => WhyRows | undefined;

function isElement(text: string): text is ElementKey {
  return ELEMENTS.some(element => element === text);
}

function stageElement(context: EstimateContext, rest: string): WhyRows | undefined {
  const [stage = '', element = ''] = rest.split(':');
  if (!isElement(element)) return undefined;
  const lines = context.summary?.lines.filter(line => line.stage === stage) ?? [];
  const title = STAGES.find(one => one === stage);
  return sumRows(
    `stage:${rest}`,
    `${ELEMENT_TITLES[element]}, ${title === undefined ? stage : stageTitle(title)}`,
    'The sum of this element over the lines of the stage.',
    lines.map(line => ({
      cents: line.elements[element]?.cents ?? 0,
      words: line.title,
      why: `lines/${line.id}/${element}`,
    })),
  );
}

function elements(prefix: string): Answer {
  return (context, rest) => {
    const keys = rest.split('+').filter(isElement);
    const parts = STAGES.flatMap(stage =>
      keys.map(element => ({
        cents: (context.summary?.lines ?? [])
          .filter(line => line.stage === stage)
          .reduce((sum, line) => sum + (line.elements[element]?.cents ?? 0), 0),
        words: `${stageTitle(stage)}${keys.length > 1 ? `, ${ELEMENT_TITLES[element].toLowerCase()}` : ''}`,
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

function lineSum(
  prefix: string,
  title: (context: EstimateContext, rest: string) => string,
  isIn: (context: EstimateContext, line: string, rest: string) => boolean,
): Answer {
  return (context, rest) =>
    sumRows(
      `${prefix}:${rest}`,
      title(context, rest),
      'The sum of the lines that belong to it.',
      (context.summary?.lines ?? [])
        .filter(line => isIn(context, line.id, rest))
        .map(line => ({ cents: line.total?.cents ?? 0, words: line.title, why: `lines/${line.id}/total` })),
    );
}

/** The money that rests on a basis: elements by their own, mark-ups in proportion to the elements they follow. */
function basisSum(context: EstimateContext, rest: string): WhyRows | undefined {
  const byBasis = context.summary?.byBasis;
  if (byBasis === undefined) return undefined;
  if (rest === 'unchecked') {
    const rows = sumRows(
      'basis:unchecked',
      'Not yet checked',
      'Money that rests on judgement, memory or invented figures.',
      UNCHECKED_BASES.map(basis => ({ cents: byBasis[basis].cents, words: basis, why: `basis:${basis}` })),
    );
    const share = context.summary?.uncheckedShare;
    return share === undefined
      ? rows
      : { ...rows, words: `${rows.words} It is ${roundText((share * 100).toFixed(4), 1)} % of the total.` };
  }
  const basis: Basis | undefined = BASES.find(one => one === rest);
  if (basis === undefined) return undefined;
  const lines = context.summary?.lines ?? [];
  const parts = lines.flatMap(line =>
    ELEMENTS.filter(element => line.bases[element] === basis).map(element => ({
      cents: line.elements[element]?.cents ?? 0,
      words: `${line.title}, ${ELEMENT_TITLES[element].toLowerCase()}`,
      why: `lines/${line.id}/${element}`,
    })),
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

function total(context: EstimateContext): WhyRows | undefined {
  const lines = context.summary?.lines ?? [];
  const parts = STAGES.map(stage => ({
    cents: lines
      .filter(line => line.stage === stage)
      .reduce((sum, line) => sum + (line.total?.cents ?? 0), 0),
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
    context.summary?.budget === undefined
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
  month: lineSum(
    'month',
    (_context, rest) => (rest === '' ? 'Without a month' : monthWords(rest)),
    (context, line, rest) => (monthOfLine(context, line) ?? '') === rest,
  ),
};

/** The derivation of a sum that stands on no sheet by itself. */
export function sumWhy(context: EstimateContext, id: string): WhyRows | undefined {
  if (id === 'sums/total' && context.summary?.total !== undefined) return total(context);
  const stage = /^stages\/([a-z-]+)\/total$/.exec(id)?.[1];
  if (stage !== undefined) {
    const title = STAGES.find(one => one === stage);
    const answer = lineSum(
      '',
      () => (title === undefined ? stage : stageTitle(title)),
      (other, line) => other.summary?.lines.find(one => one.id === line)?.stage === stage,
    );
    const rows = answer(context, '');
    return rows === undefined ? undefined : { ...rows, id };
  }
  const at = id.indexOf(':');
  return at < 0 ? undefined : SUMS[id.slice(0, at)]?.(context, id.slice(at + 1));
}
