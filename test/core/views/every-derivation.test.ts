import { describe, expect, test } from 'vitest';
import { BASES } from '../../../core/base';
import type { WhyRow, WhyRows } from '../../../core/views';
import { everything, type Everything, type Shown } from './everything';
import { amountOf, tablesIn, whysIn } from './laws';

const WORDS = /^\S+( \S+)*$/;
const HOMES =
  'vessel sinking work rates schedule budget materials funding bid risk compare decision review'.split(' ');
const VIEWS = ['Work', 'Budget', 'Vessel', 'Rates', 'Estimate', 'Schedule', 'Funding'];
const OPERATORS = ['', '=', '+', '−', '×', '÷'];

/** What a name is the name of: all of one kind open alike. */
function kindOf(name: string): string {
  const [, own] = /^((?:grant|bid|past):[a-z-]+)/.exec(name) ?? [];
  if (own !== undefined) return `${own} ${/\|([a-zA-Z]+)$/.exec(name)?.[1] ?? ''}`;
  const [, study, table, column] = /^([a-z]+:)([^|]+)\|.*\|([^|]*)$/.exec(name) ?? [];
  if (study !== undefined) return `${study}${table ?? ''}|${column ?? ''}`;
  const [, prefix] = /^([a-z]+:)/.exec(name) ?? [];
  if (prefix !== undefined) return prefix;
  const [sheet = '', , field = ''] = name.split('/');
  return `${sheet}/${field}`;
}

/** The first and the last name of each kind of those that are shown. */
function sampled(names: readonly string[]): readonly string[] {
  const kinds = new Map<string, string[]>();
  for (const name of names) kinds.set(kindOf(name), [...(kinds.get(kindOf(name)) ?? []), name]);
  return [...kinds.values()].flatMap(all => [
    ...new Set([0, all.length - 1].flatMap(place => all[place] ?? [])),
  ]);
}

function badly({ id, title, path, words, rows, usedBy, bases, home, value, edit }: WhyRows): string[] {
  const isSaid = (text: string) => WORDS.test(text) && /[.%]$/.test(text);
  const wrongRows = rows.filter(
    row =>
      !Number.isInteger(row.depth) ||
      row.depth < 0 ||
      !OPERATORS.includes(row.operator) ||
      !(row.words === '' ? /^\d/.test(row.value.text) : WORDS.test(row.words)) ||
      (row.value.text === '' && row.value.why === undefined && row.words === '') ||
      (row.range !== undefined && !(row.range.at >= 0 && row.range.at <= 1)) ||
      (row.range !== undefined && !(/\d/.test(row.range.low) && /\d/.test(row.range.high))) ||
      ('basis' in row.value && (row.value.source ?? '') === ''),
  );
  return [
    ...(WORDS.test(title) ? [] : [`${id} is called “${title}”`]),
    ...(WORDS.test(path) && /^[A-Z][a-z]+(, \S.*| \S.*)?$/.test(path) ? [] : [`${id} stands in “${path}”`]),
    ...(isSaid(words) ? [] : [`${id} says “${words}”`]),
    ...(home === undefined || HOMES.includes(home) ? [] : [`${id} is at home in “${home}”`]),
    ...(rows.length > 0 && bases === BASES ? [] : [`${id} has no rows or no bases`]),
    ...(value.text === '' ? [`${id} has no value`] : []),
    ...(edit === undefined || WORDS.test(edit.label) ? [] : [`${id} changes “${edit.label}”`]),
    ...wrongRows.map(row => `${id} ${JSON.stringify(row)}`),
    ...usedBy
      .filter(one => !WORDS.test(one.title) || !VIEWS.includes(one.view) || one.why === '')
      .map(one => `${id} is used by ${JSON.stringify(one)}`),
  ];
}

/** Derivations whose rows make up their amount: added, or less what is taken off. */
const ADDED =
  /^(stage|element|payee|month|material|hours|basis|family|people):|^stages\/|^sums\/total$|^bid:(cost|element|base|direct|price)|^grant:(class|line|source|cash|county|cap)|^grant:tie\|.*\|(form|estimate)$/;

function sumOf(rows: readonly WhyRow[]): number {
  return rows
    .filter(row => row.depth === 0)
    .reduce((sum, { operator, value }) => {
      const amount = amountOf(value.text) ?? Number.NaN;
      return operator === '−' ? sum - amount : sum + amount;
    }, 0);
}

function wrongSum({ id, value, rows }: WhyRows): string[] {
  if (!ADDED.test(id) && !id.startsWith('grant:row')) return [];
  if (value.absent === true)
    return rows.some(row => row.value.absent === true) ? [] : [`${id} is not absent`];
  const said = amountOf(value.text) ?? Number.NaN;
  // Hours are told to a tenth, everything else as it is added.
  const least = id.startsWith('hours:') ? 0.05 * (rows.length + 1) : 0.005;
  const borne = rows.filter(row => row.depth === 1);
  const shared = borne.reduce((sum, row) => sum + (amountOf(row.value.text) ?? Number.NaN), 0);
  return [
    ...(Math.abs(sumOf(rows) - said) <= least ? [] : [`${id}: ${sumOf(rows)} for ${value.text}`]),
    ...(borne.length === 0 || Math.abs(shared - said) < 0.005
      ? []
      : [`${id}: ${shared} borne of ${value.text}`]),
    ...rows
      .filter(
        (row, place) =>
          row.depth === 0 &&
          ADDED.test(id) &&
          row.words !== 'no activity with a crew is at work that day' &&
          !(place === 0 ? row.operator === '=' : /^[+−]$/.test(row.operator)),
      )
      .map(row => `${id}: “${row.operator}” before ${row.words}`),
  ];
}

/** Amounts of money that are told without their unit. */
function withoutDollars({ id, value, rows }: WhyRows): string[] {
  if (!/^(bid|grant|stage|element|payee|month|material|basis|family):|^stages\/|^sums\/total$/.test(id))
    return [];
  const all = [value, ...rows.map(row => row.value)];
  return all.some(one => one.absent !== true && one.text !== '' && one.unit !== '$') ? [id] : [];
}

/** Names of figures behind a derivation that open nothing themselves. */
function closed(all: Everything, told: WhyRows): string[] {
  const behind = [...told.rows.flatMap(row => row.value.why ?? []), ...told.usedBy.map(one => one.why)];
  return [...behind.slice(0, 1), ...behind.slice(-1)]
    .filter(name => all.answer(name) === undefined)
    .map(name => `${told.id} leads to ${name}`);
}

/** Columns in which a figure opens what it is a part of, a share of, or set against. */
const BESIDE = /^(soFar|over|difference|contract|service|subaward|capital)$/;

/** Cells that tell another amount than their derivation. */
function otherCells(all: Everything): string[] {
  const cells = tablesIn(all.shown).flatMap(({ id, columns, rows }) =>
    columns
      .filter(({ key, unit }) => unit === '$' && !BESIDE.test(key))
      .flatMap(({ key }) =>
        [rows[Math.floor(rows.length / 2)], rows.at(-1)].flatMap(row => {
          const cell = row?.cells[key];
          return cell?.why === undefined || cell.edit !== undefined ? [] : [{ id, key, cell, why: cell.why }];
        }),
      ),
  );
  return cells.flatMap(({ id, key, cell, why }) => {
    const [said, opened] = [amountOf(cell.text), amountOf(all.answer(why)?.value.text)];
    if (said === undefined || opened === undefined) return [];
    // Whole dollars are shown so that they add up: each lies within a dollar of its amount, a family within its lines.
    const least = Math.max(1.01, 0.006 * Math.abs(said), id === 'materials' ? 20 : 0);
    return Math.abs(said - opened) <= least ? [] : [`${id} ${key} ${why}: ${said} opens ${opened}`];
  });
}

const DOCUMENTS: readonly Shown[] = [
  'a full document in feet',
  'the example',
  'a document without a schedule',
  'a document with an absent figure',
  'the runs, the comparison and the decision',
];

describe.each(DOCUMENTS)('the derivations of %s', name => {
  test('are named, told in whole sentences, add up, and lead to what stands behind them', () => {
    const all = everything(name);
    const told = sampled(whysIn(all.shown)).map(one => [one, all.answer(one)] as const);
    expect(told.length).toBeGreaterThan(20);
    expect(told.filter(([one, answer]) => answer?.id !== one).map(([one]) => one)).toEqual([]);
    const answers = told.flatMap(([, answer]) => answer ?? []);
    expect(answers.flatMap(badly)).toEqual([]);
    expect(answers.flatMap(wrongSum)).toEqual([]);
    expect(answers.flatMap(withoutDollars)).toEqual([]);
    expect(answers.flatMap(one => closed(all, one))).toEqual([]);
    expect(otherCells(all)).toEqual([]);
  });
});
