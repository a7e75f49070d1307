import {
  carried,
  givenFrom,
  link,
  over,
  rounded,
  scaled,
  sum,
  totalWhere,
  unity,
  when,
  type Sheet,
  type Step,
  type Table,
} from '../sheet';
import { flagOf } from './condition-sets';
import { rateAt, type EstimateInput } from './inputs';
import { atPriceDate, type PriceLevel } from './price-level';
import type { WorkSheet } from './work-sheet';

/** The composite rate of a crew: dollars for an hour of one of its people. */
export interface CrewRates {
  readonly rate: Step<'USD/h'>;
}

/**
 * Burdened labour from the wage up: wage, fringe and payroll burden, longshore premium where the trade is maritime,
 * overtime by the shift pattern, small tools, protective gear. Crews are composites of their people.
 */
export function labourRates(
  sheet: Sheet,
  input: EstimateInput,
  work: WorkSheet,
  level: PriceLevel,
): Table<CrewRates> {
  const trades = tradeTable(sheet, input, level);
  const { crews } = input.library.rateBook;
  const rows = crews.flatMap(crew => crew.members.map(member => ({ crew, member })));
  const people = work.crews.members.columns;
  const members = sheet.table(
    'member-rates',
    {
      heading: 'Crew member',
      of: rows,
      key: ({ crew, member }) => `${crew.id}.${member.trade}`,
      title: ({ crew, member }) => `${crew.title}: ${member.trade}`,
    },
    t => {
      const crew = t.key('crew', 'Crew', row => row.crew.id);
      const trade = t.key('trade', 'Trade', row => row.member.trade);
      const public_ = t.field('public', 'Public staff', '1', row => flagOf(row.crew.employer === 'owner'));
      const count = t.place(
        'people',
        'People',
        rounded(over(carried(work.result, people.people, t.rowKey()), unity('person')), 2),
      );
      const owner = t.place('owner-rate', 'Rate as public staff', link(trade, trades.columns.owner));
      const contractor = t.place(
        'contractor-rate',
        'Rate of the contractor',
        link(trade, trades.columns.contractor),
      );
      return {
        crew,
        count,
        cost: t.place('cost', 'Cost an hour', scaled(when(public_, owner, contractor), count)),
      };
    },
  );
  return sheet.table(
    'crew-rates',
    { heading: 'Crew', of: crews, key: crew => crew.id, title: crew => crew.title },
    t => {
      const key = t.rowKey();
      const cost = t.place(
        'cost',
        'Cost of the crew an hour',
        totalWhere(members.columns.cost, members.columns.crew, key),
      );
      const count = t.place('people', 'People', totalWhere(members.columns.count, members.columns.crew, key));
      return { rate: t.place('rate', 'Rate of one person', rounded(over(cost, count), 2)) };
    },
  );
}

function tradeTable(
  sheet: Sheet,
  input: EstimateInput,
  level: PriceLevel,
): Table<{ contractor: Step<'USD/h'>; owner: Step<'USD/h'> }> {
  const { burdens, trades } = input.library.rateBook;
  const block = sheet.block('burdens', 'Burdens on wages');
  const share = (
    id: 'fringeAndPayroll' | 'publicStaff' | 'longshorePremium' | 'overtimePremium',
    key: string,
    title: string,
  ) => {
    const { figure, place } = rateAt(input, `burdens/${id}`, burdens[id]);
    return block.given(key, title, '1', givenFrom(figure, '1', place));
  };
  const dollars = (id: 'smallTools' | 'protectiveGear', key: string, title: string) => {
    const { figure, place } = rateAt(input, `burdens/${id}`, burdens[id]);
    return block.given(key, title, 'USD/h', givenFrom(figure, 'USD/h', place));
  };
  const fringe = share('fringeAndPayroll', 'fringe', 'Fringe and payroll burden');
  const staff = share('publicStaff', 'public-staff', 'Burden of public staff');
  const longshore = share('longshorePremium', 'longshore', 'Longshore premium');
  const premium = share('overtimePremium', 'overtime-premium', 'Overtime premium');
  const hours = block.given('overtime-share', 'Share of hours at overtime', '1', input.overtimeShare);
  const overtime = block.place('overtime', 'Overtime on the wage', sum(unity('1'), scaled(premium, hours)));
  const tools = dollars('smallTools', 'small-tools', 'Small tools');
  const gear = dollars('protectiveGear', 'protective-gear', 'Protective gear');
  return sheet.table(
    'trades',
    {
      heading: 'Trade',
      of: trades,
      key: trade => trade.id,
      title: trade => trade.title,
      place: trade => `templates/rates/trades/${trade.id}`,
    },
    t => {
      const wage = atPriceDate(t, level, input, 'wage', 'Wage', 'USD/h', trade => ({
        money: rateAt(input, `trades/${trade.id}/wage`, trade.wage),
        unit: 'USD/h',
      }));
      const maritime = t.field('maritime', 'Maritime', '1', trade => flagOf(trade.maritime));
      const burden = t.place(
        'burden',
        'Burden of a contractor',
        sum(overtime, fringe, scaled(longshore, maritime)),
      );
      const contractor = t.place(
        'contractor',
        'Burdened, contractor',
        rounded(sum(scaled(wage, burden), tools, gear), 2),
      );
      return {
        contractor,
        owner: t.place('owner', 'Burdened, public staff', rounded(scaled(wage, sum(unity('1'), staff)), 2)),
      };
    },
  );
}
