import { lowerFirst, sourceWithYear, withId, type Figure } from '../base';
import type { Project } from '../project';
import type { Library } from '../work';
import { aligned, asStep, atItsPrices, basisCell, givenCell, words, type GivenShown } from './cells';
import type { Measures } from './measures';
import type { Column, Row, TableRows } from './rows';
import { tradesBesideWages, wageTable } from './wages';
import type { RatesView } from './window-rows';

/** One number of the rate book: its place in the book and what it is called. */
export interface RateLine {
  readonly place: string;
  readonly title: string;
  readonly figure: Figure;
  readonly beside?: string;
}

const COLUMNS: readonly Column[] = [
  { key: 'title', title: 'Rate', kind: 'words' },
  { key: 'value', title: 'Value', kind: 'number' },
  { key: 'unit', title: 'Unit', kind: 'unit' },
  { key: 'basis', title: 'Basis', kind: 'basis' },
  { key: 'source', title: 'Source', kind: 'words' },
];

/** What a mark-up is a share of, in words. */
const MARKED_UP = {
  direct: 'the direct cost',
  'direct and before': 'the direct cost and the mark-ups before it',
  'contract price': 'the contract price, itself included',
} as const;

/** The rate book as the project uses it: an override stands before the book, with its own basis. */
export function ratesView(project: Project, library: Library, measures: Measures, today: string): RatesView {
  const overrides = new Map(project.rates.overrides.map(one => [one.at, one.figure]));
  const tables = rateGroups(library).map(({ id, caption, lines }) => {
    const table = rateTable(id, caption, lines, overrides, measures, today);
    return id === 'trades' ? tradesBesideWages(table, project, library, measures, today) : table;
  });
  const wages = wageTable(project, library, measures, today);
  const count = tables.reduce((sum, table) => sum + table.rows.length, 0);
  const own =
    overrides.size === 0
      ? 'none of them this project’s own yet'
      : `${overrides.size} of them this project’s own`;
  return {
    sentence: [`${count} rates, ${own}; prices of ${library.rateBook.priceYear}, before escalation.`],
    tables: [...tables, wages],
  };
}

function rateTable(
  id: string,
  caption: string,
  lines: readonly RateLine[],
  overrides: ReadonlyMap<string, Figure>,
  measures: Measures,
  today: string,
): TableRows {
  const rows = lines.map((line): Row => {
    const figure = overrides.get(line.place) ?? line.figure;
    const cell = givenCell(`/rates/overrides/${asStep(line.place)}/figure`, line.title, figure, measures);
    const value = { ...cell, edit: atItsPrices(cell.edit, figure, today) };
    return { id: line.place, kind: 'line', cells: rateCells(line, figure, value) };
  });
  return { id, caption, columns: COLUMNS, rows: aligned(COLUMNS, rows) };
}

function rateCells(line: RateLine, figure: Figure, value: GivenShown): Row['cells'] {
  return {
    title: words(line.beside === undefined ? line.title : `${line.title}, ${line.beside}`),
    value,
    unit: words(value.unit),
    basis: basisCell(figure.basis, figure.source, value.why),
    source: words(sourceWithYear(figure)),
  };
}

type Part = readonly [key: string, words: string, figure: Figure | undefined];

function linesOf(
  group: string,
  item: { readonly id: string; readonly title: string },
  parts: readonly Part[],
): RateLine[] {
  return parts.flatMap(([key, beside, figure]) =>
    figure === undefined
      ? []
      : [
          {
            place: `${group}/${item.id}/${key}`,
            title: item.title,
            figure,
            ...(beside === '' ? {} : { beside }),
          },
        ],
  );
}

const BURDEN_TITLES = {
  fringeAndPayroll: 'Fringe and payroll charges',
  publicStaff: 'Fringe of public staff',
  longshorePremium: 'Longshore premium',
  smallTools: 'Small tools',
  protectiveGear: 'Protective gear',
  overtimePremium: 'Overtime premium',
} as const;

const BURDEN_KEYS = [
  'fringeAndPayroll',
  'publicStaff',
  'longshorePremium',
  'smallTools',
  'protectiveGear',
  'overtimePremium',
] as const;

/** Every number of the rate book with its place. */
export function rateFigures(library: Library): readonly RateLine[] {
  return rateGroups(library).flatMap(group => group.lines);
}

function rateGroups({
  rateBook: book,
}: Library): readonly { id: string; caption: string; lines: RateLine[] }[] {
  return [
    {
      id: 'trades',
      caption: 'Trades',
      lines: book.trades.flatMap(one => linesOf('trades', one, [['wage', '', one.wage]])),
    },
    {
      id: 'burdens',
      caption: 'Burdens',
      lines: BURDEN_KEYS.map(key => ({
        place: `burdens/${key}`,
        title: BURDEN_TITLES[key],
        figure: book.burdens[key],
      })),
    },
    {
      id: 'crews',
      caption: 'Crews',
      lines: book.crews.flatMap(one => [
        ...one.members.map(member => ({
          place: `crews/${one.id}/${member.trade}`,
          title: one.title,
          beside: lowerFirst(withId(book.trades, member.trade).title),
          figure: member.people,
        })),
        ...linesOf('crews', one, [['available', 'crews at once', one.available]]),
      ]),
    },
    {
      id: 'equipment',
      caption: 'Equipment',
      lines: book.equipment.flatMap(one =>
        linesOf('equipment', one, [
          ['rate', '', one.rate],
          ['mobilisation', 'mobilisation', one.mobilisation],
        ]),
      ),
    },
    {
      id: 'streams',
      caption: 'Disposal',
      lines: book.streams.flatMap(one =>
        linesOf('streams', one, [
          ['unitPrice', 'price', one.unitPrice],
          ['containerTonnes', 'a container holds', one.containerTonnes],
          ['containerFee', 'container', one.containerFee],
          ['haulPerContainer', 'haul of a container', one.haulPerContainer],
          ['profileFee', 'waste profile', one.profileFee],
          ['manifestPerContainer', 'manifest', one.manifestPerContainer],
          ['minimumCharge', 'least charge', one.minimumCharge],
        ]),
      ),
    },
    {
      id: 'scrap',
      caption: 'Scrap',
      lines: book.scrap.flatMap(one =>
        linesOf('scrap', one, [
          ['price', 'price', one.price],
          ['freightAndProcessing', 'freight and processing', one.freightAndProcessing],
          ['shareReceived', 'share received', one.shareReceived],
        ]),
      ),
    },
    {
      id: 'markUps',
      caption: 'Mark-ups',
      lines: book.markUps.flatMap(one =>
        linesOf('markUps', one, [['share', `share of ${MARKED_UP[one.on]}`, one.share]]),
      ),
    },
    {
      id: 'conditions',
      caption: 'Conditions',
      lines: book.conditions.flatMap(one =>
        linesOf('conditions', one, [['factor', 'hours factor', one.factor]]),
      ),
    },
  ];
}
