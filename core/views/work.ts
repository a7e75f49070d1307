import { known, lowerFirst, type Finding } from '../base';
import { idOf } from '../sheet';
import type { WorkItem } from '../work';
import type { LineBases } from './bases';
import { dollarCell, type EstimateContext } from './context';
import { datesSaid } from './dates-said';
import { changeOf, groupBy, indexBy } from './index-of';
import { dollars, printed } from './number-text';
import { coverAdditions, coverHint, coverTable, quoteTable } from './quotes';
import { dateWords } from './schedule-axis';
import type { Sentence, Shown } from './rows';
import type { ShownMoney } from './shown-money';
import { timedCell } from './timed';
import { hoursOf, itemsOfStage, optionTable, payeeTable, workTable } from './work-tables';
import { workSentence } from './work-sentence';
import type { WorkLine, WorkStage, WorkView } from './window-rows';

/** The work of the scenario: items as sentences under their stages, and the same as tables. */
export function workView(context: EstimateContext, money: ShownMoney, bases: LineBases): WorkView {
  return {
    sentence: sentence(context, money),
    stages: money.stages.map(stage => workStage(context, money, bases, stage)),
    table: workTable(context, money, bases),
    byPayee: payeeTable(context, money),
    options: optionTable(context),
    quotes: quoteTable(context),
    covers: coverTable(context),
    coverAdditions: coverAdditions(context),
    coverHint: coverHint(context.evaluation),
    leftOut: leftOut(context),
  };
}

function sentence(context: EstimateContext, money: ShownMoney): Sentence {
  const { parts } = context;
  const count = `${printed(String(parts.items.length))} work items, `;
  const hours = hoursOf(context, parts.items, 'hours:all');
  const total = money.total('total');
  const sums = parts.money?.sums;
  if (total === undefined || sums === undefined)
    return [
      count,
      ...(hours.absent === true ? ['the hours not known yet'] : [hours, ' hours']),
      '; the total leaves something out, see Review.',
    ];
  return [count, hours, ' hours, ', { text: dollars(total * 100), why: idOf(sums.total) }, '.'];
}

function workStage(
  context: EstimateContext,
  money: ShownMoney,
  bases: LineBases,
  stage: ShownMoney['stages'][number],
): WorkStage {
  return {
    id: stage.id,
    title: stage.title,
    count: String(stage.lines.length),
    hours: hoursOf(context, itemsOfStage(context, stage), `hours:${stage.id}`),
    cost: dollarCell(money.stage(stage.id, 'total'), `stages/${stage.id}/total`),
    lines: stage.lines.map(line => workLine(context, money, bases, line.id)),
  };
}

function workLine(context: EstimateContext, money: ShownMoney, bases: LineBases, id: string): WorkLine {
  const { evaluation, parts } = context;
  const item = known(itemsById(parts.items), id);
  const { title } = item;
  const adjustment = changeOf(evaluation.project, id);
  return {
    id,
    title,
    says: workSentence(context, item),
    cost: dollarCell(money.line(id, 'total'), `lines/${id}/total`),
    hours: hoursCell(context, item),
    basis: bases(id),
    findings: (findingsByItem(evaluation.findings).get(id) ?? []).map(spoken),
    note: {
      at: `/items/${id}/note`,
      kind: 'text',
      value: adjustment?.note ?? '',
      label: `Note on ${lowerFirst(title)}`,
    },
    quotes: evaluation.project.quotes
      .filter(quote => quote.covers.some(cover => cover.item === id))
      .map(
        quote =>
          `${quote.chosen ? 'Quote relied on' : 'Quote'}: ${quote.vendor}, dated ${dateWords(quote.dated)}, valid until ${dateWords(quote.validUntil)}.`,
      ),
  };
}

function hoursCell(context: EstimateContext, item: WorkItem): Shown {
  const shown = timedCell(context, item, 'hours', 0);
  return shown.text === '0' ? { text: '–', why: shown.why } : shown;
}

const itemsById = indexBy((item: WorkItem) => item.id);

/** Findings by the item they are about: those at `/items/ID` and below. */
const findingsByItem = groupBy(({ place }: Finding) =>
  place.startsWith('/items/') ? place.split('/')[2] : undefined,
);

function spoken(finding: Finding): string {
  return datesSaid(
    [finding.message, finding.meaning, finding.remedy].filter(part => part !== undefined).join(' '),
  );
}

/** Items of the library that the choices leave out, which a planner can take in. */
function leftOut({ evaluation, parts }: EstimateContext): WorkView['leftOut'] {
  const chosen = new Set(parts.items.map(item => item.id));
  return evaluation.library.items
    .filter(item => !chosen.has(item.id))
    .map(item => ({
      id: item.id,
      title: item.title,
      why: reason(item.when),
      include: {
        at: `/items/${item.id}/include`,
        kind: 'switch',
        value: 'false',
        label: `${lowerFirst(item.title)} taken in`,
      },
    }));
}

function reason(when: readonly object[]): string {
  return when.length === 0 ? 'Taken out by the planner.' : 'The choices or the ship do not call for it.';
}
