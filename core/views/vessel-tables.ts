import { withId, type Figure } from '../base';
import type { Project } from '../project';
import { idOf } from '../sheet';
import type { MeasureKey } from '../vessel';
import {
  aligned,
  basisCell,
  editCell,
  figureEdit,
  givenCell,
  NOT_APPLYING,
  REMOVE_COLUMN,
  removeCell,
  words,
  type GivenShown,
} from './cells';
import { figureCell, type EstimateContext, type ViewContext } from './context';
import type { Column, Edit, Row, Shown, TableRows } from './rows';
import { compartmentAddition } from './vessel-lists';

const COLUMNS: readonly Column[] = [
  { key: 'title', title: 'Particular', kind: 'words' },
  { key: 'value', title: 'Value', kind: 'number' },
  { key: 'unit', title: 'Unit', kind: 'unit' },
  { key: 'basis', title: 'Basis', kind: 'basis' },
];

/** A particular: a field of the document, or what the hull type stands in with. */
type Line = readonly [
  field: 'length' | 'beam' | 'depth' | 'draughtLight' | 'draughtFull' | 'lightship' | 'kg',
  title: string,
  unit: string,
  measure: MeasureKey | undefined,
];

const LINES: readonly Line[] = [
  ['length', 'Length overall', 'm', 'length'],
  ['beam', 'Beam', 'm', 'beam'],
  ['depth', 'Depth, upper deck', 'm', 'depth'],
  ['draughtLight', 'Draught light', 'm', 'draught-light'],
  ['draughtFull', 'Draught full', 'm', 'draught-full'],
  ['lightship', 'Lightship', 't', 'lightship'],
  ['kg', 'KG, light', 'm', undefined],
];

function figureOf(project: Project, field: Line[0]): Figure | undefined {
  return project.vessel[field];
}

/** Particulars of the ship: given, or standing in from the hull type until they are. */
export function particulars(context: EstimateContext): TableRows {
  const { project } = context.evaluation;
  const rows: Row[] = [
    hullTypeRow(context),
    textRow('built', 'Built', {
      at: '/vessel/built',
      kind: 'whole',
      value: String(project.vessel.built),
      label: 'Year built',
    }),
    yearRow('lastRefit', 'Last refit', project.vessel.lastRefit),
    yearRow('lastCoating', 'Last antifouling', project.vessel.lastCoating),
    ...LINES.flatMap(line => particular(context, line)),
  ];
  return {
    id: 'particulars',
    caption: 'Particulars',
    columns: COLUMNS,
    rows: aligned(COLUMNS, rows),
    note: [
      'A number that is typed counts as judgement. A click on its basis lets you say where it comes from.',
    ],
  };
}

function particular(context: EstimateContext, [field, title, unit, measure]: Line): Row[] {
  const at = `/vessel/${field}`;
  const figure = figureOf(context.evaluation.project, field);
  if (figure !== undefined)
    return [givenRow(field, title, givenCell(at, title, figure, context.measures), figure)];
  if (measure === undefined) {
    const edit = figureEdit(at, title, undefined, unit, context.measures);
    return [row(field, title, { text: 'not given', edit }, words(edit.unit), NOT_APPLYING)];
  }
  const { work } = context.parts;
  const step = work.takeOff.measures[measure];
  const shown = figureCell(context, work.result, step, undefined, unit === 'm' ? 1 : 0);
  const edit = figureEdit(at, title, undefined, unit, context.measures);
  const value = {
    ...shown,
    edit: { ...edit, value: shown.absent === true ? '' : shown.text.replaceAll(',', '') },
  };
  return [row(field, title, value, words(shown.unit ?? ''), { text: 'hull type', why: idOf(step) })];
}

function row(id: string, title: string, value: Shown, unit: Shown, basis: Shown): Row {
  return { id, kind: 'line', cells: { title: words(title), value, unit, basis } };
}

function givenRow(id: string, title: string, value: GivenShown, figure: Figure): Row {
  return row(id, title, value, words(value.unit), basisCell(figure.basis, figure.source, value.why));
}

function hullTypeRow({ evaluation: { project, library } }: EstimateContext): Row {
  const choices = library.hullTypes.map(({ id, title }) => ({ id, title }));
  const { title } = withId(choices, project.vessel.hullType);
  const edit: Edit = {
    at: '/vessel/hullType',
    kind: 'choice',
    value: project.vessel.hullType,
    choices,
    label: 'Hull type',
  };
  return row('hullType', 'Hull type', { text: title, edit }, words(''), words(''));
}

/** A year that may not be known. */
function yearRow(id: 'lastRefit' | 'lastCoating', title: string, year: number | undefined): Row {
  const value = year === undefined ? '' : String(year);
  const edit: Edit = { at: `/vessel/${id}`, kind: 'whole', value, optional: true, label: `${title}, year` };
  return row(id, title, { text: value === '' ? 'not given' : value, edit }, words(''), words(''));
}

function textRow(id: string, title: string, edit: Edit): Row {
  return row(id, title, { text: edit.value, edit }, words(''), words(''));
}

const SITE: readonly (readonly [
  'waterDepth' | 'clearanceRequired' | 'bottomSlope' | 'towDistance' | 'yardDistance',
  string,
])[] = [
  ['waterDepth', 'Water depth'],
  ['clearanceRequired', 'Clearance required'],
  ['bottomSlope', 'Bottom slope'],
  ['towDistance', 'Tow distance'],
  ['yardDistance', 'Road to disposal'],
];

/** The site: depth, clearance and distances. */
export function siteTable({ evaluation: { project }, measures }: ViewContext): TableRows {
  const rows: Row[] = SITE.flatMap(([field, title]) => {
    const figure = project.site[field];
    if (figure === undefined) return [];
    const shown = givenCell(`/site/${field}`, title, figure, measures);
    return [givenRow(field, title, shown, figure)];
  });
  return { id: 'site', caption: 'Site', columns: COLUMNS, rows: aligned(COLUMNS, rows) };
}

const NAME_COLUMNS: readonly Column[] = [
  { key: 'title', title: 'Name', kind: 'words' },
  { key: 'value', title: 'As papers print it', kind: 'words' },
];

/** The names on papers. */
export function namesTable({ evaluation: { project } }: ViewContext): TableRows {
  const named = (field: 'name' | 'port' | 'county', title: string): Row =>
    nameRow(field, title, { at: `/site/${field}`, kind: 'text', value: project.site[field], label: title });
  const ship = {
    at: '/vessel/name',
    kind: 'text' as const,
    value: project.vessel.name,
    label: 'Name of the ship',
  };
  return {
    id: 'names',
    caption: 'Names',
    columns: NAME_COLUMNS,
    rows: [
      nameRow('project', 'Project', {
        at: '/title',
        kind: 'text',
        value: project.title,
        label: 'Name of the project',
      }),
      nameRow('ship', 'Ship', ship),
      named('name', 'Reef site'),
      named('port', 'Preparation port'),
      named('county', 'County'),
    ],
  };
}

/** A name and its input. */
function nameRow(id: string, title: string, edit: Edit): Row {
  return { id, kind: 'line', cells: { title: words(title), value: { text: edit.value, edit } } };
}

const COMPARTMENT_COLUMNS: readonly Column[] = [
  { key: 'number', title: 'No.', kind: 'words' },
  { key: 'title', title: 'Name', kind: 'words' },
  { key: 'from', title: 'From stern', kind: 'number' },
  { key: 'to', title: 'To', kind: 'number' },
  { key: 'bottom', title: 'Bottom', kind: 'number', wide: true },
  { key: 'top', title: 'Top', kind: 'number', wide: true },
  { key: 'openings', title: 'Openings', kind: 'number' },
  { key: 'permeability', title: 'Permeability', kind: 'number', wide: true },
  REMOVE_COLUMN,
];

/** Compartments bow to stern with their extent and openings. */
export function compartmentTable({ evaluation: { project }, measures }: ViewContext): TableRows {
  const ordered = project.vessel.compartments.toSorted((a, b) => Number(b.from.value) - Number(a.from.value));
  const rows = ordered.map((one, at): Row => {
    const place = `/vessel/compartments/${one.id}`;
    const extent = (field: 'from' | 'to' | 'bottom' | 'top', title: string) =>
      givenCell(`${place}/${field}`, `${one.title}, ${title}`, one[field], measures);
    const count = one.openings.reduce((sum, opening) => sum + opening.count, 0);
    return {
      id: one.id,
      kind: 'line',
      subject: one.id,
      cells: {
        number: words(String(at + 1)),
        title: editCell({
          at: `${place}/title`,
          kind: 'text',
          value: one.title,
          label: `Name of ${one.title}`,
        }),
        from: extent('from', 'from the stern'),
        to: extent('to', 'to'),
        bottom: extent('bottom', 'bottom'),
        top: extent('top', 'top'),
        openings: { text: String(count), why: `openings:${one.id}` },
        permeability: givenCell(
          `${place}/permeability`,
          `${one.title}, permeability`,
          one.permeability,
          measures,
        ),
        remove: removeCell(place, `the compartment ${one.title}`),
      },
    };
  });
  const unit = rows[0]?.cells['from']?.unit;
  const columns = COMPARTMENT_COLUMNS.map(column =>
    unit !== undefined && ['from', 'to', 'bottom', 'top'].includes(column.key) ? { ...column, unit } : column,
  );
  return {
    id: 'compartments',
    caption: 'Compartments, bow to stern',
    columns,
    rows: aligned(columns, rows),
    add: compartmentAddition(measures),
  };
}
