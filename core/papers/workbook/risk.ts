import { pairedRisks, type Comparison, type RiskFacts } from '../../scenario';
import type { Evaluation } from '../../evaluation';
import { letterOfScenario } from '../letter-of-scenario';
import { date, headingRow, number, text } from './cells';
import { inOrder, type SheetRow } from './rows';
import type { PaperCell, PaperSheet } from './model';

/** How sure cost and finish are, by simulation: values of the program, since a workbook cannot simulate. */
export function riskSheet(comparison: Comparison, shown: Evaluation): PaperSheet | undefined {
  const own = comparison.risks.find(({ scenario }) => scenario === shown.scenario.id);
  if (own === undefined) return undefined;
  const letterOf = (id: string) => letterOfScenario(comparison.evaluations, id);
  const budget = shown.estimate?.money && 'sums_budget';
  return {
    name: 'Risk',
    cells: [
      text(1, 1, 'How sure cost and finish are', 'title'),
      text(
        2,
        1,
        `Values of the program: ${own.trials} simulated runs, seed ${own.seed}. The same seed gives the same figures.`,
        'note',
      ),
      ...headingRow(4, [
        'Scenario',
        'Middle of the runs, USD',
        '80 of 100 runs, USD',
        '90 of 100 runs, USD',
        'Finish, middle',
        'Finish, 80 of 100',
      ]),
      ...inOrder(comparison.risks, 5, (risk, row) => riskRow(risk, row, letterOf)),
      ...afterwards(comparison, own, letterOf, 6 + comparison.risks.length, budget),
    ],
    widths: [56, 20, 20, 20, 16, 16],
    headingRows: 4,
    landscape: true,
  };
}

function riskRow(risk: RiskFacts, row: number, letterOf: (id: string) => string): PaperCell[] {
  return [
    text(row, 1, letterOf(risk.scenario)),
    number(row, 2, cents(risk.p50), 2, 'result'),
    number(row, 3, cents(risk.p80), 2, 'result'),
    number(row, 4, cents(risk.p90), 2, 'result'),
    date(row, 5, risk.finishP50),
    date(row, 6, risk.finishP80),
  ];
}

/** Budget against the runs, pairs of scenarios, and what drives the cost. */
function afterwards(
  comparison: Comparison,
  own: RiskFacts,
  letterOf: (id: string) => string,
  top: number,
  budget: string | undefined,
): PaperCell[] {
  const at = comparison.risks.indexOf(own) + 5;
  const pairs: SheetRow[] = pairedRisks(comparison).map(({ from, to, firstCheaper }) => [
    `With the same luck ${letterOf(from)} costs less than ${letterOf(to)}, share of the runs`,
    Math.round(firstCheaper * 1000) / 1000,
  ]);
  const drivers: SheetRow[] = own.drivers.map(({ title, share }) => [title, Math.round(share * 1000) / 1000]);
  const first = top + 2 + pairs.length;
  const shortfall = budget === undefined ? undefined : shortfallOf(own, comparison);
  return [
    ...(shortfall === undefined
      ? []
      : [
          text(top, 1, '80 of 100 runs less the budget of this workbook, USD', 'total'),
          {
            row: top,
            column: 2,
            content: {
              kind: 'formula' as const,
              formula: `ROUND(C${at}-sums_budget,2)`,
              result: shortfall,
              format: 'money' as const,
              decimals: 2,
            },
            style: 'total' as const,
          },
        ]),
    ...inOrder(pairs, top + 1, (row, at2) => plainRow(row, at2)),
    ...headingRow(first, ['What drives the cost', 'Share of its variance']),
    ...inOrder(drivers, first + 1, (row, at2) => plainRow(row, at2)),
  ];
}

function shortfallOf(own: RiskFacts, { evaluations }: Comparison): number | undefined {
  const estimate = evaluations.find(({ scenario }) => scenario.id === own.scenario)?.estimate;
  const budget = estimate?.money?.result.money(estimate.money.sums.budget);
  return budget === undefined ? undefined : (Math.round(own.p80 * 100) - budget.cents) / 100;
}

function plainRow([title, value]: SheetRow, row: number): PaperCell[] {
  return [text(row, 1, String(title)), number(row, 2, Number(value), 3, 'result')];
}

/** Dollars to the cent, as they are printed. */
function cents(dollars: number): number {
  return Math.round(dollars * 100) / 100;
}
