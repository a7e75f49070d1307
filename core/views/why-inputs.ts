import type { EstimateContext } from './context';
import { asStep } from './cells';
import { inMeasures } from './measures';
import type { Edit } from './rows';

/** Where the input behind a figure stands, and how it is changed. */
export interface InputPlace {
  readonly edit: Edit;
  readonly home: string;
}

const PARTICULARS: Readonly<Record<string, string>> = {
  length: 'length',
  beam: 'beam',
  depth: 'depth',
  'draught-light': 'draughtLight',
  'draught-full': 'draughtFull',
  lightship: 'lightship',
  'block-coefficient': 'blockCoefficient',
};
const SITE: Readonly<Record<string, string>> = {
  'water-depth': 'waterDepth',
  'tow-distance': 'towDistance',
  'yard-distance': 'yardDistance',
};
const ITEM_FIELDS: Readonly<Record<string, string>> = {
  quantity: 'quantity',
  'hours-per-unit': 'hoursPerUnit',
  crews: 'crewsAtOnce',
};

/** A rule from the id of a figure to the place of its input. */
type Rule = (
  table: string,
  row: string,
  column: string | undefined,
) => { at: string; home: string } | undefined;

const RULES: readonly Rule[] = [
  (table, key) => {
    const field = table === 'ship' ? PARTICULARS[key] : undefined;
    return field === undefined ? undefined : { at: `/vessel/${field}`, home: 'vessel' };
  },
  (table, key) => {
    const field = table === 'ship' ? SITE[key] : undefined;
    return field === undefined ? undefined : { at: `/site/${field}`, home: 'vessel' };
  },
  (table, item, column) => {
    const isOfItem = column !== undefined && ['worked', 'hauled', 'items', 'timing', 'lines'].includes(table);
    const field = isOfItem ? ITEM_FIELDS[column] : undefined;
    return field === undefined ? undefined : { at: `/items/${item}/${field}`, home: 'work' };
  },
  (table, trade, column) =>
    table === 'trades' && column === 'wage' ? rate(`trades/${trade}/wage`) : undefined,
  (table, id) => (table === 'mark-ups' ? rate(`markUps/${id}/share`) : undefined),
  (table, id) => (table === 'conditions' ? rate(`conditions/${id}/factor`) : undefined),
  (table, row, column) => {
    const equipment = row.split('.')[1];
    return table === 'hires' && column === 'rate' && equipment !== undefined
      ? rate(`equipment/${equipment}/rate`)
      : undefined;
  },
  (table, driver, column) =>
    /^drivers-\d$/.test(table) && (column === 'measured' || column === 'number')
      ? { at: `/survey/measured/${driver}/figure`, home: 'work' }
      : undefined,
];

function rate(place: string): { at: string; home: string } {
  return { at: `/rates/overrides/${asStep(place)}/figure`, home: 'rates' };
}

/** The input behind a figure of the sheets; undefined when it is no input and none replaces it. */
export function inputOf(context: EstimateContext, id: string): InputPlace | undefined {
  const [table = '', row = '', column] = id.split('/');
  for (const rule of RULES) {
    const found = rule(table, row, column);
    if (found !== undefined) return { edit: editOf(context, id, found.at), home: found.home };
  }
  return undefined;
}

function editOf(context: EstimateContext, id: string, at: string): Edit {
  const { work, money } = context.parts;
  const { unit, text, title, rowTitle } = (
    money?.result.has(id) === true ? money.result : work.result
  ).figure(id);
  const driverUnit = at.startsWith('/survey/measured/')
    ? context.evaluation.library.drivers.find(one => at.includes(`/${one.id}/`))?.unit
    : undefined;
  const shown = inMeasures(text ?? '0', driverUnit ?? unit, context.measures);
  return {
    at,
    kind: 'figure',
    value: text === undefined ? '' : shown.value,
    unit: shown.unit,
    label: rowTitle ?? title,
  };
}
