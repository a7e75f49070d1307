import type { Evaluation } from '../../evaluation';
import type { MoneySheet } from '../../estimate';
import { listSheet } from './lists';
import type { PaperSheet } from './model';

/** What stands where, and how to use it. */
const READ_ME: readonly (readonly [string, string])[] = [
  ['Cover', 'The request in figures, with one check over all checks.'],
  ['Comparison', 'The scenarios side by side, and the steps that separate them.'],
  ['Roll-up', 'Total by stage and element: live sums over the sheet Lines.'],
  ['Cash by month', 'When the work is spent, and the running total.'],
  ['Schedule, Time chart', 'Dates from the program: values, since a workbook cannot level crews.'],
  ['Lines', 'One row a line of work: quantity, hours, elements, mark-ups, total, each a live formula.'],
  [
    'Single figures and what follows',
    'Quantities, crews, rates, price index, disposal: what the lines draw from.',
  ],
  ['Assumptions, Sources', 'Every given figure with its unit, range, basis, source and year.'],
  [
    'Inputs',
    'Every figure that may be changed, once. Its sand-coloured cells are open; everything follows them.',
  ],
  [
    'Taking changes back',
    'The program reads the sheet Inputs again and shows each change before it takes it.',
  ],
  ['Risk, Upright screen', 'Values of the program: a workbook can neither simulate nor flood a ship.'],
  ['Funding forms', 'Who bears the cost, and each form against the estimate.'],
  ['Form sections', 'Each form as it is filled in, section by section; its sums are live.'],
  ['Cash of the owner', 'What the owner pays, gets back and carries by month.'],
  ['Labour and crews', 'Hours and labour by crew: live sums over the sheet Lines.'],
  ['Shaded grey', 'Given figures that are changed in the program, since other parts of it depend on them.'],
  ['Shaded grey-green', 'Values of the schedule. Change dates in the program: the workbook cannot.'],
  [
    'Protection',
    'Sheets are protected without a password, against slips only. Unprotect them to put in rows.',
  ],
  ['New rows', 'Put them in above the guard row of a table: all sums take them in.'],
  ['Signs', 'Costs are positive, credits negative. Money is in US dollars, rounded once, at the line.'],
];

/** How to read the workbook. */
export function readMeSheet(): PaperSheet {
  return listSheet(
    'Read me',
    'How to read this workbook',
    'Each sheet in one sentence.',
    ['What', 'How'],
    READ_ME,
    [34, 100],
  );
}

const TERMS: readonly (readonly [string, string])[] = [
  ['acceptance', 'The agency’s written word that the ship is clean enough to be sunk.'],
  ['activity', 'A piece of work with a start, a finish and a crew.'],
  [
    'basis',
    'Where a figure comes from: quoted, surveyed, published, common practice, judgement, from memory, invented.',
  ],
  ['budget', 'Total and contingency.'],
  ['contingency', 'Money for what an estimate of this kind misses; not part of the total.'],
  ['driver', 'A quantity of the ship that work scales from, such as tank surface.'],
  ['element', 'What a cost is made of: labour, equipment, material, disposal, subcontract, fee, mark-up.'],
  ['escalation', 'The rise of prices from the price date to the month of spending.'],
  ['finding', 'Something wrong or open in the data. The figure it concerns is absent, never zero.'],
  ['guard row', 'An empty row below a table that every sum takes in.'],
  ['lightship', 'The weight of the ship without cargo, fuel, stores and crew.'],
  ['long ton', '2,240 pounds. A short ton is 2,000 pounds, a tonne 1,000 kilograms.'],
  ['mark-up', 'Overhead, profit, bond, insurance and tax of the contractor.'],
  [
    'owner’s cost',
    'What the owner pays beside the contract: title, permits, surveys, inspection, monitoring.',
  ],
  ['scenario', 'One way to prepare and sink the ship: what differs from the project.'],
  ['screening', 'A first look with simple means. Not a naval architect’s study.'],
  ['total', 'The owner’s cost at the month of spending, without contingency.'],
  ['total float', 'Work days an activity can start later without a later finish.'],
  ['work day', 'A day on which the calendar of the activity works; not the same as a calendar day.'],
];

/** The words of the trade that the workbook uses. */
export function glossarySheet(): PaperSheet {
  return listSheet('Glossary', 'Words used here', 'One meaning each.', ['Word', 'Meaning'], TERMS, [24, 110]);
}

/** What the estimate is made from, in sentences a reviewer can check. */
export function basisSheet(evaluation: Evaluation, money: MoneySheet): PaperSheet {
  const { project, estimate } = evaluation;
  const { vessel, site, rates, contingency } = project;
  const rows: (readonly [string, string])[] = [
    [
      'Ship',
      `${vessel.name}, ${vessel.hullType}, built ${vessel.built}, length ${vessel.length.value} ${vessel.length.unit}`,
    ],
    [
      'Site',
      `${site.name}, ${site.county}; depth ${site.waterDepth.value} ${site.waterDepth.unit}, tow ${site.towDistance.value} ${site.towDistance.unit} from ${site.port}`,
    ],
    ['Price date', rates.priceDate],
    ['Rate book', rates.book],
    ['Lines', `${money.lines.scope.rows.length} lines from the library of work items and the project’s own`],
    [
      'Quantities',
      'From particulars by the driver’s relationship, replaced by measured quantities where there are any',
    ],
    ['Hours', 'Quantity × hours for one × factor of the conditions, and hours to set up'],
    ['Prices', 'Rates at the price date × location factor × escalation to the month of spending'],
    ['Rounding', 'Once, at each element of a line, half away from zero; totals are sums of rounded figures'],
    [
      'Schedule',
      `Status: ${estimate?.schedule.status ?? 'none'}; crews within limits, closures and windows kept`,
    ],
    [
      'Contingency',
      `Policy: ${contingency.policy}${contingency.share === undefined ? '' : `, ${contingency.share.value} of the total. ${contingency.share.basis}: ${contingency.share.source}`}`,
    ],
    ['Left out', 'Interest, indirect cost of the grant, program income, benefits'],
    ['Worked out on', evaluation.today],
  ];
  return listSheet(
    'Basis of estimate',
    'Basis of the estimate',
    'What it is made from.',
    ['What', 'How'],
    rows,
    [24, 110],
  );
}
