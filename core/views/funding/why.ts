import { BASES } from '../../base';
import {
  NOT_FOUND,
  budgetParts,
  resourceLines,
  type Award,
  type Sf424a,
  type SharedRow,
} from '../../funding';
import type { GrantView } from '../../evaluation';
import type { EstimateContext } from '../context';
import type { WhyRows } from '../rows';
import { sumRows, type Part } from '../why-sums';
import { grantOf } from './grant-of';
import { grantId } from './names';
import { cents } from './tie-out-table';
import { besideWhy, cashWhy, countyWhy, stepWhy, titled, type GrantAnswer as Answer } from './why-cash';

function awardOf(view: GrantView, source: string | undefined): Award | undefined {
  return view.book?.awards.find(award => award.source.id === source);
}

const rowId = (award: Award, row: SharedRow) => grantId('row', award.source.id, row.id);

/** A sum of budget rows, each by what it adds. */
function rowSum(
  award: Award,
  id: string,
  title: string,
  said: string,
  amountOf: (row: SharedRow) => number,
): WhyRows {
  const parts = award.rows.map((row): Part => ({
    cents: amountOf(row),
    words: row.title,
    why: rowId(award, row),
  }));
  return titled(sumRows(id, title, said, parts));
}

const SUMMED: Readonly<Record<string, (row: SharedRow) => boolean>> = {
  i: row => row.classId !== 'j',
  k: () => true,
  '12': row => row.classId !== '13',
  '14': () => true,
  '16': () => true,
};

const classWhy: Answer = (view, [source, line = '', activity], id) => {
  const award = awardOf(view, source);
  if (award === undefined) return undefined;
  const isIn = SUMMED[line] ?? ((row: SharedRow) => row.classId === line);
  return rowSum(
    award,
    id,
    `Form line ${line}`,
    'The budget rows that the mapping sends to this line.',
    row => (isIn(row) && (activity === undefined || row.activityId === activity) ? row.allowable : 0),
  );
};

const lineWhy: Answer = (view, [source, line = '', part = ''], id) => {
  const award = awardOf(view, source);
  if (award === undefined) return undefined;
  const isIn = SUMMED[line] ?? ((row: SharedRow) => row.classId === line);
  const of = (row: SharedRow) =>
    part === 'total' ? row.total : part === 'allowable' ? row.allowable : row.total - row.allowable;
  return rowSum(
    award,
    id,
    `Form line ${line}`,
    'The budget rows that the mapping sends to this line.',
    row => (isIn(row) ? of(row) : 0),
  );
};

const tieWhy: Answer = (view, [source, line = '', part = ''], id) => {
  const award = awardOf(view, source);
  if (award === undefined) return undefined;
  const said =
    part === 'difference'
      ? 'The form less the estimate, and the form less what the sentences add up to. The rows below make the line.'
      : 'The budget rows that make this line.';
  const rows = rowSum(award, id, `Form line ${line}`, said, row =>
    row.classId === line ? row.allowable : 0,
  );
  const tie = award.tieOut.find(one => one.classId === line);
  return part === 'difference' && tie !== undefined
    ? { ...rows, value: { ...cents(tie.formDifference + tie.narrativeDifference), unit: '$' } }
    : rows;
};

/** One row of the budget: the cost of a line, what is not carried by the form, and who bears it. */
const rowWhy: Answer = (view, [source, ...rest], id) => {
  const award = awardOf(view, source);
  const row = award?.rows.find(one => one.id === rest.join('|'));
  if (award === undefined || row === undefined) return undefined;
  const titles = new Map(view.book?.bySource.map(one => [one.sourceId, one.title]));
  const less = ([words, amount]: readonly [string, number]) =>
    amount === 0 ? [] : [{ depth: 0, operator: '−', value: { ...cents(amount), unit: '$' }, words }];
  const why = row.lineId === undefined ? {} : { why: `lines/${row.lineId}/total` };
  return {
    id,
    title: row.title,
    path: 'Funding, row',
    value: { ...cents(row.allowable), unit: '$' },
    words: award.narrative
      .filter(one => one.rowId === row.id)
      .map(one => one.text)
      .join(' '),
    rows: [
      {
        depth: 0,
        operator: '=',
        value: { ...cents(row.total), unit: '$', ...why },
        words: 'cost of the row',
      },
      ...[
        ['before the award', row.before] as const,
        ['after the award', row.after] as const,
        ['not allowable', row.notAllowable] as const,
      ].flatMap(less),
      ...Object.entries(row.shares).map(([sharer, amount]) => ({
        depth: 1,
        operator: '',
        value: { ...cents(amount), unit: '$', why: grantId('source', sharer) },
        words: `borne by ${titles.get(sharer) ?? sharer.replaceAll('-', ' ')}`,
      })),
    ],
    usedBy: [
      {
        why: grantId('class', award.source.id, row.classId),
        title: `Form line ${row.classId}`,
        view: 'Funding',
      },
    ],
    bases: BASES,
    home: 'funding',
  };
};

const sourceWhy: Answer = (view, [source = ''], id) => {
  const { book } = view;
  if (book === undefined) return undefined;
  if (source === 'all')
    return titled(
      sumRows(
        id,
        'All sources',
        'What the sources give together and what no source bears yet: the total of the forms.',
        budgetParts(book).map(one => ({
          cents: one.amount,
          words: one.title,
          why: grantId('source', one.id),
        })),
      ),
    );
  const title = budgetParts(book).find(one => one.id === source)?.title ?? source;
  const parts = book.awards.flatMap(award =>
    award.rows.map((row): Part => ({
      cents: row.shares[source] ?? 0,
      words: row.title,
      why: rowId(award, row),
    })),
  );
  const said =
    source === NOT_FOUND
      ? 'What no source bears yet of each row of the budget.'
      : 'What this source bears of each row of the budget.';
  return titled(sumRows(id, title, said, parts));
};

const capWhy: Answer = (view, [source = ''], id) => {
  const found = view.book?.bySource.find(one => one.sourceId === source);
  if (found?.leftOfCap === undefined) return undefined;
  return titled({
    ...sumRows(id, `Left of the cap of ${found.title}`, 'The cap less what the source gives.', []),
    value: { ...cents(found.leftOfCap), unit: '$' },
    rows: [
      {
        depth: 0,
        operator: '=',
        value: {
          ...cents(found.leftOfCap + found.amount),
          unit: '$',
          why: `given:/funding/sources/${source}/cap`,
        },
        words: 'cap of the award',
      },
      {
        depth: 0,
        operator: '−',
        value: { ...cents(found.amount), unit: '$', why: grantId('source', source) },
        words: 'given',
      },
    ],
  });
};

const sectionWhy: Answer = (view, [source, section = '', line = '', part = ''], id) => {
  const award = awardOf(view, source);
  if (award?.form.kind !== 'SF-424A' || !/^[ACDE]$/.test(section)) return undefined;
  const federal = (row: SharedRow) => row.shares[award.source.id] ?? 0;
  const share = (row: SharedRow) =>
    part === 'federal' ? federal(row) : part === 'total' ? row.allowable : row.allowable - federal(row);
  if (section === 'A')
    return rowSum(award, id, 'Section A', 'The budget rows of the activity.', row =>
      line === 'total' || row.activityId === line ? share(row) : 0,
    );
  const said =
    section === 'C'
      ? 'Match by who gives it; the rows below carry match.'
      : 'Cash by the months in which the rows are paid; the rows below are paid then or later.';
  const isFederal = part === 'federal' || section === 'E';
  const rows = rowSum(award, id, `Section ${section}`, said, row =>
    isFederal ? federal(row) : row.allowable - federal(row),
  );
  const amount = sectionAmount(award.form, section, line, part);
  return amount === undefined ? undefined : { ...rows, value: { ...cents(amount), unit: '$' } };
};

/** What the form says at a place of sections C, D and E. */
function sectionAmount(
  { sectionC, sectionD, sectionE }: Sf424a,
  section: string,
  line: string,
  part: string,
): number | undefined {
  if (section === 'C')
    return line === 'total' ? sectionC.total : resourceLines(sectionC)[Number(line)]?.amount;
  if (section === 'D') return (part === 'federal' ? sectionD.federal : sectionD.nonFederal)[Number(line)];
  return sectionE[Number(line)];
}

const contractWhy: Answer = (view, [contract, part = ''], id) => {
  const found = view.contracts.find(one => one.contractId === contract);
  if (found === undefined) return undefined;
  const rows = view.book?.awards.flatMap(award =>
    award.rows
      .filter(row => row.contractId === contract)
      .map((row): Part => ({ cents: row.allowable, words: row.title, why: rowId(award, row) })),
  );
  const sum = titled(
    sumRows(id, `Contract ${contract ?? ''}`, 'The budget rows of the contract.', rows ?? []),
  );
  const result = found.results.find(one => one.contractClass === part);
  if (result === undefined) return { ...sum, value: { ...cents(found.amount), unit: '$' } };
  return {
    ...sum,
    title: `Indirect cost with the contract as ${part}`,
    words: 'The base leaves out what the class of the contract leaves out; the rate is applied to the rest.',
    value: { ...cents(result.indirect), unit: '$' },
    rows: [
      {
        depth: 0,
        operator: '=',
        value: { ...cents(result.base), unit: '$' },
        words: 'base of the indirect cost',
      },
    ],
  };
};

const ANSWERS: Readonly<Record<string, Answer>> = {
  class: classWhy,
  line: lineWhy,
  tie: tieWhy,
  row: rowWhy,
  source: sourceWhy,
  cap: capWhy,
  cash: cashWhy,
  county: countyWhy,
  step: stepWhy,
  section: sectionWhy,
  contract: contractWhy,
  beside: besideWhy,
};

/** The derivation of a figure of the grant budget. */
export function grantWhy({ evaluation }: EstimateContext, id: string): WhyRows | undefined {
  if (!id.startsWith('grant:')) return undefined;
  const [kind = '', ...parts] = id.slice(6).split('|');
  return ANSWERS[kind]?.(grantOf(evaluation), parts, id);
}
