import {
  carried,
  difference,
  dollars,
  givenFrom,
  link,
  priced,
  rounded,
  scaled,
  type Sheet,
  type Step,
  type Table,
} from '../sheet';
import { flagOf } from './condition-sets';
import { rateAt, type EstimateInput } from './inputs';
import { atPriceDate, type PriceLevel } from './price-level';
import type { WorkSheet } from './work-sheet';

export interface ScrapColumns {
  readonly item: Step<'text'>;
  /** What the contractor keeps, a lower price of the item that yields it. */
  readonly credit: Step<'USD'>;
  /** What the owner receives, program income and never a negative line. */
  readonly income: Step<'USD'>;
}

/**
 * Scrap at the market's price, less freight and processing, by who keeps it. It is brought to the price date and not
 * escalated beyond it: the market may fall as well as rise.
 */
export function scrapValue(
  sheet: Sheet,
  input: EstimateInput,
  work: WorkSheet,
  level: PriceLevel,
): Table<ScrapColumns> {
  const grades = input.library.rateBook.scrap;
  const prices = sheet.table(
    'scrap-prices',
    { heading: 'Grade of scrap', of: grades, key: grade => grade.id, title: grade => grade.title },
    t => {
      const price = atPriceDate(t, level, input, 'price', 'Market price', 'USD/t', grade => ({
        money: rateAt(input, `scrap/${grade.id}/price`, grade.price),
        unit: 'USD/t',
      }));
      const share = t.field('share', 'Share of it received', '1', grade =>
        givenFrom(grade.shareReceived, '1', `templates/rates/scrap/${grade.id}/shareReceived`),
      );
      const freight = atPriceDate(t, level, input, 'freight', 'Freight and processing', 'USD/t', grade => ({
        money: rateAt(input, `scrap/${grade.id}/freightAndProcessing`, grade.freightAndProcessing),
        unit: 'USD/t',
      }));
      return {
        net: t.place('net', 'Received a tonne', rounded(difference(scaled(price, share), freight), 4)),
      };
    },
  );
  const keeper = sheet.block('scrap-keeper', 'Who keeps the scrap');
  const kept = keeper.given(
    'contractor-keeps',
    'The contractor keeps it',
    '1',
    flagOf(input.options['scrap-keeper'] !== 'owner'),
  );
  const owned = keeper.given(
    'owner-keeps',
    'The owner receives it',
    '1',
    flagOf(input.options['scrap-keeper'] === 'owner'),
  );
  const rows = work.rows.filter(row => row.item.scrap !== undefined);
  return sheet.table(
    'scrap-value',
    { heading: 'Scrap', of: rows, key: row => row.item.id, title: row => row.item.title },
    t => {
      const key = t.rowKey();
      const tonnes = t.place('tonnes', 'Tonnes', carried(work.result, work.scrap.columns.tonnes, key));
      const net = t.place(
        'net',
        'Received a tonne',
        link(
          t.key('grade', 'Grade (key)', row => row.item.scrap?.grade),
          prices.columns.net,
        ),
      );
      const value = t.place('value', 'Value', dollars(priced(tonnes, net)));
      const item = t.key('item', 'Work item (key)', row => row.item.id);
      return {
        item,
        credit: t.place('credit', 'Kept by the contractor', scaled(value, kept)),
        income: t.place('income', 'Received by the owner', scaled(value, owned)),
      };
    },
  );
}
