import type { GrantView } from '../../evaluation';
import { NOT_FOUND } from '../../funding';
import { monthWords } from '../../calendar';
import type { WhyRows } from '../rows';
import { sumRows, type Part } from '../why-sums';
import { grantId } from './names';
import { cents } from './tie-out-table';

/** The derivation of one kind of figure of the grant budget, by the parts of its name. */
export type GrantAnswer = (view: GrantView, parts: readonly string[], id: string) => WhyRows | undefined;
type Answer = GrantAnswer;

export function titled(rows: WhyRows): WhyRows {
  return { ...rows, path: 'Funding, sum', home: 'funding' };
}

const CASH_WORDS = {
  paid: [
    'Paid in',
    'Payments that fall in the month: work of earlier months paid later, retainage when it is released.',
  ],
  received: ['Came in,', 'Grant money that arrives in the month, after the months each source takes to pay.'],
  carried: ['Out at the end of', 'Everything paid less everything that came in so far.'],
  gap: ['Lent at the end of', 'What is carried beyond the county’s own share of what was paid.'],
} as const;

export const cashWhy: Answer = ({ cash }, [month = '', part = ''], id) => {
  const months = cash?.cash.view.months ?? [];
  const here = months.find(one => one.month === month);
  const key = (['paid', 'received', 'carried', 'gap'] as const).find(one => one === part);
  if (cash === undefined || here === undefined || key === undefined) return undefined;
  const upTo = months.filter(one => one.month <= month);
  const sum = (of: 'paid' | 'received') => upTo.reduce((all, one) => all + one[of], 0);
  const [title, said] = CASH_WORDS[key];
  const parts: Part[] =
    key === 'paid'
      ? cash.cash.sources.map(source => ({
          cents: source.bears.filter(one => one.month === month).reduce((all, one) => all + one.amount, 0),
          words: `borne by ${source.title}`,
          ...(source.sourceId === 'own' ? {} : { why: grantId('source', source.sourceId) }),
        }))
      : key === 'received'
        ? cash.cash.view.received.map(source => ({
            cents: source.months.filter(one => one.month === month).reduce((all, one) => all + one.amount, 0),
            words: cash.cash.sources.find(one => one.sourceId === source.sourceId)?.title ?? source.sourceId,
            why: grantId('source', source.sourceId),
          }))
        : [
            { cents: sum('paid'), words: 'paid so far' },
            { cents: -sum('received'), words: 'came in so far' },
            ...(key === 'gap'
              ? [{ cents: here.gap - here.carried, words: 'the county’s own share of what was paid' }]
              : []),
          ];
  return titled({
    ...sumRows(id, `${title} ${monthWords(month)}`, said, parts),
    value: { ...cents(here[key]), unit: '$' },
  });
};

export const stepWhy: Answer = ({ book, cash }, [which, step], id) => {
  const found = which === 'forms' ? book?.reconciliation : cash?.cash.reconciliation;
  if (found === undefined) return undefined;
  const all = [found.from, ...found.steps];
  const one = [...all, found.to].find(each => each.id === step);
  const rows = titled(
    sumRows(
      id,
      one?.title ?? 'Difference',
      one?.lineIds !== undefined && one.lineIds.length > 0
        ? `Lines concerned: ${one.lineIds.map(line => line.replaceAll('-', ' ')).join(', ')}.`
        : 'A step from the estimate to the other book; the other book is summed on its own.',
      all.map(each => ({
        cents: each.amount,
        words: each.title,
        ...(each.id === 'estimate' ? { why: 'sums/total' } : {}),
      })),
    ),
  );
  return { ...rows, value: { ...cents(one?.amount ?? found.difference), unit: '$' } };
};

export const besideWhy: Answer = ({ cash }, [id = ''], name) => {
  if (cash === undefined) return undefined;
  const year = cash.fiscalYears.find(one => `year-${one.fiscalYear}` === id);
  const months = cash.cash.view.months;
  if (id === 'carrying')
    return titled({
      ...sumRows(
        name,
        'Interest on the cash gap',
        'A twelfth of the yearly rate on the gap at the end of each month. The gaps are below.',
        months.map(one => ({
          cents: one.gap,
          words: monthWords(one.month),
          why: grantId('cash', one.month, 'gap'),
        })),
      ),
      value: { ...cents(cash.carrying ?? 0), unit: '$' },
    });
  if (year !== undefined)
    return titled({
      ...sumRows(
        name,
        `Paid in fiscal year ${year.fiscalYear}`,
        'The payments of the months of the county’s fiscal year; all months are below.',
        months.map(one => ({
          cents: one.paid,
          words: monthWords(one.month),
          why: grantId('cash', one.month, 'paid'),
        })),
      ),
      value: { ...cents(year.amount), unit: '$' },
    });
  const only = cash.contingent.find(one => `only-${one.id}` === id);
  return only === undefined
    ? undefined
    : titled({
        ...sumRows(name, only.title, `Owed only if it happens, by ${only.party}.`, []),
        value: { ...cents(only.amount ?? 0), unit: '$' },
      });
};

/** What the county pays in all, its share of the forms, what no source bears yet, and what stands outside them. */
export const countyWhy: Answer = ({ cash }, [part = ''], id) => {
  if (cash === undefined) return undefined;
  const { share, shares, unfunded, outside, outsideSteps } = cash.cash.county;
  const open = { cents: unfunded, words: 'what no source bears yet', why: grantId('source', NOT_FOUND) };
  if (part === 'total')
    return titled(
      sumRows(id, 'What the county pays in all', 'Its share of the forms, and what nobody else bears.', [
        { cents: share, words: 'its share of the forms', why: grantId('county', 'share') },
        ...(unfunded === 0 ? [] : [open]),
        { cents: outside, words: 'what nobody else bears', why: grantId('county', 'outside') },
      ]),
    );
  if (part === 'share')
    return titled(
      sumRows(
        id,
        'The county’s share of the forms',
        'What its own sources bear.',
        shares.map(({ sourceId, title, amount }) => ({
          cents: amount,
          words: title,
          why: grantId('source', sourceId),
        })),
      ),
    );
  if (part !== 'outside') return undefined;
  return titled({
    ...sumRows(
      id,
      'Borne by the county outside the forms',
      'Cost that no form carries or no award may bear: only the county is left to pay it.',
      outsideSteps.map(step => ({
        cents: step.amount,
        words: step.title,
        why: grantId('step', step.id === 'in-kind' ? 'cash' : 'forms', step.id),
      })),
    ),
    value: { ...cents(outside), unit: '$' },
  });
};
