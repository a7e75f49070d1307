import { z } from 'zod';
import { decimalText, figureSchema, isoDate, key, provenanceSchema } from '../../base';
import { titleText, words, year } from './texts';

/** A tank of the tank table: capacity, contents and the last sounding. */
export const tankSchema = z.strictObject({
  id: key,
  title: titleText,
  capacity: figureSchema,
  contents: z.enum([
    'fuel',
    'lube',
    'cargo oil',
    'oily water',
    'ballast',
    'fresh water',
    'sewage',
    'empty',
    'unknown',
  ]),
  sounding: figureSchema.optional(),
  /** Length and breadth of the free surface, and equal parts it is divided into across the ship. */
  surfaceLength: figureSchema.optional(),
  surfaceBreadth: figureSchema.optional(),
  surfaceParts: z.int().min(1).max(20).optional(),
});

/** A row of the weight list: mass and centre, above keel, forward of midships, to starboard. */
export const weightSchema = z.strictObject({
  id: key,
  title: titleText,
  mass: figureSchema,
  vcg: figureSchema,
  lcg: figureSchema,
  tcg: figureSchema,
});

/** A hole in a compartment: to the sea, or to the next compartment. */
export const openingSchema = z.strictObject({
  id: key,
  side: z.enum(['port', 'starboard', 'both', 'bottom']),
  area: figureSchema,
  height: figureSchema,
  centre: figureSchema,
  count: z.int().min(1).max(500),
});

/** A compartment: its extent from the stern, the centreline and the keel. */
export const compartmentSchema = z.strictObject({
  id: key,
  title: titleText,
  from: figureSchema,
  to: figureSchema,
  inner: figureSchema.optional(),
  outer: figureSchema.optional(),
  bottom: figureSchema,
  top: figureSchema,
  permeability: figureSchema,
  /** Whether the plan floods it: at once, once she has sunk to openings cut high, or not at all. */
  floods: z.enum(['at-once', 'late', 'no']).optional(),
  openings: z.array(openingSchema).default([]),
  vents: z.array(z.strictObject({ area: figureSchema, centre: figureSchema })).default([]),
  connections: z
    .array(
      z.strictObject({
        to: key,
        area: figureSchema,
        centre: figureSchema,
        kind: z.enum(['door', 'cut', 'corridor']),
        height: figureSchema.optional(),
        closed: z.boolean().optional(),
      }),
    )
    .default([]),
});

/** An offset table: half-breadths by height above the keel, from the stern forward. One source for all of it. */
export const offsetTableSchema = z.strictObject({
  unit: z.enum(['m', 'ft']),
  ...provenanceSchema.shape,
  stations: z
    .array(
      z.strictObject({
        id: key,
        /** From the aft perpendicular forward. */
        at: decimalText,
        points: z.array(z.strictObject({ height: decimalText, halfBreadth: decimalText })).min(2),
      }),
    )
    .min(1)
    .max(60),
});

export const vesselSchema = z.strictObject({
  name: titleText,
  hullType: key,
  built: year,
  lastRefit: year.optional(),
  lastCoating: year.optional(),
  plant: z.enum(['steam', 'diesel', 'none']).optional(),
  length: figureSchema,
  beam: figureSchema.optional(),
  depth: figureSchema.optional(),
  draughtLight: figureSchema.optional(),
  draughtFull: figureSchema.optional(),
  blockCoefficient: figureSchema.optional(),
  lightship: figureSchema.optional(),
  kg: figureSchema.optional(),
  rollPeriod: figureSchema.optional(),
  observedList: figureSchema.optional(),
  /** The moment that causes the observed list, tonne metres, where it is known. */
  listMoment: figureSchema.optional(),
  offsets: offsetTableSchema.optional(),
  tanks: z.array(tankSchema).default([]),
  weights: z.array(weightSchema).default([]),
  compartments: z.array(compartmentSchema).default([]),
});

export const siteSchema = z.strictObject({
  name: titleText,
  port: titleText,
  county: titleText,
  waterDepth: figureSchema,
  clearanceRequired: figureSchema,
  bottomSlope: figureSchema.optional(),
  towDistance: figureSchema,
  /** The tow: speed, wind it is planned for, and what the route leaves room for. */
  towSpeed: figureSchema.optional(),
  towWind: figureSchema.optional(),
  lowestBridge: figureSchema.optional(),
  shallowestChannel: figureSchema.optional(),
  berthDepth: figureSchema.optional(),
  /** The wave of the design storm: height, and period in seconds. */
  waveHeight: figureSchema.optional(),
  wavePeriod: figureSchema.optional(),
  yardDistance: figureSchema.optional(),
  permit: z
    .strictObject({
      number: z.string(),
      expires: isoDate,
      conditions: z.array(z.strictObject({ text: words, met: z.enum(['yes', 'no', 'unknown']) })),
    })
    .optional(),
});
