import type { Figure } from '../../base';
import { INCOME_METHODS, METHOD_IF_NOT_STATED, labelsOf } from '../../funding';
import { shippedBookRules } from '../../evaluation';
import type { Funding } from '../../project';
import { editCell, switchCell } from '../cells';
import type { Measures } from '../measures';
import { optionalFigure, termRow, termTable } from '../term-rows';
import type { Edit, Row, Shown, TableRows } from '../rows';

const word = (field: string, value: string, label: string, more: Partial<Edit>): Shown =>
  editCell({ at: `/funding/${field}`, kind: 'text', value, label, ...more });

/** Award date, fiscal year, pre-award cost, indirect cost, income, payment and limits: what is decided beside the sources. */
export function awardTerms(funding: Funding, measures: Measures): TableRows {
  const figure = (field: string, label: string, given: Figure | undefined, unit: string) =>
    optionalFigure(`/funding/${field}`, label, given, unit, measures);
  const rows: Row[] = [
    termRow('awardDate', 'Award date', word('awardDate', funding.awardDate, 'Award date', { kind: 'date' })),
    ...preAwardRows(funding),
    termRow(
      'fiscalYearStart',
      'Fiscal year starts in month',
      word('fiscalYearStart', String(funding.fiscalYearStart), 'Month in which the fiscal year starts', {
        kind: 'whole',
      }),
    ),
    ...indirectRows(funding, measures),
    ...incomeRows(funding, measures),
    ...paymentRows(funding, measures),
    termRow(
      'carryingRate',
      'Yearly rate of interest on the cash gap',
      figure('carryingRate', 'Carrying rate', funding.carryingRate, '1'),
      'a year',
    ),
    ...limitRows(funding, measures),
  ];
  return termTable('award-terms', 'Terms', rows);
}

/** Whether each grantor has agreed to cost from before the award: only then does his grant bear it. */
function preAwardRows({ sources }: Funding): Row[] {
  return sources
    .filter(({ form }) => form !== 'none')
    .map(({ id, title, preAwardApproved }) => {
      const label = `Cost from before the award agreed to, ${title}`;
      return termRow(
        `preAward-${id}`,
        label,
        switchCell(`/funding/sources/${id}/preAwardApproved`, label, preAwardApproved),
      );
    });
}

/** Whether the grant bears indirect cost. A negotiated rate comes with its agreement and is not chosen here. */
const indirectKind = (value: string): Shown =>
  word('indirect/kind', value, 'Indirect cost', {
    kind: 'choice',
    choices: [
      { id: 'none', title: 'none' },
      { id: 'de minimis', title: 'at the de minimis rate' },
    ],
  });

function indirectRows({ indirect, sources }: Funding, measures: Measures): Row[] {
  const isChosen =
    indirect.kind === 'negotiated' || (indirect.kind === 'de minimis' && indirect.rate !== undefined);
  const kind = isChosen ? [] : [termRow('indirect', 'Indirect cost', indirectKind(indirect.kind))];
  if (indirect.kind === 'none') return kind;
  const lines = labelsOf(shippedBookRules().forms, 'SF-424C').classes;
  return [
    ...kind,
    termRow(
      'rate',
      `Indirect cost, ${indirect.kind} rate`,
      optionalFigure('/funding/indirect/rate', 'Indirect rate', indirect.rate, '1', measures),
      'of the base',
    ),
    ...sources
      .filter(({ form }) => form === 'SF-424C')
      .map(({ id, title, indirectLine }) => {
        const label = `Line of SF-424C for indirect cost, ${title}`;
        const choices = [
          ...(indirectLine === undefined ? [{ id: '', title: 'not chosen' }] : []),
          ...lines.map(line => ({ id: line.id, title: `${line.id}, ${line.title}` })),
        ];
        return termRow(
          `indirectLine-${id}`,
          label,
          chosen(`sources/${id}/indirectLine`, indirectLine ?? '', label, choices),
        );
      }),
  ];
}

function chosen(field: string, value: string, label: string, choices: NonNullable<Edit['choices']>): Shown {
  const edit: Edit = { at: `/funding/${field}`, kind: 'choice', value, label, choices };
  return editCell(edit, choices.find(({ id }) => id === value)?.title ?? value);
}

/** What is done with income of the project, such as scrap that the owner sells. */
function incomeRows({ programIncome: { method, costOfEarning } }: Funding, measures: Measures): Row[] {
  const choices = [
    ...(method === undefined ? [{ id: '', title: `not chosen: ${METHOD_IF_NOT_STATED}` }] : []),
    ...INCOME_METHODS.map(id => ({ id, title: id })),
  ];
  const label = 'Way of using program income';
  return [
    termRow('incomeMethod', label, chosen('programIncome/method', method ?? '', label, choices)),
    termRow(
      'costOfEarning',
      'Cost of earning the income, not paid by the grant',
      optionalFigure(
        '/funding/programIncome/costOfEarning',
        'Cost of earning the income',
        costOfEarning,
        'USD',
        measures,
      ),
      '$',
    ),
  ];
}

/** When bills are paid and what is held back of them. */
function paymentRows({ payment }: Funding, measures: Measures): Row[] {
  const months = [
    ['releaseAfterMonths', 'Retainage is released after the contract work by'],
    ['contractPayLag', 'Contract work is paid after'],
    ['ownPayLag', 'The county’s own work is paid after'],
  ] as const;
  return [
    termRow(
      'retainage',
      'Retainage',
      optionalFigure('/funding/payment/retainage', 'Retainage', payment.retainage, '1', measures),
      'of each payment',
    ),
    ...months.map(([field, title]) =>
      termRow(
        field,
        title,
        word(`payment/${field}`, String(payment[field] ?? ''), title, { kind: 'whole', optional: true }),
        'months',
      ),
    ),
  ];
}

/** The county’s own limits, where they are stricter than those of the award. */
function limitRows({ county }: Funding, measures: Measures): Row[] {
  const limits = [
    ['microPurchase', 'County limit for buying without quotes'],
    ['simplified', 'County limit for simplified buying'],
    ['equipment', 'County price from which a piece is equipment'],
  ] as const;
  return limits.map(([field, title]) =>
    termRow(
      field,
      title,
      optionalFigure(`/funding/county/${field}`, title, county[field], 'USD', measures),
      '$',
    ),
  );
}
