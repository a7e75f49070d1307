import type { Evaluation, PreparedEstimate, RiskView } from '../../evaluation';
import { shippedRisk } from '../../evaluation';
import type { RegisterEvent } from '../../risk';
import { aligned, editCell, figureEdit, NOT_APPLYING, REMOVE_COLUMN, removeCell, words } from '../cells';
import { dollars, roundText, shortNumber } from '../number-text';
import type { Addition, Column, Edit, Row, Shown, TableRows } from '../rows';
import type { LibraryEvent } from './rows';
import { inHundred, perCent, signedDollars } from './words';

const COLUMNS: readonly Column[] = [
  { key: 'title', title: 'Event', kind: 'words' },
  { key: 'owner', title: 'Owner', kind: 'words' },
  { key: 'probability', title: 'Chance', unit: '%', kind: 'number' },
  { key: 'cost', title: 'Costs', unit: '$', kind: 'number' },
  { key: 'delay', title: 'Delays', unit: 'work days', kind: 'number' },
  { key: 'share', title: 'Of the variance', unit: '%', kind: 'number' },
  { key: 'mitigation', title: 'What can be done', kind: 'words' },
  { key: 'price', title: 'Price', unit: '$', kind: 'number' },
  { key: 'mean', title: 'Changes the mean by', unit: '$', kind: 'number' },
  { key: 'p80', title: 'And P80 by', unit: '$', kind: 'number' },
  REMOVE_COLUMN,
];

type Register = NonNullable<Evaluation['project']['risk']>['register'];

/** The register: who owns each event, how likely and how large it is, what can be done and what that buys. */
export function registerTable(
  evaluation: Evaluation,
  prepared: PreparedEstimate | undefined,
  view: RiskView | undefined,
): TableRows {
  const own = evaluation.project.risk?.register ?? [];
  const events = prepared?.run.events ?? [];
  const rows = events.map(event =>
    registerRow(
      event,
      own.find(one => one.id === event.id),
      view,
    ),
  );
  const unused = own.filter(one => !events.some(event => event.id === one.id));
  return {
    id: 'register',
    caption: 'Register',
    columns: COLUMNS,
    rows: aligned(COLUMNS, [...rows.toSorted(byShare(view)), ...unused.map(unusedRow)]),
    note: [
      'Chance and impact of the project’s own events can be changed here. Those of the library are taken in first.',
      ' An amount pays for the work that an event makes, not for a reef that it spoils: a ship on her side can rarely be put right, and what is paid for is the attempt.',
    ],
    ...(evaluation.project.risk === undefined ? {} : { add: addition(evaluation) }),
  };
}

function byShare(view: RiskView | undefined) {
  const shareOf = (row: Row) => view?.register.find(one => one.id === row.id)?.contribution ?? -1;
  return (a: Row, b: Row) => shareOf(b) - shareOf(a);
}

function registerRow(
  event: RegisterEvent,
  own: Register[number] | undefined,
  view: RiskView | undefined,
): Row {
  const found = view?.register.find(one => one.id === event.id);
  const buys = found?.mitigation?.buys;
  const { mitigation } = event;
  return {
    id: event.id,
    kind: 'line',
    cells: {
      title: words(event.title),
      owner: own === undefined ? words(event.owner ?? '–') : ownerCell(own),
      probability: probabilityCell(event, own),
      cost: impactCell(
        'costs',
        event.costs.map(({ line, dollars: size }) => ({ of: line, size })),
        own,
      ),
      delay: impactCell(
        'delays',
        event.delays.map(({ activity, workDays }) => ({ of: activity, size: workDays })),
        own,
      ),
      share:
        found?.contribution === undefined ? NOT_APPLYING : words(perCent(Math.max(0, found.contribution))),
      mitigation: mitigation === undefined ? NOT_APPLYING : words(mitigation.title),
      price: mitigation === undefined ? NOT_APPLYING : words(dollars(mitigation.cost * 100).replace('$', '')),
      mean: buys === undefined ? NOT_APPLYING : words(signedDollars(buys.meanCost)),
      p80: buys === undefined ? NOT_APPLYING : words(signedDollars(buys.p80Cost)),
      ...(own === undefined
        ? {}
        : { remove: removeCell(`/risk/register/${event.id}`, `the event ${event.title}`) }),
    },
  };
}

function ownerCell({ id, title, owner }: Register[number]): Shown {
  const label = `Owner of ${title}`;
  return editCell({
    at: `/risk/register/${id}/owner`,
    kind: 'text',
    value: owner ?? '',
    label,
    optional: true,
  });
}

function probabilityCell(event: RegisterEvent, own: Register[number] | undefined): Shown {
  const text = shortNumber(roundText((event.probability * 100).toFixed(8), 4));
  if (own === undefined) return words(text);
  const at = `/risk/register/${own.id}/probability`;
  const edit = figureEdit(at, `Chance of ${own.title}, as a share`, own.probability, '1', 'us');
  return { text, edit };
}

type Size = RegisterEvent['costs'][number]['dollars'];

/** One part of an impact: the line or activity of the scenario that it falls on. */
interface Part {
  readonly of: string;
  readonly size: Size;
}

/** The likely size of an impact, its parts together; of an event of the project that has one part here it can be changed. */
function impactCell(
  kind: 'costs' | 'delays',
  parts: readonly Part[],
  own: Register[number] | undefined,
): Shown {
  const sizes = parts.flatMap(({ size }) => likelyOf(size) ?? []);
  if (sizes.length === 0) return NOT_APPLYING;
  const text = shownSize(
    kind,
    sizes.reduce((sum, size) => sum + size, 0),
  );
  if (parts.length > 1) return words(`${text} in ${parts.length} parts`);
  const edit = own && ownEdit(kind, own, parts[0]?.of);
  return edit === undefined ? words(text) : { text, edit };
}

/** The cell that changes the part of an own event that falls on an item. */
function ownEdit(
  kind: 'costs' | 'delays',
  own: Register[number],
  item: string | undefined,
): Edit | undefined {
  const number = own[kind].findIndex(part => part.item === item);
  const at = `/risk/register/${own.id}/${kind}/${number}`;
  return kind === 'costs'
    ? figureEdit(`${at}/dollars`, `What ${own.title} costs`, own.costs[number]?.dollars, 'USD', 'us')
    : figureEdit(
        `${at}/workDays`,
        `Work days that ${own.title} takes`,
        own.delays[number]?.workDays,
        'work-day',
        'us',
      );
}

function shownSize(part: 'costs' | 'delays', value: number): string {
  return part === 'costs' ? dollars(Math.round(value * 100)).replace('$', '') : shortNumber(value.toFixed(4));
}

function likelyOf(size: Size): number | undefined {
  if (size.kind === 'certain') return size.value;
  return size.kind === 'triangular' || size.kind === 'pert' ? size.likely : undefined;
}

/** An own event that finds neither line nor activity in this scenario still stands in the register. */
function unusedRow(event: Register[number]): Row {
  return {
    id: event.id,
    kind: 'line',
    cells: {
      title: words(event.title),
      owner: ownerCell(event),
      probability: words(inHundred(Number(event.probability.value))),
      cost: NOT_APPLYING,
      delay: NOT_APPLYING,
      share: words('not in this scenario'),
      mitigation: NOT_APPLYING,
      price: NOT_APPLYING,
      mean: NOT_APPLYING,
      p80: NOT_APPLYING,
      remove: removeCell(`/risk/register/${event.id}`, `the event ${event.title}`),
    },
  };
}

function addition({ estimate }: Evaluation): Addition {
  const items = (estimate?.items ?? []).map(({ id, title }) => ({ id, title }));
  return {
    at: '/risk/register',
    what: 'an event',
    idFrom: 'title',
    entry: { costs: [{}], delays: [] },
    fields: [
      { path: 'title', kind: 'text', label: 'What may happen' },
      { path: 'owner', kind: 'text', label: 'Owner' },
      { path: 'probability', kind: 'figure', label: 'Chance, as a share', unit: '1', value: '0.1' },
      { path: 'costs/0/item', kind: 'choice', label: 'Work item that pays', choices: items },
      { path: 'costs/0/dollars', kind: 'figure', label: 'What it costs, $', unit: 'USD' },
    ],
  };
}

/** Events of the library as entries of the project’s register: the same chances and impacts, to be changed there. */
export function libraryEvents(
  { project }: Evaluation,
  prepared: PreparedEstimate | undefined,
): readonly LibraryEvent[] {
  const own = new Set((project.risk?.register ?? []).map(event => event.id));
  const rows = new Map(shippedRisk().events.map(row => [row.id, row]));
  return (prepared?.run.events ?? []).flatMap((event): LibraryEvent[] => {
    const row = rows.get(event.id);
    if (row === undefined || own.has(event.id)) return [];
    const figure = (size: RegisterEvent['costs'][number]['dollars'], unit: string) => ({
      ...sizes(size, unit === 'USD' ? 2 : 4),
      unit,
      basis: (row.cost?.share ?? row.delay?.workDays ?? row.probability).basis,
      source: `${(row.cost?.share ?? row.delay?.workDays ?? row.probability).source} (on this estimate)`,
    });
    return [
      {
        id: event.id,
        title: event.title,
        entry: {
          id: event.id,
          title: event.title,
          ...(event.owner === undefined ? {} : { owner: event.owner }),
          probability: row.probability,
          costs: event.costs.map(({ line, dollars: size }) => ({ item: line, dollars: figure(size, 'USD') })),
          delays: event.delays.map(({ activity, workDays }) => ({
            item: activity,
            workDays: figure(workDays, 'work-day'),
          })),
          mitigation: row.mitigation,
          note: row.note,
        },
      },
    ];
  });
}

function sizes(size: RegisterEvent['costs'][number]['dollars'], decimals: number) {
  const text = (value: number) => roundText(value.toFixed(decimals + 6), decimals);
  if (size.kind === 'triangular' || size.kind === 'pert')
    return { value: text(size.likely), low: text(size.low), high: text(size.high) };
  return { value: text(likelyOf(size) ?? 0) };
}
