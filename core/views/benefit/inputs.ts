import { sourceWithYear, type Figure } from '../../base';
import type { Obligation } from '../../benefit';
import type { Benefits } from '../../project';
import {
  aligned,
  basisCell,
  editCell,
  givenCell,
  NOT_APPLYING,
  REMOVE_COLUMN,
  removeCell,
  words,
} from '../cells';
import { dollarCell } from '../context';
import { optionalFigure, termRow, termTable } from '../term-rows';
import type { Measures } from '../measures';
import { printed } from '../number-text';
import { roundedDollars } from '../whole-dollars';
import { benefitId } from './names';
import type { Addition, Column, Row, Shown, TableRows } from '../rows';

const at = (field: string) => `/benefits/${field}`;

/** The plate, the discount rate and the years counted. */
export function benefitTerms(benefits: Benefits, measures: Measures): TableRows {
  const figure = (field: string, title: string, given: Figure | undefined, unit: string) =>
    optionalFigure(at(field), title, given, unit, measures);
  const whole = (field: 'horizonYears' | 'firstBenefitYear', label: string): Shown =>
    editCell({ at: at(field), kind: 'whole', value: String(benefits[field]), label });
  const { plateThickness, discountRate } = benefits;
  const rows: Row[] = [
    termRow(
      'plate',
      'Thickness of the plate that matters',
      figure('plateThickness', 'Plate thickness', plateThickness, 'mm'),
    ),
    termRow(
      'rate',
      'Discount rate, real',
      figure('discountRate', 'Discount rate', discountRate, '1'),
      'a year',
    ),
    termRow(
      'first',
      'First year in which people come',
      whole('firstBenefitYear', 'First year of visits'),
      'after the sinking',
    ),
    termRow(
      'last',
      'Last year that is counted',
      whole('horizonYears', 'Last year counted'),
      'after the sinking',
    ),
  ];
  return termTable('benefit-terms', 'Plate, years and rate', rows);
}

const USE_COLUMNS: readonly Column[] = [
  { key: 'title', title: 'Use', kind: 'words' },
  { key: 'visits', title: 'Visits a year', kind: 'number' },
  { key: 'visitsLow', title: 'Visits, low', kind: 'number' },
  { key: 'visitsHigh', title: 'Visits, high', kind: 'number' },
  { key: 'worth', title: 'Worth of a visit', unit: '$', kind: 'number' },
  { key: 'worthLow', title: 'Worth, low', unit: '$', kind: 'number' },
  { key: 'worthHigh', title: 'Worth, high', unit: '$', kind: 'number' },
  { key: 'basis', title: 'Basis', kind: 'basis' },
  REMOVE_COLUMN,
];

const ADD_USE: Addition = {
  at: '/benefits/uses',
  what: 'a use of the reef',
  idFrom: 'title',
  entry: {},
  fields: [
    { path: 'title', kind: 'text', label: 'Use, such as diving' },
    { path: 'visitsPerYear', kind: 'figure', label: 'Visits a year', unit: 'each/year' },
    { path: 'valuePerVisit', kind: 'figure', label: 'Worth of a visit, $', unit: 'USD/each' },
  ],
};

/** One end of the range of a figure, that may be left out. */
function end(figure: Figure, place: string, which: 'low' | 'high', label: string): Shown {
  const value = figure[which] ?? '';
  return editCell(
    {
      at: `${place}/${which}`,
      kind: 'decimal',
      unit: figure.unit,
      value,
      label: `${label}, ${which}`,
      optional: true,
    },
    value === '' ? '' : printed(value),
  );
}

/** Who comes to the reef: visits a year and what a visit is worth, each with its range. */
export function useTable({ uses }: Benefits, measures: Measures): TableRows {
  const rows = uses.map(({ id, title, visitsPerYear, valuePerVisit }): Row => {
    const visits = at(`uses/${id}/visitsPerYear`);
    const worth = at(`uses/${id}/valuePerVisit`);
    const [ofVisits, ofWorth] = [`Visits a year, ${title}`, `Worth of a visit, ${title}`];
    return {
      id,
      kind: 'line',
      cells: {
        title: editCell({
          at: at(`uses/${id}/title`),
          kind: 'text',
          value: title,
          label: `Name of ${title}`,
        }),
        visits: givenCell(visits, ofVisits, visitsPerYear, measures),
        visitsLow: end(visitsPerYear, visits, 'low', ofVisits),
        visitsHigh: end(visitsPerYear, visits, 'high', ofVisits),
        worth: givenCell(worth, ofWorth, valuePerVisit, measures),
        worthLow: end(valuePerVisit, worth, 'low', ofWorth),
        worthHigh: end(valuePerVisit, worth, 'high', ofWorth),
        basis: basisCell(valuePerVisit.basis, sourceWithYear(valuePerVisit), `given:${worth}`),
        remove: removeCell(at(`uses/${id}`), title),
      },
    };
  });
  return {
    id: 'benefit-uses',
    caption: 'Who comes, and what a visit is worth',
    columns: USE_COLUMNS,
    rows: aligned(USE_COLUMNS, rows),
    add: ADD_USE,
    note: [
      'Another number takes its range away: type low and high again. Without them the number counts as certain.',
    ],
  };
}

const DUTY_COLUMNS: readonly Column[] = [
  { key: 'title', title: 'Obligation', kind: 'words' },
  { key: 'party', title: 'Borne by', kind: 'words' },
  { key: 'cost', title: 'A year', unit: '$', kind: 'number' },
  { key: 'first', title: 'From year', kind: 'number' },
  { key: 'years', title: 'Years', kind: 'number' },
  { key: 'basis', title: 'Basis', kind: 'basis' },
  REMOVE_COLUMN,
];

const ADD_DUTY: Addition = {
  at: '/benefits/obligations',
  what: 'an obligation',
  idFrom: 'title',
  entry: {},
  fields: [
    { path: 'title', kind: 'text', label: 'Obligation' },
    { path: 'party', kind: 'text', label: 'Borne by', value: 'permit holder' },
    { path: 'costPerYear', kind: 'figure', label: 'Cost a year, $', unit: 'USD/year' },
    { path: 'firstYear', kind: 'whole', label: 'From year after the sinking', value: '1' },
    { path: 'years', kind: 'whole', label: 'For so many years', value: '1' },
  ],
};

/** What binds the county after the sinking: what the estimate holds already, then what stands beside it. */
export function obligationTable(
  benefits: Benefits | undefined,
  obligations: readonly Obligation[],
  carried: ReadonlySet<string>,
  measures: Measures,
): TableRows {
  const own = new Map(benefits?.obligations?.map(one => [one.id, one]));
  const rows = obligations.map((one): Row => {
    const mine = carried.has(one.id) ? undefined : own.get(one.id);
    const cells =
      mine === undefined
        ? {
            title: words(one.title),
            party: words(one.party),
            cost: dollarCell(roundedDollars(one.costPerYear), benefitId('duty', one.id)),
            first: { text: String(one.firstYear), why: benefitId('duty', one.id, 'first') },
            years: { text: String(one.years), why: benefitId('duty', one.id, 'years') },
            basis: basisCell(one.basis.basis, sourceWithYear(one.basis)),
          }
        : ownCells(mine, measures);
    return { id: carried.has(one.id) ? `line-${one.id}` : one.id, kind: 'line', cells };
  });
  return {
    id: 'benefit-obligations',
    caption: 'What binds after the sinking',
    columns: DUTY_COLUMNS,
    rows: aligned(DUTY_COLUMNS, benefits === undefined ? rows : [...rows, removalRow(benefits, measures)]),
    ...(benefits?.obligations === undefined ? {} : { add: ADD_DUTY }),
    note: [
      'Monitoring and other lines of the estimate are in its total and stand here by the year; the others are beside the total, and in no grant budget.',
    ],
  };
}

/** What would have to be paid once, and only if the ship moves. */
function removalRow({ removalIfItMoves: removal }: Benefits, measures: Measures): Row {
  const title = 'Moving or removing her: once, and only if she moves';
  const cost =
    removal === undefined
      ? undefined
      : optionalFigure(
          at('removalIfItMoves/amount'),
          'Cost of moving or removing her',
          removal.amount,
          'USD',
          measures,
        );
  return {
    id: 'removal',
    kind: 'line',
    cells: {
      title: words(title),
      party: editCell({
        at: at('removalIfItMoves/party'),
        kind: 'text',
        value: removal?.party ?? '',
        label: 'Who answers for her if she moves',
      }),
      cost: cost === undefined ? NOT_APPLYING : cost.text === '' ? { ...cost, text: 'not known' } : cost,
      first: NOT_APPLYING,
      years: NOT_APPLYING,
      basis: cost?.basis === undefined ? NOT_APPLYING : basisCell(cost.basis, cost.source, cost.why),
    },
  };
}

type OwnObligation = NonNullable<Benefits['obligations']>[number];

function ownCells({ id, title, party, costPerYear, firstYear, years }: OwnObligation, measures: Measures) {
  const place = at(`obligations/${id}`);
  const word = (field: string, kind: 'text' | 'whole', value: string, label: string) =>
    editCell({ at: `${place}/${field}`, kind, value, label: `${label}, ${title}` });
  const cost = givenCell(`${place}/costPerYear`, `Cost a year, ${title}`, costPerYear, measures);
  return {
    title: word('title', 'text', title, 'Name'),
    party: word('party', 'text', party, 'Borne by'),
    cost,
    first: word('firstYear', 'whole', String(firstYear), 'First year'),
    years: word('years', 'whole', String(years), 'Years'),
    basis: basisCell(costPerYear.basis, sourceWithYear(costPerYear), cost.why),
    remove: removeCell(place, title),
  };
}

/** The section with what was usual written down in it. */
export function withOwnObligations(benefits: Benefits, usual: readonly Obligation[]): Benefits {
  return {
    ...benefits,
    obligations: usual.map(({ basis, costPerYear, ...one }) => ({
      ...one,
      costPerYear: { value: String(costPerYear / 100), unit: 'USD/year', ...basis },
    })),
  };
}
