import {
  Sheet,
  carriedSingle,
  difference,
  dollars,
  evaluateSheet,
  givenFrom,
  knownSoFar,
  none,
  rounded,
  scaled,
  sum,
  total,
  totalWhere,
  when,
  type Block,
  type SheetResult,
  type Step,
  type Table,
} from '../sheet';
import type { StageKey } from '../work';
import { STAGES } from '../work';
import { disposalTable, type DisposalColumns } from './disposal-table';
import { generationTables, type GenerationPlan, type GenerationTables } from './generation-table';
import { hireTable } from './hire-table';
import { memoryOf, rateAt, type EstimateInput } from './inputs';
import type { ItemFields } from './item-fields';
import { labourRates, type CrewRates } from './labour-rates';
import { directColumns, type DirectColumns, type LineQuote, type LineSources } from './line-table';
import { contractMarkUps, lineMarkUps, markUpShares, type MarkUpShares } from './mark-ups';
import { priceLevel } from './price-level';
import { scrapValue, type ScrapColumns } from './scrap-value';
import { timingTable, type ItemTiming, type TimingColumns } from './timing-table';
import type { WorkSheet } from './work-sheet';

export interface LineColumns extends DirectColumns {
  /** Direct cost of contract work; nothing of the owner’s own. */
  readonly contractDirect: Step<'USD'>;
  /** The same with the mark-ups on the line itself: the contract price before bond and tax. */
  readonly contractSubtotal: Step<'USD'>;
  /** All mark-ups of the line: those on itself and its share of those on the contract. */
  readonly markUp: Step<'USD'>;
  /** The parts of a line that are known without the price of the whole contract: direct cost, mark-ups on itself. */
  readonly beforeBond: readonly Step<'USD'>[];
  readonly total: Step<'USD'>;
}

/** The single sums of the estimate. */
export interface SumSteps {
  readonly total: Step<'USD'>;
  /**
   * What is known so far of direct cost and of the mark-ups on each line, when a line is absent. Bond and tax are
   * shares of the whole contract and are not in it. Never called the total.
   */
  readonly knownSoFar: Step<'USD'>;
  /** Of all lines, before mark-ups. */
  readonly direct: Step<'USD'>;
  readonly contractCost: Step<'USD'>;
  readonly ownerCost: Step<'USD'>;
  readonly markUps: Step<'USD'>;
  readonly scrapCredit: Step<'USD'>;
  readonly scrapIncome: Step<'USD'>;
  readonly contingency: Step<'USD'>;
  /** Total and contingency. */
  readonly budget: Step<'USD'>;
}

/** The money sheet, run: prices, escalation, elements, mark-ups and totals. */
export interface MoneySheet {
  readonly sheet: Sheet;
  readonly result: SheetResult;
  readonly timing: Table<TimingColumns>;
  readonly crewRates: Table<CrewRates>;
  readonly disposals: Table<DisposalColumns>;
  /** Hazardous waste by calendar month; none where nothing that counts is generated. */
  readonly generation?: GenerationTables;
  readonly scrap: Table<ScrapColumns>;
  readonly lines: Table<LineColumns>;
  readonly stages: Table<{ readonly total: Step<'USD'> }>;
  readonly sums: SumSteps;
}

/**
 * Builds and runs the money sheet of a scenario, from the work sheet and what the schedule says of each item.
 * @param quotes what a chosen quote puts in place of a line, by item.
 * @param plan hazardous waste by calendar month, as the schedule makes it.
 */
export function moneySheet(
  input: EstimateInput,
  work: WorkSheet,
  timing: ReadonlyMap<string, ItemTiming>,
  quotes: ReadonlyMap<string, LineQuote>,
  plan?: GenerationPlan,
): MoneySheet {
  const sheet = new Sheet('money', work.sheet, memoryOf(input.library));
  const level = priceLevel(sheet, input);
  const crewRates = labourRates(sheet, input, work, level);
  const scrap = scrapValue(sheet, input, work, level);
  const { figure, place } = rateAt(input, 'locationFactor', input.library.rateBook.locationFactor);
  const location = level.block.given('location', 'Location factor', '1', givenFrom(figure, '1', place));
  const road = level.block.place(
    'road',
    'Road to the disposal sites',
    carriedSingle(work.result, work.takeOff.measures['yard-distance'] as Step<'m'>),
  );
  const timed = timingTable(sheet, work, level, timing);
  const hires = hireTable(sheet, input, work.rows, timed, level, location);
  const generation =
    plan === undefined || plan.shares.length === 0
      ? undefined
      : { plan, tables: generationTables(sheet, input, work, level, plan) };
  const disposals = disposalTable(sheet, input, work.rows, timed, level, road, generation);
  const shares = markUpShares(sheet, input);
  const lines = lineTable(sheet, input, work.rows, shares, {
    timing: timed,
    crewRates,
    hires,
    disposals,
    scrap,
    location,
    level,
    quotes,
  });
  const stages = sheet.table(
    'stages',
    { heading: 'Stage', of: STAGES, key: stage => stage, title: stageTitle },
    t => ({
      total: t.place('total', 'Total', totalWhere(lines.columns.total, lines.columns.stage, t.rowKey())),
    }),
  );
  const sums = sumSteps(sheet.block('sums', 'Totals'), lines, scrap, input);
  return {
    sheet,
    timing: timed,
    crewRates,
    disposals,
    ...(generation === undefined ? {} : { generation: generation.tables }),
    scrap,
    lines,
    stages,
    sums,
    result: evaluateSheet(sheet),
  };
}

function lineTable(
  sheet: Sheet,
  input: EstimateInput,
  rows: readonly ItemFields[],
  shares: MarkUpShares,
  from: LineSources,
): Table<LineColumns> {
  return sheet.table(
    'lines',
    {
      heading: 'Line',
      of: rows,
      key: row => row.item.id,
      title: row => row.item.title,
      own: row => row.own,
      place: row => `/items/${row.item.id}`,
    },
    t => {
      const direct = directColumns(t, input, from);
      const marked = lineMarkUps(t, shares, direct);
      const onContract = contractMarkUps(t, shares, marked.subtotal);
      const markUp = t.place(
        'mark-up',
        'Mark-ups',
        when(direct.contract, sum(none('USD'), ...marked.own, ...onContract), none('USD')),
      );
      return {
        ...direct,
        beforeBond: [direct.direct, ...marked.own],
        contractDirect: marked.direct,
        contractSubtotal: marked.subtotal,
        markUp,
        total: t.place('total', 'Total', sum(direct.direct, markUp)),
      };
    },
  );
}

function sumSteps(
  block: Block,
  lines: Table<LineColumns>,
  scrap: Table<ScrapColumns>,
  input: EstimateInput,
): SumSteps {
  const { columns } = lines;
  const place = (key: string, title: string, step: Step<'USD'>) => block.place(key, title, step);
  const direct = place('direct', 'Direct cost', total(columns.direct));
  const contract = place('contract-cost', 'Direct cost of contract work', total(columns.contractDirect));
  const all = place('total', 'Total', total(columns.total));
  const share = block.given(
    'contingency-share',
    'Contingency as a share of the total',
    '1',
    input.contingencyShare,
  );
  const contingency = place('contingency', 'Contingency', dollars(scaled(all, share)));
  return {
    total: all,
    direct,
    contingency,
    budget: place('budget', 'Budget', sum(all, contingency)),
    knownSoFar: place(
      'known-so-far',
      'Known so far, before bond and tax',
      sum(none('USD'), ...columns.beforeBond.map(knownSoFar)),
    ),
    contractCost: contract,
    ownerCost: place('owner-cost', 'Owner’s own cost', rounded(difference(direct, contract), 2)),
    markUps: place('mark-ups', 'Mark-ups', total(columns.markUp)),
    scrapCredit: place('scrap-credit', 'Scrap kept by the contractor', total(scrap.columns.credit)),
    scrapIncome: place('scrap-income', 'Scrap received by the owner', total(scrap.columns.income)),
  };
}

const STAGE_TITLES: Readonly<Record<StageKey, string>> = {
  'title-and-assessment': 'Title and assessment',
  permits: 'Permits',
  procurement: 'Procurement',
  yard: 'Yard',
  'clean-up': 'Clean-up',
  topside: 'Topside',
  openings: 'Openings',
  acceptance: 'Acceptance',
  tow: 'Tow',
  sinking: 'Sinking',
  'after-sinking': 'After sinking',
  management: 'Management',
};

/** The words for a stage. */
export function stageTitle(stage: StageKey): string {
  return STAGE_TITLES[stage];
}
