import { UNCHECKED_BASES } from '../base';
import { monthWords } from '../calendar';
import { STAGES, dollars, sumCents } from '../cash-flow';
import { limitOf } from './data';
import type { ReviewLine } from './input';
import { cannotTell, judge, met, notMet, type CheckContext, type Checks, type Fault } from './standing';

/** Checks of completeness and documentation of the estimate. @source GAO-20-195G, practices in our own words. */
export const COST_CHECKS: Checks<
  | 'whole-life'
  | 'baseline-defined'
  | 'structure'
  | 'assumptions'
  | 'sources'
  | 'repeatable'
  | 'baseline-agrees'
  | 'approval'
  | 'best-method'
  | 'inflation'
  | 'arithmetic'
> = {
  'whole-life': ({ input }) => {
    const missing = STAGES.filter(
      stage => !input.excludedStages.includes(stage) && !input.lines.some(line => line.stage === stage),
    );
    return judge(
      missing.map(stage => ({ id: stage, evidence: `the stage ${stage} has no line` })),
      STAGES.length,
      'every stage has a line or is left out in writing',
    );
  },
  'baseline-defined': ({ input }) => {
    if (input.definition.length === 0) return cannotTell('no list of particulars and papers was kept');
    const unknown = input.definition.filter(item => !item.isKnown);
    return judge(
      unknown.map(item => ({ id: item.title, evidence: `unknown: ${item.title}` })),
      input.definition.length,
      `all ${input.definition.length} particulars and papers are known`,
    );
  },
  structure: ({ input }) =>
    judge(
      input.lines.flatMap((line, index) => {
        const first = input.lines.slice(0, index).find(other => isSameLine(other, line));
        return first ? [{ id: line.id, evidence: `${line.title} stands twice in ${line.stage}` }] : [];
      }),
      input.lines.length,
      'no line stands twice',
    ),
  assumptions: context =>
    overLines(
      context,
      line => UNCHECKED_BASES.includes(line.basis) && isBlank(line.assumption),
      line => `${line.title} has the basis “${line.basis}” and names no assumption`,
      'every unchecked figure names its assumption',
    ),
  sources: context =>
    overLines(
      context,
      line => isBlank(line.source),
      line => `${line.title} names no source`,
      'every line names its source',
    ),
  repeatable: context =>
    overLines(
      context,
      line => line.basis !== 'quoted' && isBlank(line.workings),
      line => `${line.title} is a lump sum of ${dollars(line.total)} and no quote`,
      'every line has quantity and rate, or a quote',
    ),
  'baseline-agrees': context => {
    const { schedule } = context.input;
    if (!schedule) return cannotTell('there is no schedule to compare with');
    const [first, last] = [schedule.start.slice(0, 7), schedule.finish.slice(0, 7)];
    return overLines(
      context,
      line =>
        line.followsFinish !== true &&
        ((line.firstMonth ?? first) < first || (line.lastMonth ?? last) > last),
      line =>
        `${line.title} is spent from ${monthWords(line.firstMonth ?? first)} to ${monthWords(line.lastMonth ?? last)}, outside the schedule`,
      monthsOfAllMoney(context, first, last),
    );
  },
  approval: ({ input }) =>
    input.approval && !isBlank(input.approval.by)
      ? met(`agreed by ${input.approval.by} on ${input.approval.on}`)
      : notMet('nobody is named who reviewed and agreed'),
  'best-method': context =>
    overLines(
      context,
      line => isBig(line, context) && UNCHECKED_BASES.includes(line.basis),
      line => `${line.title}, ${dollars(line.total)}, has the basis “${line.basis}”`,
      'no big line rests on an unchecked figure',
    ),
  inflation: context => {
    if (!context.input.isEscalated) return notMet('the money is not carried to the month of spending');
    return overLines(
      context,
      line => line.priceYear !== context.input.priceYear && !line.isNormalised,
      line =>
        `${line.title} is in prices of ${line.priceYear}, the estimate in prices of ${context.input.priceYear}`,
      `prices of ${context.input.priceYear}, carried to the month of spending`,
    );
  },
  arithmetic: context => {
    const { lines, total } = context.input;
    const sum = sumCents(lines.map(line => line.total));
    const off: Fault[] = lines
      .filter(line => line.elementSum !== line.total)
      .map(line => ({
        id: line.id,
        evidence: `the elements of ${line.title} add up to ${dollars(line.elementSum)}, not ${dollars(line.total)}`,
      }));
    const whole = { id: 'total', evidence: `the lines add up to ${dollars(sum)}, not ${dollars(total)}` };
    return judge(
      sum === total ? off : [...off, whole],
      lines.length + 1,
      'every line and the total add up to the cent',
    );
  },
};

/** Whether a line is big enough for a reviewer to ask about it. */
export function isBig(line: ReviewLine, { input, data }: CheckContext): boolean {
  return line.total >= limitOf(data, 'big-line') * input.total;
}

/** Judges the lines that break a practice against all lines. */
export function overLines(
  { input }: CheckContext,
  breaks: (line: ReviewLine) => boolean,
  says: (line: ReviewLine) => string,
  ground: string,
): ReturnType<typeof judge> {
  const faults = input.lines.filter(breaks).map(line => ({ id: line.id, evidence: says(line) }));
  return judge(faults, input.lines.length, ground);
}

/** The months of all lines, and why some lie after the schedule. */
function monthsOfAllMoney({ input }: CheckContext, first: string, last: string): string {
  const begins = input.lines.map(line => line.firstMonth ?? first).toSorted()[0] ?? first;
  const ends =
    input.lines
      .map(line => line.lastMonth ?? last)
      .toSorted()
      .at(-1) ?? last;
  if (ends <= last) return `all money falls between ${monthWords(begins)} and ${monthWords(ends)}`;
  return `the money runs from ${monthWords(begins)} to ${monthWords(ends)}; what comes after the schedule, which ends in ${monthWords(last)}, is owed after the sinking`;
}

function isSameLine(a: ReviewLine, b: ReviewLine): boolean {
  if (a.id === b.id) return true;
  return a.stage === b.stage && a.title.trim().toLowerCase() === b.title.trim().toLowerCase();
}

function isBlank(text: string | undefined): boolean {
  return text === undefined || text.trim() === '';
}
