import { expect, it } from 'vitest';
import type { Addition, TableRows } from '../../../core/views';
import {
  compartmentAddition,
  openingAdditions,
  openingTable,
  tankTable,
  weightTable,
} from '../../../core/views/vessel-lists';
import { connectionTable, ventAdditions, ventTable } from '../../../core/views/vessel-vents';
import { demoProject, evaluated } from '../evaluation/demo';

const figure = (value: string, unit: string) => ({
  value,
  unit,
  basis: 'surveyed' as const,
  source: 'invented',
});
const bounds = {
  from: figure('0', 'm'),
  to: figure('9', 'm'),
  bottom: figure('0', 'm'),
  top: figure('5', 'm'),
};
const space = { ...bounds, permeability: figure('0.9', '1'), openings: [], vents: [], connections: [] };

/** The demo with lists of one entry each. */
function listed(measures: 'us' | 'metric', compartments = 2) {
  const demo = demoProject();
  const hold = {
    ...space,
    id: 'hold',
    title: 'Hold',
    openings: [
      {
        id: 'side-door',
        side: 'port' as const,
        count: 2,
        area: figure('10', 'm2'),
        height: figure('1.524', 'm'),
        centre: figure('3.048', 'm'),
      },
    ],
    vents: [{ area: figure('1', 'm2'), centre: figure('6.096', 'm') }],
    connections: [
      { to: 'tank', kind: 'door' as const, area: figure('2', 'm2'), centre: figure('1', 'm'), closed: true },
    ],
  };
  const vessel = {
    ...demo.vessel,
    compartments: [hold, { ...space, id: 'tank', title: 'Tank' }].slice(0, compartments),
    tanks: [{ id: 'fuel', title: 'Fuel tank', contents: 'fuel' as const, capacity: figure('1000', 'gal') }],
    weights: [
      {
        id: 'engine',
        title: 'Engine',
        mass: figure('20', 't'),
        vcg: figure('3', 'm'),
        lcg: figure('-6', 'm'),
        tcg: figure('0', 'm'),
      },
    ],
  };
  return { evaluation: { ...evaluated(demo), project: { ...demo, vessel } }, measures };
}

/** Each row as it is read: its cells in order, an edit by what it is called. */
const read = ({ rows }: TableRows) =>
  rows.map(row => [
    row.id,
    ...Object.values(row.cells).map(({ text, edit, remove }) =>
      [
        text,
        ...(edit === undefined ? [] : [edit.label, edit.at]),
        ...(remove === undefined ? [] : [remove.label, remove.at]),
      ].join(' | '),
    ),
  ]);
const asked = (additions: readonly (Addition | undefined)[]) =>
  additions.map(one => [
    one?.at,
    one?.what,
    ...(one?.fields ?? []).map(({ label, unit }) => `${label}${unit === undefined ? '' : ` (${unit})`}`),
  ]);

// One foot is 0.3048 m, one gallon 3.785412 litres, one long ton 1.016047 t (NIST SP 811, appendix B.8).
it('openings, vents and ways are read in the reader’s measures, each with its edit', () => {
  const us = listed('us');
  const hold = '/vessel/compartments/hold';
  const door = 'opening side door in Hold';
  expect(read(openingTable(us))).toEqual([
    [
      'hold-side-door',
      'Hold',
      `port | Side of ${door} | ${hold}/openings/side-door/side`,
      `2 | How many, ${door} | ${hold}/openings/side-door/count`,
      `107.6 | Area of ${door} | ${hold}/openings/side-door/area`,
      'sq ft',
      `5.00 | Height of ${door} | ${hold}/openings/side-door/height`,
      `10.0 | Centre of ${door} | ${hold}/openings/side-door/centre`,
      'ft',
      `Remove | the ${door} | ${hold}/openings/side-door`,
    ],
  ]);
  expect(read(ventTable(us))).toEqual([
    [
      'hold-vent-0',
      'Hold',
      `10.8 | Area of vent 1 of Hold | ${hold}/vents/0/area`,
      'sq ft',
      `20.0 | Centre of vent 1 of Hold | ${hold}/vents/0/centre`,
      'ft',
      `Remove | the vent 1 of Hold | ${hold}/vents/0`,
    ],
  ]);
  const way = 'way 1 out of Hold';
  expect(read(connectionTable(listed('metric')))).toEqual([
    [
      'hold-way-0',
      'Hold',
      `tank | Far side of ${way} | ${hold}/connections/0/to`,
      `door | Kind of ${way} | ${hold}/connections/0/kind`,
      `true | Closed, ${way} | ${hold}/connections/0/closed`,
      `2 | Area of ${way} | ${hold}/connections/0/area`,
      'm²',
      ` | Height of ${way} | ${hold}/connections/0/height`,
      `1 | Centre of ${way} | ${hold}/connections/0/centre`,
      'm',
      `Remove | the ${way} | ${hold}/connections/0`,
    ],
  ]);
  const [row] = connectionTable(us).rows;
  expect(row?.cells['to']?.edit?.choices).toEqual([{ id: 'tank', title: 'Tank' }]);
  expect(row?.cells['height']?.edit).toMatchObject({ unit: 'ft', value: '', optional: true });
});

it('tanks and weights are read in the reader’s measures', () => {
  const at = '/vessel/tanks/fuel';
  expect(read(tankTable(listed('metric')))).toEqual([
    [
      'fuel',
      `Fuel tank | Name of Fuel tank | ${at}/title`,
      `fuel | Contents of Fuel tank | ${at}/contents`,
      `3.79 | Capacity of Fuel tank | ${at}/capacity`,
      ` | Sounding of Fuel tank | ${at}/sounding`,
      'm³',
      `Remove | the tank Fuel tank | ${at}`,
    ],
  ]);
  const engine = '/vessel/weights/engine';
  expect(read(weightTable(listed('us')))).toEqual([
    [
      'engine',
      `Engine | Name of Engine | ${engine}/title`,
      `19.7 | Mass of Engine | ${engine}/mass`,
      'long tons',
      `9.84 | Engine, above the keel | ${engine}/vcg`,
      `−19.7 | Engine, forward of midships | ${engine}/lcg`,
      `0.0 | Engine, to starboard | ${engine}/tcg`,
      'ft',
      `Remove | the weight Engine | ${engine}`,
    ],
  ]);
});

it('what can be added is asked for in the reader’s measures; a ship of one space has no way out of it', () => {
  const us = listed('us');
  expect(asked(ventAdditions(us)).slice(0, 2)).toEqual([
    [
      '/vessel/compartments/hold/vents',
      'a vent to hold',
      'Area, sq ft (ft2)',
      'Centre above the keel, ft (ft)',
    ],
    [
      '/vessel/compartments/hold/connections',
      'a way out of hold',
      'To',
      'Through',
      'Area, sq ft (ft2)',
      'Centre above the keel, ft (ft)',
    ],
  ]);
  expect(ventAdditions(us)[3]?.fields[0]?.choices).toEqual([{ id: 'hold', title: 'Hold' }]);
  expect(asked(ventAdditions(listed('us', 1))).map(([at]) => at)).toEqual([
    '/vessel/compartments/hold/vents',
  ]);
  expect(asked(openingAdditions(listed('metric', 1)))).toEqual([
    [
      '/vessel/compartments/hold/openings',
      'an opening to hold',
      'Side',
      'How many',
      'Area of one, m² (m2)',
      'Height of one, m (m)',
      'Centre above the keel, m (m)',
    ],
  ]);
  expect(asked([compartmentAddition('us'), tankTable(us).add])).toEqual([
    [
      '/vessel/compartments',
      'a compartment',
      ...[
        'Name',
        'From the stern, ft (ft)',
        'To, ft (ft)',
        'Bottom above the keel, ft (ft)',
        'Top above the keel, ft (ft)',
      ],
      'Permeability, 0 to 1 (1)',
    ],
    ['/vessel/tanks', 'a tank', 'Name', 'Contents', 'Capacity, gal (gal)', 'Sounding, gal (gal)'],
  ]);
});
