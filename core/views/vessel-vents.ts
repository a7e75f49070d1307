import { lowerFirst } from '../base';
import type { Project } from '../project';
import { aligned, editCell, givenCell, REMOVE_COLUMN, removeCell, switchCell, words } from './cells';
import type { ViewContext } from './context';
import { optionalFigure } from './term-rows';
import { inMeasures, unitWords, type Measures } from './measures';
import type { AddField, Addition, Column, Row, TableRows } from './rows';

type Compartment = Project['vessel']['compartments'][number];

const VENT_COLUMNS: readonly Column[] = [
  { key: 'compartment', title: 'Compartment', kind: 'words' },
  { key: 'area', title: 'Area', kind: 'number' },
  { key: 'areaUnit', title: 'Unit', kind: 'unit' },
  { key: 'centre', title: 'Centre above the keel', kind: 'number' },
  { key: 'unit', title: 'Unit', kind: 'unit' },
  REMOVE_COLUMN,
];

/** The vents that let air out of each compartment. */
export function ventTable({ evaluation: { project }, measures }: ViewContext): TableRows {
  const rows = project.vessel.compartments.flatMap(one =>
    one.vents.map((vent, number): Row => {
      const at = `/vessel/compartments/${one.id}/vents/${number}`;
      const of = `vent ${number + 1} of ${one.title}`;
      const area = givenCell(`${at}/area`, `Area of ${of}`, vent.area, measures);
      const centre = givenCell(`${at}/centre`, `Centre of ${of}`, vent.centre, measures);
      return {
        id: `${one.id}-vent-${number}`,
        kind: 'line',
        subject: one.id,
        cells: {
          compartment: words(one.title),
          area,
          areaUnit: words(area.unit),
          centre,
          unit: words(centre.unit),
          remove: removeCell(at, `the ${of}`),
        },
      };
    }),
  );
  return { id: 'vents', caption: 'Vents', columns: VENT_COLUMNS, rows: aligned(VENT_COLUMNS, rows) };
}

const LINK_COLUMNS: readonly Column[] = [
  { key: 'compartment', title: 'From', kind: 'words' },
  { key: 'to', title: 'To', kind: 'words' },
  { key: 'kind', title: 'Through', kind: 'words' },
  { key: 'closed', title: 'Closed', kind: 'words' },
  { key: 'area', title: 'Area', kind: 'number' },
  { key: 'areaUnit', title: 'Unit', kind: 'unit' },
  { key: 'height', title: 'Height', kind: 'number' },
  { key: 'centre', title: 'Centre above the keel', kind: 'number' },
  { key: 'unit', title: 'Unit', kind: 'unit' },
  REMOVE_COLUMN,
];
const KINDS = ['door', 'cut', 'corridor'].map(id => ({ id, title: id }));

function others(compartments: readonly Compartment[], own: string): NonNullable<AddField['choices']> {
  return compartments.filter(one => one.id !== own).map(({ id, title }) => ({ id, title }));
}

/** The ways by which water runs from one compartment to the next. */
export function connectionTable({ evaluation: { project }, measures }: ViewContext): TableRows {
  const { compartments } = project.vessel;
  const rows = compartments.flatMap(one =>
    one.connections.map((link, number): Row => {
      const at = `/vessel/compartments/${one.id}/connections/${number}`;
      const of = `way ${number + 1} out of ${one.title}`;
      const area = givenCell(`${at}/area`, `Area of ${of}`, link.area, measures);
      const centre = givenCell(`${at}/centre`, `Centre of ${of}`, link.centre, measures);
      const choice = (field: 'to' | 'kind', label: string, choices: AddField['choices']) =>
        editCell({
          at: `${at}/${field}`,
          kind: 'choice',
          value: link[field],
          label: `${label} of ${of}`,
          ...(choices === undefined ? {} : { choices }),
        });
      return {
        id: `${one.id}-way-${number}`,
        kind: 'line',
        subject: one.id,
        cells: {
          compartment: words(one.title),
          to: choice('to', 'Far side', others(compartments, one.id)),
          kind: choice('kind', 'Kind', KINDS),
          closed: switchCell(`${at}/closed`, `Closed, ${of}`, link.closed === true),
          area,
          areaUnit: words(area.unit),
          height: optionalFigure(`${at}/height`, `Height of ${of}`, link.height, 'm', measures),
          centre,
          unit: words(centre.unit),
          remove: removeCell(at, `the ${of}`),
        },
      };
    }),
  );
  return {
    id: 'connections',
    caption: 'Ways between compartments',
    columns: LINK_COLUMNS,
    rows: aligned(LINK_COLUMNS, rows),
  };
}

function surveyed(path: string, label: string, metric: string, measures: Measures): AddField {
  const { unit } = inMeasures('0', metric, measures);
  return { path, kind: 'figure', label: `${label}, ${unitWords(unit)}`, unit, basis: 'surveyed' };
}

/** What may be added to each compartment beside its openings: a vent, and a way to another compartment. */
export function ventAdditions({ evaluation: { project }, measures }: ViewContext): readonly Addition[] {
  const { compartments } = project.vessel;
  return compartments.flatMap(one => {
    const name = lowerFirst(one.title);
    const at = `/vessel/compartments/${one.id}`;
    const area = surveyed('area', 'Area', 'm2', measures);
    const centre = surveyed('centre', 'Centre above the keel', 'm', measures);
    const choices = others(compartments, one.id);
    const vent: Addition = {
      at: `${at}/vents`,
      what: `a vent to ${name}`,
      entry: {},
      fields: [area, centre],
    };
    if (choices.length === 0) return [vent];
    return [
      vent,
      {
        at: `${at}/connections`,
        what: `a way out of ${name}`,
        entry: {},
        fields: [
          { path: 'to', kind: 'choice', label: 'To', choices },
          { path: 'kind', kind: 'choice', label: 'Through', choices: KINDS },
          area,
          centre,
        ],
      },
    ];
  });
}
