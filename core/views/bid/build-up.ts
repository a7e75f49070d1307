import { withId } from '../../base';
import type { BidView, Evaluation } from '../../evaluation';
import type { EstimateContext } from '../context';
import { aligned, asStep, basisCell, givenCell, NOT_APPLYING, words } from '../cells';
import { cents } from '../funding/tie-out-table';
import type { Measures } from '../measures';
import type { Column, Row, TableRows } from '../rows';
import { bidId } from './bid-of';

const COLUMNS: readonly Column[] = [
  { key: 'title', title: 'From direct cost to the price', kind: 'words' },
  { key: 'on', title: 'Stands on', kind: 'words' },
  { key: 'share', title: 'Share', unit: '0 to 1', kind: 'number' },
  { key: 'amount', title: 'Amount', unit: '$', kind: 'number' },
  { key: 'soFar', title: 'So far', unit: '$', kind: 'number' },
  { key: 'basis', title: 'Basis', kind: 'basis' },
];

/** The mark-ups in their order, each with what it stands on, its share and what it adds. */
export function buildUpRows({ evaluation, measures }: EstimateContext, { internal }: BidView): TableRows {
  const built = internal?.buildUp;
  const rows = built === undefined ? [] : rowsOf(built, evaluation, measures);
  return {
    id: 'bid-build-up',
    caption: 'Build-up of the price',
    columns: COLUMNS,
    rows: aligned(COLUMNS, rows),
  };
}

type Built = NonNullable<NonNullable<BidView['internal']>['buildUp']>;

function rowsOf(built: Built, { project, library }: Evaluation, measures: Measures): readonly Row[] {
  const overrides = new Map(project.rates.overrides.map(one => [one.at, one.figure]));
  let soFar = built.direct;
  const markUps = built.markUps.map((markUp): Row => {
    const own = withId(library.rateBook.markUps, markUp.id);
    soFar += markUp.amount;
    const at = `markUps/${own.id}/share`;
    const figure = overrides.get(at) ?? own.share;
    const share = givenCell(`/rates/overrides/${asStep(at)}/figure`, own.title, figure, measures);
    return {
      id: own.id,
      kind: 'line',
      cells: {
        title: words(own.title),
        on: words(own.on),
        share,
        amount: cents(markUp.amount, bidId('mark-up', own.id)),
        soFar: cents(soFar, bidId('mark-up', own.id)),
        basis: basisCell(figure.basis, figure.source, share.why),
      },
    };
  });
  const end = (id: string, title: string, amount: number, kind: Row['kind']): Row => ({
    id,
    kind,
    cells: {
      title: words(title),
      on: words(''),
      share: NOT_APPLYING,
      amount: cents(amount, bidId(id)),
      soFar: cents(amount, bidId(id)),
      basis: words(''),
    },
  });
  return [
    end('direct', 'Direct cost of contract work', built.direct, 'line'),
    ...markUps,
    end('price', 'Contract price', built.price, 'total'),
  ];
}
