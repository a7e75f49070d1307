import { lowerFirst, recordOf } from '../base';
import { tankSchema, weightSchema } from '../project';
import { aligned, editCell, givenCell, REMOVE_COLUMN, removeCell, words } from './cells';
import type { ViewContext } from './context';
import { optionalFigure } from './term-rows';
import { inMeasures, unitWords, type Measures } from './measures';
import type { AddField, Addition, Column, Row, TableRows } from './rows';

const length = (measures: Measures) => inMeasures('0', 'm', measures).unit;

/** A field of a new entry that is a surveyed amount. */
function surveyed(path: string, label: string, unit: string, isOptional = false): AddField {
  return {
    path,
    kind: 'figure',
    label: `${label}, ${unitWords(unit)}`,
    unit,
    basis: 'surveyed',
    ...(isOptional ? { optional: true as const } : {}),
  };
}

const title: AddField = { path: 'title', kind: 'text', label: 'Name' };

const TANK_COLUMNS: readonly Column[] = [
  { key: 'title', title: 'Tank', kind: 'words' },
  { key: 'contents', title: 'Contents', kind: 'words' },
  { key: 'capacity', title: 'Capacity', kind: 'number' },
  { key: 'sounding', title: 'Sounding', kind: 'number' },
  { key: 'unit', title: 'Unit', kind: 'unit' },
  REMOVE_COLUMN,
];
const CONTENTS = tankSchema.shape.contents.options.map(id => ({ id, title: id }));

/** The tank table: what each tank holds, how much it can hold, and what was last found in it. */
export function tankTable({ evaluation: { project }, measures }: ViewContext): TableRows {
  const unit = measures === 'us' ? 'gal' : 'm3';
  const rows = project.vessel.tanks.map((tank): Row => {
    const at = `/vessel/tanks/${tank.id}`;
    const capacity = givenCell(`${at}/capacity`, `Capacity of ${tank.title}`, tank.capacity, measures);
    return {
      id: tank.id,
      kind: 'line',
      cells: {
        title: editCell({
          at: `${at}/title`,
          kind: 'text',
          value: tank.title,
          label: `Name of ${tank.title}`,
        }),
        contents: editCell({
          at: `${at}/contents`,
          kind: 'choice',
          value: tank.contents,
          choices: CONTENTS,
          label: `Contents of ${tank.title}`,
        }),
        capacity,
        sounding: optionalFigure(
          `${at}/sounding`,
          `Sounding of ${tank.title}`,
          tank.sounding,
          tank.capacity.unit,
          measures,
        ),
        unit: words(capacity.unit),
        remove: removeCell(at, `the tank ${tank.title}`),
      },
    };
  });
  return {
    id: 'tanks',
    caption: 'Tanks',
    columns: TANK_COLUMNS,
    rows: aligned(TANK_COLUMNS, rows),
    add: {
      at: '/vessel/tanks',
      what: 'a tank',
      idFrom: 'title',
      entry: {},
      fields: [
        title,
        { path: 'contents', kind: 'choice', label: 'Contents', choices: CONTENTS },
        surveyed('capacity', 'Capacity', unit),
        surveyed('sounding', 'Sounding', unit, true),
      ],
    },
  };
}

const WEIGHT_COLUMNS: readonly Column[] = [
  { key: 'title', title: 'Weight', kind: 'words' },
  { key: 'mass', title: 'Mass', kind: 'number' },
  { key: 'massUnit', title: 'Unit', kind: 'unit' },
  { key: 'vcg', title: 'Above the keel', kind: 'number' },
  { key: 'lcg', title: 'Forward of midships', kind: 'number' },
  { key: 'tcg', title: 'To starboard', kind: 'number' },
  { key: 'unit', title: 'Unit', kind: 'unit' },
  REMOVE_COLUMN,
];
const CENTRES = ['vcg', 'lcg', 'tcg'] as const satisfies readonly (keyof typeof weightSchema.shape)[];
const CENTRE_WORDS = { vcg: 'above the keel', lcg: 'forward of midships', tcg: 'to starboard' } as const;

/** The weight list: mass and centre of everything that is counted apart. */
export function weightTable({ evaluation: { project }, measures }: ViewContext): TableRows {
  const rows = project.vessel.weights.map((weight): Row => {
    const at = `/vessel/weights/${weight.id}`;
    const mass = givenCell(`${at}/mass`, `Mass of ${weight.title}`, weight.mass, measures);
    const centres = recordOf(CENTRES, key =>
      givenCell(`${at}/${key}`, `${weight.title}, ${CENTRE_WORDS[key]}`, weight[key], measures),
    );
    return {
      id: weight.id,
      kind: 'line',
      cells: {
        title: editCell({
          at: `${at}/title`,
          kind: 'text',
          value: weight.title,
          label: `Name of ${weight.title}`,
        }),
        mass,
        massUnit: words(mass.unit),
        ...centres,
        unit: words(centres.vcg.unit),
        remove: removeCell(at, `the weight ${weight.title}`),
      },
    };
  });
  const mass = inMeasures('0', 't', measures).unit;
  return {
    id: 'weights',
    caption: 'Weight list',
    columns: WEIGHT_COLUMNS,
    rows: aligned(WEIGHT_COLUMNS, rows),
    add: {
      at: '/vessel/weights',
      what: 'a weight',
      idFrom: 'title',
      entry: {},
      fields: [
        title,
        surveyed('mass', 'Mass', mass),
        ...CENTRES.map(key => surveyed(key, CENTRE_WORDS[key], length(measures))),
      ],
    },
  };
}

const OPENING_COLUMNS: readonly Column[] = [
  { key: 'compartment', title: 'Compartment', kind: 'words' },
  { key: 'side', title: 'Side', kind: 'words' },
  { key: 'count', title: 'How many', kind: 'number' },
  { key: 'area', title: 'Area of one', kind: 'number' },
  { key: 'areaUnit', title: 'Unit', kind: 'unit' },
  { key: 'height', title: 'Height of one', kind: 'number' },
  { key: 'centre', title: 'Centre above the keel', kind: 'number' },
  { key: 'unit', title: 'Unit', kind: 'unit' },
  REMOVE_COLUMN,
];
const SIDES = ['both', 'port', 'starboard', 'bottom'].map(id => ({ id, title: id }));

/** The openings cut in each compartment. */
export function openingTable({ evaluation: { project }, measures }: ViewContext): TableRows {
  const { compartments } = project.vessel;
  const rows = compartments.flatMap(one =>
    one.openings.map((opening): Row => {
      const at = `/vessel/compartments/${one.id}/openings/${opening.id}`;
      const of = `opening ${opening.id.replaceAll('-', ' ')} in ${one.title}`;
      const area = givenCell(`${at}/area`, `Area of ${of}`, opening.area, measures);
      const height = givenCell(`${at}/height`, `Height of ${of}`, opening.height, measures);
      return {
        id: `${one.id}-${opening.id}`,
        kind: 'line',
        subject: one.id,
        cells: {
          compartment: words(one.title),
          side: editCell({
            at: `${at}/side`,
            kind: 'choice',
            value: opening.side,
            choices: SIDES,
            label: `Side of ${of}`,
          }),
          count: editCell({
            at: `${at}/count`,
            kind: 'whole',
            value: String(opening.count),
            label: `How many, ${of}`,
          }),
          area,
          areaUnit: words(area.unit),
          height,
          centre: givenCell(`${at}/centre`, `Centre of ${of}`, opening.centre, measures),
          unit: words(height.unit),
          remove: removeCell(at, `the ${of}`),
        },
      };
    }),
  );
  return {
    id: 'openings',
    caption: 'Openings',
    columns: OPENING_COLUMNS,
    rows: aligned(OPENING_COLUMNS, rows),
  };
}

/** What a new opening of a compartment needs. */
function openingAddition(compartment: { id: string; title: string }, measures: Measures): Addition {
  const unit = length(measures);
  return {
    at: `/vessel/compartments/${compartment.id}/openings`,
    what: `an opening to ${lowerFirst(compartment.title)}`,
    idFrom: 'side',
    entry: {},
    fields: [
      { path: 'side', kind: 'choice', label: 'Side', choices: SIDES },
      { path: 'count', kind: 'whole', label: 'How many', value: '1' },
      surveyed('area', 'Area of one', inMeasures('0', 'm2', measures).unit),
      surveyed('height', 'Height of one', unit),
      surveyed('centre', 'Centre above the keel', unit),
    ],
  };
}

/** What a new compartment needs. */
export function compartmentAddition(measures: Measures): Addition {
  const unit = length(measures);
  return {
    at: '/vessel/compartments',
    what: 'a compartment',
    idFrom: 'title',
    entry: { openings: [], vents: [], connections: [] },
    fields: [
      title,
      surveyed('from', 'From the stern', unit),
      surveyed('to', 'To', unit),
      surveyed('bottom', 'Bottom above the keel', unit),
      surveyed('top', 'Top above the keel', unit),
      { path: 'permeability', kind: 'figure', label: 'Permeability, 0 to 1', unit: '1', value: '0.95' },
    ],
  };
}

/** What may be added to each compartment. */
export function openingAdditions({ evaluation: { project }, measures }: ViewContext): readonly Addition[] {
  return project.vessel.compartments.map(one => openingAddition(one, measures));
}
