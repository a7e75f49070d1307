import { at } from '../../base';
import type { Reconciliation } from '../../cash-flow';
import { budgetParts, type GrantBook } from '../../funding';
import type { CashPart, GrantView } from '../../evaluation';
import type { Funding } from '../../project';
import { aligned, editCell, NOT_APPLYING, words } from '../cells';
import { dollarCell } from '../context';
import { tenths } from '../budget';
import type { Column, Row, Shown, TableRows } from '../rows';
import { roundedDollars, wholeDollars } from '../whole-dollars';
import { grantId } from './names';
import { cents, difference } from './tie-out-table';

const SOURCE_COLUMNS: readonly Column[] = [
  { key: 'title', title: 'Source', kind: 'words' },
  { key: 'amount', title: 'Gives', unit: '$', kind: 'number', wide: true },
  { key: 'share', title: 'Share', unit: '%', kind: 'share' },
  { key: 'left', title: 'Left of cap', unit: '$', kind: 'number' },
  { key: 'pays', title: 'Pays', kind: 'words' },
];

/** What each source gives, its share of the budget of the forms, what is left of its cap, when it pays; what no source bears yet. */
export function sourceTable(book: GrantBook | undefined, funding: Funding | undefined): TableRows {
  const parts = book === undefined ? [] : budgetParts(book);
  const shown = wholeDollars(parts.map(one => one.amount));
  const shares = tenths(parts.map(one => one.amount));
  const left = new Map(book?.bySource.map(one => [one.sourceId, one.leftOfCap]));
  const rows = parts.map(({ id, title }, place): Row => {
    const why = grantId('source', id);
    return {
      id,
      kind: 'line',
      cells: {
        title: words(title),
        amount: dollarCell(at(shown, place), why),
        share: { text: at(shares, place), why },
        left: leftCell(left.get(id), id),
        pays: words(paysWords(funding, id)),
      },
    };
  });
  const total: Row = {
    id: 'total',
    kind: 'total',
    cells: {
      title: words('All'),
      amount: dollarCell(
        shown.reduce((sum, one) => sum + one, 0),
        grantId('source', 'all'),
      ),
      share: { text: '100.0', why: grantId('source', 'all') },
    },
  };
  return {
    id: 'sources',
    caption: 'Sources',
    columns: SOURCE_COLUMNS,
    rows: aligned(SOURCE_COLUMNS, rows.length === 0 ? [] : [...rows, total]),
  };
}

/** What is left of a cap: a dash where there is none, 0 where nothing is left. */
function leftCell(left: number | undefined, id: string): Shown {
  if (left === undefined) return NOT_APPLYING;
  const why = grantId('cap', id);
  const whole = roundedDollars(left);
  return whole === 0 ? { text: '0', why } : dollarCell(whole, why);
}

function paysWords(funding: Funding | undefined, id: string): string {
  const source = funding?.sources.find(one => one.id === id);
  if (source === undefined) return '';
  if (source.support === 'in kind') return 'no cash';
  if (source.mode === 'own') return 'in hand';
  if (source.mode === 'advance') return 'in advance';
  return source.lagMonths === 1 ? 'after 1 month' : `after ${source.lagMonths} months`;
}

const STEP_COLUMNS: readonly Column[] = [
  { key: 'title', title: 'Step', kind: 'words' },
  { key: 'amount', title: 'Amount', unit: '$', kind: 'number' },
];

const CAPTIONS: Readonly<Record<string, string>> = {
  forms: 'From the estimate to the forms',
  bid: 'From the estimate to the base bid',
};

function stepId(book: string, step: string): string {
  return book === 'bid' ? `bid:step|${book}|${step}` : grantId('step', book, step);
}

/** From one figure to another by named steps, to the cent. */
export function reconciliationTable({
  id,
  from,
  steps,
  to,
  difference: open,
  closes,
}: Reconciliation): TableRows {
  const row = (step: Reconciliation['from'], kind: Row['kind']): Row => ({
    id: step.id,
    kind,
    cells: { title: words(step.title), amount: cents(step.amount, stepId(id, step.id)) },
  });
  const rows: readonly Row[] = [
    row(from, 'line'),
    ...steps.map(step => row(step, 'line')),
    row(to, 'total'),
    {
      id: 'difference',
      kind: 'line',
      cells: {
        title: words(closes ? 'Difference: it ties out' : 'Difference: it does not tie out'),
        amount: difference(open, stepId(id, 'difference')),
      },
    },
  ];
  const caption = CAPTIONS[id] ?? 'From the estimate to the payments';
  return { id: `steps-${id}`, caption, columns: STEP_COLUMNS, rows: aligned(STEP_COLUMNS, rows) };
}

const CONTRACT_COLUMNS: readonly Column[] = [
  { key: 'title', title: 'Contract', kind: 'words' },
  { key: 'amount', title: 'Amount', unit: '$', kind: 'number' },
  { key: 'method', title: 'Must be bought by', kind: 'words' },
  { key: 'class', title: 'Class', kind: 'words' },
  { key: 'service', title: 'Indirect as service', unit: '$', kind: 'number' },
  { key: 'subaward', title: 'Indirect as subaward', unit: '$', kind: 'number' },
  { key: 'capital', title: 'Indirect as capital', unit: '$', kind: 'number' },
];

const CLASS_KEYS = { service: 'service procurement', subaward: 'subaward', capital: 'capital' } as const;

/** Each contract: how it must be bought, its class, and what each class would make of the indirect cost. */
export function contractTable(view: GrantView, funding: Funding | undefined): TableRows {
  const known = new Map(view.contracts.map(one => [one.contractId, one]));
  const ids = new Set([...(funding?.contracts ?? []).map(one => one.id), ...known.keys()]);
  const rows = [...ids].map((contractId): Row => {
    const one = known.get(contractId);
    const chosen = funding?.contracts.find(contract => contract.id === contractId);
    const method = view.procurement.find(bought => bought.contractId === contractId)?.method ?? '';
    const results = Object.fromEntries(
      Object.entries(CLASS_KEYS).map(([key, contractClass]) => {
        const result = one?.results.find(each => each.contractClass === contractClass);
        return [
          key,
          result === undefined
            ? NOT_APPLYING
            : dollarCell(roundedDollars(result.indirect), grantId('contract', contractId, contractClass)),
        ];
      }),
    );
    return {
      id: contractId,
      kind: 'line',
      cells: {
        title: words(chosen?.title ?? contractId.replaceAll('-', ' ')),
        amount:
          one === undefined
            ? NOT_APPLYING
            : dollarCell(roundedDollars(one.amount), grantId('contract', contractId, 'amount')),
        method: words(method),
        class:
          chosen === undefined
            ? NOT_APPLYING
            : editCell(
                {
                  at: `/funding/contracts/${chosen.id}/class`,
                  kind: 'choice',
                  value: chosen.class ?? '',
                  choices: [
                    ...(chosen.class === undefined ? [{ id: '', title: 'not chosen' }] : []),
                    ...Object.values(CLASS_KEYS).map(id => ({ id, title: id })),
                  ],
                  label: `Class of the contract ${chosen.title}`,
                },
                chosen.class ?? 'not chosen',
              ),
        ...results,
      },
    };
  });
  return {
    id: 'contracts',
    caption: 'Contracts',
    columns: CONTRACT_COLUMNS,
    rows: aligned(CONTRACT_COLUMNS, rows),
  };
}

const BESIDE_COLUMNS: readonly Column[] = [
  { key: 'title', title: 'Beside the budget', kind: 'words' },
  { key: 'amount', title: 'Amount', unit: '$', kind: 'number' },
];

/** What stands beside the budget and never in it: fiscal years, carrying cost, what is owed only if it happens. */
export function besideTable(cash: CashPart | undefined): TableRows {
  const row = (id: string, title: string, amount: number | undefined): Row => ({
    id,
    kind: 'line',
    cells: {
      title: words(title),
      amount:
        amount === undefined ? words('not known') : dollarCell(roundedDollars(amount), grantId('beside', id)),
    },
  });
  const rows =
    cash === undefined
      ? []
      : [
          ...cash.fiscalYears.map(one =>
            row(`year-${one.fiscalYear}`, `Paid in fiscal year ${one.fiscalYear}`, one.amount),
          ),
          ...(cash.carrying === undefined
            ? []
            : [row('carrying', 'Interest on the cash gap at the county’s rate', cash.carrying)]),
          ...cash.contingent.map(one =>
            row(`only-${one.id}`, `${one.title}, only if it happens; ${one.party}`, one.amount),
          ),
        ];
  return {
    id: 'beside',
    caption: 'Beside the budget',
    columns: BESIDE_COLUMNS,
    rows: aligned(BESIDE_COLUMNS, rows),
  };
}
