import type { Finding } from '../../base';
import { amountWords } from '../../units';
import type { Library } from '../../work';
import { checkProject } from '../check';
import { quoteGivens } from '../funding-rules';
import { rateGivens } from '../rate-rules';
import type { Project } from '../schema';
import { importPrices, importTanks, importWages, importWeights, type Imported } from './figures';
import { importLaboratory } from './laboratory';
import type { ImportKind, ImportMapping } from './mapping';
import { withinLimits } from './limits';
import { merged, type ImportChange, type ListOf, type Merged } from './merge';
import { priceEntries } from './price-entries';
import { underItems } from './price-items';
import { withoutYear } from './price-year';
import type { TextTable } from './table';
import { underTrades } from './trades';

/** What an import would do to a project: shown before anything is written, and the project as it would be. */
export interface ImportPreview {
  readonly project: Project;
  readonly mapping: ImportMapping;
  readonly changes: readonly ImportChange[];
  readonly added: number;
  readonly changed: number;
  /** Rows that say what the project says already. */
  readonly same: number;
  /** Rows and columns that were not taken, each with the reason; they are among the findings too. */
  readonly left: readonly Finding[];
  /** Why rows or columns were left out, and what the project so changed would be told. */
  readonly findings: readonly Finding[];
  /** What is to be known of what was taken. */
  readonly notes: readonly string[];
}

/**
 * Reads a table by a mapping into a project: the mapping is kept with it, rows replace entries of the same key, all
 * others stay. Nothing is written here; the same table a second time changes nothing.
 */
export function importTable(
  project: Project,
  library: Library,
  table: TextTable,
  mapping: ImportMapping,
): ImportPreview {
  const applied = KINDS[mapping.kind](project, table, mapping, library);
  const { next, changes, same, findings, asked = [], quotes = 0 } = applied;
  const kept = merged(project.imports ?? [], [mapping], {
    place: '/imports',
    keyOf: one => one.id,
    titleOf: one => one.title,
    say: one => one.title,
  });
  const after: Project = { ...next, imports: kept.list };
  const known = new Set(checkProject(project, library).map(told));
  return {
    project: after,
    mapping,
    changes,
    added: changes.filter(change => change.kind === 'added').length,
    changed: changes.filter(change => change.kind === 'changed').length,
    same,
    left: findings,
    findings: [
      ...findings,
      ...asked,
      ...checkProject(after, library).filter(finding => !known.has(told(finding))),
    ],
    notes: quotes === 0 ? [] : [notReliedOn(quotes)],
  };
}

/** A rate and the year of its prices. */
function rateWords(figure: Wage['figure']): string {
  return figure.year === undefined ? amountWords(figure) : `${amountWords(figure)}, prices of ${figure.year}`;
}

function notReliedOn(count: number): string {
  return count === 1
    ? '1 quote is there to be relied on: the estimate does not use it until it is chosen.'
    : `${count} quotes are there to be relied on: the estimate uses none of them until it is chosen.`;
}

interface Applied {
  readonly next: Project;
  readonly changes: readonly ImportChange[];
  readonly same: number;
  readonly findings: readonly Finding[];
  /** What is asked of rows that were taken all the same. */
  readonly asked?: readonly Finding[];
  /** Quotes among the changes: none of them is relied on until it is chosen. */
  readonly quotes?: number;
}

function told(finding: Finding): string {
  return `${finding.code} ${finding.place} ${finding.message}`;
}

type Wage = Project['rates']['wages'][number];
type Apply = (project: Project, table: TextTable, mapping: ImportMapping, library: Library) => Applied;

/** Puts the rows of an import into one list of the document. */
function into<T extends object>(
  read: Imported<T>,
  existing: readonly T[],
  of: ListOf<T>,
  put: (list: T[]) => Project,
): Applied {
  const result: Merged<T> = merged(existing, read.rows, of);
  return { next: put(result.list), changes: result.changes, same: result.same, findings: read.findings };
}

const KINDS: Readonly<Record<ImportKind, Apply>> = {
  laboratory: (project, table, mapping) =>
    into(
      importLaboratory(table, mapping),
      project.survey.laboratory,
      {
        place: '/survey/laboratory',
        quiet: 'space',
        keyOf: row => [row.sample, row.material, row.analyte, row.unit].join(' · '),
        titleOf: row => `Sample ${row.sample}, ${row.material}`,
        say: row =>
          `${row.analyte} ${row.result === '' ? 'without a result' : row.result} ${row.unit} ${row.qualifier}`.trim(),
      },
      laboratory => ({ ...project, survey: { ...project.survey, laboratory } }),
    ),
  tanks: (project, table, mapping) =>
    into(
      importTanks(table, mapping),
      project.vessel.tanks,
      {
        place: '/vessel/tanks',
        keyOf: tank => tank.id,
        titleOf: tank => tank.title,
        say: tank =>
          `${amountWords(tank.capacity)}, ${tank.contents}${tank.sounding === undefined ? '' : `, sounded ${amountWords(tank.sounding)}`}`,
      },
      tanks => ({ ...project, vessel: { ...project.vessel, tanks } }),
    ),
  weights: (project, table, mapping) =>
    into(
      importWeights(table, mapping),
      project.vessel.weights,
      {
        place: '/vessel/weights',
        keyOf: weight => weight.id,
        titleOf: weight => weight.title,
        say: ({ mass, vcg, lcg, tcg }) =>
          `${amountWords(mass)} at ${amountWords(vcg)} above keel, ${amountWords(lcg)} forward, ${amountWords(tcg)} to starboard`,
      },
      weights => ({ ...project, vessel: { ...project.vessel, weights } }),
    ),
  wages: (project, table, mapping, { rateBook }) => {
    const read = withinLimits(underTrades(importWages(table, mapping), mapping, rateBook.trades), wage =>
      rateGivens({ wages: [wage], overrides: [] }),
    );
    const of = {
      place: '/rates/wages',
      keyOf: (row: Wage) => row.trade,
      titleOf: (row: Wage) => row.trade,
      say: (row: Wage) => rateWords(row.figure),
    };
    const applied = into(read, project.rates.wages, of, wages => ({
      ...project,
      rates: { ...project.rates, wages },
    }));
    return { ...applied, asked: withoutYear(read.rows, mapping, rateBook.priceYear) };
  },
  prices: (project, table, mapping, { items, rateBook }) => {
    const read = underItems(importPrices(table, mapping), mapping, [...items, ...project.ownItems]);
    const entries = priceEntries(read.rows, mapping);
    const own = withinLimits({ rows: entries.overrides, findings: [] }, one =>
      rateGivens({ wages: [], overrides: [one] }),
    );
    const offered = withinLimits({ rows: entries.quotes, findings: [] }, one => quoteGivens([one]));
    const rates = merged(project.rates.overrides, own.rows, {
      place: '/rates/overrides',
      keyOf: row => row.at,
      titleOf: row => row.at,
      say: row => rateWords(row.figure),
    });
    const known = new Map(project.quotes.map(quote => [quote.id, quote]));
    // A price list speaks of prices: what the planner relies on, and which work a quote covers, stays.
    const offers = merged(
      project.quotes,
      offered.rows.map(row => {
        const { chosen, covers, exclusions } = known.get(row.id) ?? row;
        return { ...row, chosen, covers, exclusions };
      }),
      {
        place: '/quotes',
        keyOf: quote => quote.id,
        titleOf: quote => `Quote of ${quote.vendor}`,
        say: quote => `${amountWords(quote.amount)} for ${quote.covers.map(cover => cover.item).join(', ')}`,
      },
    );
    return {
      next: { ...project, rates: { ...project.rates, overrides: rates.list }, quotes: offers.list },
      changes: [...rates.changes, ...offers.changes],
      same: rates.same + offers.same,
      findings: [...read.findings, ...entries.findings, ...own.findings, ...offered.findings],
      asked: withoutYear(own.rows, mapping, rateBook.priceYear),
      quotes: offers.changes.filter(({ place }) => known.get(place.slice('/quotes/'.length))?.chosen !== true)
        .length,
    };
  },
};
