import type { MonthAmount } from '../../cash-flow';
import type { Award, ContractResults, GrantForm, Sf424a, Sf424c } from '../../funding';
import type { ReviewRow } from '../../review';
import type { Evaluation } from '../evaluate';
import type { JsonObject } from '../json';
import type { CashPart, GrantView } from './grant-view';
import { amountsJson, inDollars, reconciliationJson } from './in-dollars';

/** The grant view as the command line prints it: money in dollars, shares 0 to 1; what is absent is left out. */
export function fundingJson({ scenario, findings: evaluated }: Evaluation, view: GrantView): JsonObject {
  const findings = [...evaluated, ...view.findings.filter(one => !evaluated.includes(one))];
  const { book, cash, contracts, procurement } = view;
  const frame = { scenario: scenario.id, contracts: contracts.map(one => contractJson(one, procurement)) };
  if (book === undefined || cash === undefined) return { ...frame, findings };
  return {
    ...frame,
    forms: Object.fromEntries(book.awards.map(award => [award.source.id, awardJson(award)])),
    federal: inDollars(book.federal),
    match: inDollars(book.match),
    indirect: inDollars(book.indirect),
    programIncome: inDollars(book.programIncome),
    bySource: book.bySource.map(({ sourceId, title, amount, leftOfCap }) => ({
      id: sourceId,
      title,
      amount: inDollars(amount),
      ...(leftOfCap !== undefined && { leftOfCap: inDollars(leftOfCap) }),
    })),
    unfunded: inDollars(book.unfunded),
    ...cashJson(cash),
    reconciliation: [book.reconciliation, cash.cash.reconciliation].map(reconciliationJson),
    findings,
  };
}

/** The rows of the quality review as the command line prints them. */
export function reviewJson(rows: readonly ReviewRow[]): JsonObject[] {
  return rows.map(({ practiceId, guide, practice, standing, evidence, remedy }) => ({
    id: practiceId,
    guide,
    practice,
    standing,
    evidence,
    remedy,
  }));
}

function cashJson({ cash, fiscalYears, drawdown, carrying, obligations, contingent }: CashPart): JsonObject {
  const { months, peak, totalPaid, totalReceived } = cash.view;
  return {
    cashGap: peak ? { month: peak.month, amount: inDollars(peak.amount) } : { amount: 0 },
    cash: months.map(({ month, paid, received, carried, gap }) => ({
      month,
      paid: inDollars(paid),
      received: inDollars(received),
      carried: inDollars(carried),
      gap: inDollars(gap),
    })),
    paid: inDollars(totalPaid),
    received: inDollars(totalReceived),
    fiscalYears: fiscalYears.map(({ fiscalYear, amount }) => ({ fiscalYear, amount: inDollars(amount) })),
    drawdown: Object.fromEntries(
      drawdown.map(({ sourceId, draws }) => [
        sourceId,
        draws.map(({ month, draw, drawn, matchSpent }) => ({
          month,
          draw: inDollars(draw),
          drawn: inDollars(drawn),
          matchSpent: inDollars(matchSpent),
        })),
      ]),
    ),
    ...(carrying !== undefined && { carrying: inDollars(carrying) }),
    obligations: obligations.map(monthJson),
    onlyIfItHappens: contingent.map(({ amount, ...one }) => ({
      ...one,
      ...(amount !== undefined && { amount: inDollars(amount) }),
    })),
  };
}

function awardJson({ source, form, indirect, income, narrative, tieOut }: Award): JsonObject {
  return {
    title: source.title,
    form: form.kind,
    ...formJson(form),
    indirect: { rate: indirect.rate, base: inDollars(indirect.base) },
    programIncome: {
      method: income.method,
      amount: inDollars(income.income),
      unused: inDollars(income.unused),
    },
    narrative: narrative.map(one => one.text),
    tieOut: tieOut.map(row => ({
      line: row.classId,
      title: row.title,
      lines: row.lineIds,
      estimate: inDollars(row.estimate),
      form: inDollars(row.form),
      narrative: inDollars(row.narrative),
      sentences: row.sentences,
      difference: inDollars(row.formDifference),
      narrativeDifference: inDollars(row.narrativeDifference),
    })),
  };
}

function formJson(form: GrantForm): JsonObject {
  return form.kind === 'SF-424A' ? form424aJson(form) : form424cJson(form);
}

function form424aJson(form: Sf424a): JsonObject {
  const { sectionA, sectionB, sectionC, sectionD, sectionE } = form;
  return {
    sectionA: {
      lines: sectionA.lines.map(({ activityId, title, listingNumber, federal, nonFederal, total }) => ({
        id: activityId,
        title,
        listingNumber,
        ...amountsJson({ federal, nonFederal, total }),
      })),
      total: amountsJson({ ...sectionA.total }),
    },
    sectionB: sectionB.map(({ id, title, byActivity, total }) => ({
      id,
      title,
      byActivity: amountsJson(byActivity),
      total: inDollars(total),
    })),
    sectionC: amountsJson({ ...sectionC }),
    sectionD: {
      federal: sectionD.federal.map(inDollars),
      nonFederal: sectionD.nonFederal.map(inDollars),
    },
    sectionE: sectionE.map(inDollars),
  };
}

function form424cJson({ lines, line17 }: Sf424c): JsonObject {
  return {
    lines: lines.map(({ id, title, total, notAllowable, allowable }) => ({
      id,
      title,
      ...amountsJson({ total, notAllowable, allowable }),
    })),
    line17: { share: line17.share, federal: inDollars(line17.federal), capped: line17.isCapped },
  };
}

function contractJson(
  { contractId, amount, chosen, results }: ContractResults,
  procurement: GrantView['procurement'],
): JsonObject {
  const bought = procurement.find(one => one.contractId === contractId);
  return {
    id: contractId,
    amount: inDollars(amount),
    ...(chosen && { chosen }),
    ...(bought && { procurement: bought.method }),
    results: results.map(({ contractClass, base, indirect }) => ({
      class: contractClass,
      ...amountsJson({ base, indirect }),
    })),
  };
}

function monthJson({ month, amount }: MonthAmount): JsonObject {
  return { month, amount: inDollars(amount) };
}
