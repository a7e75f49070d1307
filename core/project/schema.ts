import { z } from 'zod';
import { decimalText, figureSchema, isoDate, key } from '../base';
import { importMappingSchema } from './imports/mapping';
import { workItemSchema } from '../work';
import { benefitsSchema, bidSchema, fundingSchema } from './funding-schema';

/** The version of the document format this program writes. */
export const FORMAT = 'reefwright-project';
export const VERSION = 1;

const words = z.string().max(4000);
const titleText = z.string().min(1).max(200);
const year = z.int().min(1850).max(2100);
const share = z
  .string()
  .regex(/^(0(\.\d{1,6})?|1(\.0{1,6})?)$/, 'write a share between 0 and 1, such as 0.25');

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
  openings: z.array(openingSchema).default([]),
  vents: z.array(z.strictObject({ area: figureSchema, centre: figureSchema })).default([]),
  connections: z
    .array(
      z.strictObject({
        to: key,
        area: figureSchema,
        centre: figureSchema,
        kind: z.enum(['door', 'cut', 'corridor']),
      }),
    )
    .default([]),
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
  yardDistance: figureSchema.optional(),
  permit: z
    .strictObject({
      number: z.string(),
      expires: isoDate,
      conditions: z.array(z.strictObject({ text: words, met: z.enum(['yes', 'no', 'unknown']) })),
    })
    .optional(),
});

/** The twelve things the guidance's work plan asks to assemble; an unknown widens the range. */
export const INTAKE = [
  'asbestos-papers',
  'pcb-papers',
  'demilitarisation',
  'refrigerants-out',
  'hazardous-material-information',
  'hull-paint-and-date',
  'general-drawings',
  'size-and-superstructure',
  'tank-soundings',
  'reuse-list',
  'laws-and-permits',
  'site-survey',
] as const;

/** A laboratory result as it stood in the report. */
export const laboratoryResultSchema = z.strictObject({
  sample: z.string().min(1),
  space: z.string(),
  material: key,
  analyte: z.string(),
  result: z.string(),
  unit: z.string(),
  qualifier: z.string(),
  reportingLimit: decimalText.optional(),
  date: isoDate,
});

export const surveySchema = z.strictObject({
  intake: z.partialRecord(z.enum(INTAKE), z.enum(['yes', 'no', 'unknown'])).default({}),
  /** Measured quantities that replace assumptions, by driver. */
  measured: z
    .array(z.strictObject({ driver: key, figure: figureSchema, note: words.optional() }))
    .default([]),
  laboratory: z.array(laboratoryResultSchema).default([]),
});

/** A quote: what it covers, until when, and whether it is the one relied on. */
export const quoteSchema = z.strictObject({
  id: key,
  vendor: titleText,
  dated: isoDate,
  validUntil: isoDate,
  covers: z.array(z.strictObject({ item: key, share })).min(1),
  exclusions: z.array(words).default([]),
  /** A lump sum in USD, or a price per unit of the one item it covers. */
  amount: figureSchema,
  chosen: z.boolean(),
  attachment: z.string().optional(),
  note: words.optional(),
});

/** What the planner changes about one work item; every change keeps its note. */
export const adjustmentSchema = z.strictObject({
  item: key,
  include: z.boolean().optional(),
  quantity: figureSchema.optional(),
  hoursPerUnit: figureSchema.optional(),
  crewsAtOnce: figureSchema.optional(),
  duration: figureSchema.optional(),
  notBefore: isoDate.optional(),
  actualStart: isoDate.optional(),
  actualFinish: isoDate.optional(),
  remaining: figureSchema.optional(),
  note: words,
});

export const calendarsSchema = z.strictObject({
  start: isoDate,
  deadline: isoDate.optional(),
  federalHolidays: z.boolean(),
  closures: z
    .array(
      z.strictObject({
        id: key,
        title: titleText,
        from: isoDate,
        to: isoDate,
        calendars: z.array(z.enum(['office', 'yard', 'sea', 'continuous'])),
      }),
    )
    .default([]),
});

/** A relationship between two work items: the second after, with, or until the first. */
export const relationshipSchema = z.strictObject({
  from: key,
  to: key,
  kind: z.enum(['FS', 'SS', 'FF', 'SF']),
  lag: figureSchema.optional(),
  maximumLag: figureSchema.optional(),
  note: words.optional(),
});

/** One difference of a scenario: where in the document, and what stands there instead. */
export const changeSchema = z.strictObject({
  at: z.string().regex(/^(\/[A-Za-z0-9-]+)+$/),
  to: z.json(),
  note: words.optional(),
});
export const scenarioSchema = z.strictObject({
  id: key,
  title: titleText,
  note: words.optional(),
  changes: z.array(changeSchema),
});

export const contingencySchema = z.strictObject({
  policy: z.enum(['percentage', 'confidence']),
  share: figureSchema.optional(),
  confidence: share.optional(),
});

export const projectSchema = z.strictObject({
  format: z.literal(FORMAT),
  version: z.literal(VERSION),
  sha256: z
    .string()
    .regex(/^[0-9a-f]{64}$/)
    .optional(),
  title: titleText,
  /** Set on invented examples: every paper says so. */
  sample: z.boolean(),
  reader: z.enum(['grant', 'bid', 'comparison']),
  statusDate: isoDate.optional(),
  vessel: vesselSchema,
  site: siteSchema,
  survey: surveySchema.default({ intake: {}, measured: [], laboratory: [] }),
  rates: z.strictObject({
    book: key,
    priceDate: isoDate,
    /** Prices held at the mean of this year, nothing escalated beyond it. */
    fixedPriceYear: year.optional(),
    /** The user’s wage table: it stands before the rate book, and a rate below it is a finding. */
    wages: z.array(z.strictObject({ trade: key, figure: figureSchema })).default([]),
    overrides: z
      .array(z.strictObject({ at: z.string(), figure: figureSchema, note: words.optional() }))
      .default([]),
  }),
  quotes: z.array(quoteSchema).default([]),
  calendars: calendarsSchema,
  options: z.record(key, z.string()),
  items: z.array(adjustmentSchema).default([]),
  /** Work items of this project alone, in the form of the library. */
  ownItems: z.array(workItemSchema).default([]),
  /** Relationships of this project alone, beside those of the library. */
  relationships: z.array(relationshipSchema).default([]),
  contingency: contingencySchema,
  funding: fundingSchema.optional(),
  bid: bidSchema.optional(),
  benefits: benefitsSchema.optional(),
  attachments: z
    .array(
      z.strictObject({
        name: titleText,
        sha256: z.string(),
        page: z.int().optional(),
        note: words.optional(),
      }),
    )
    .default([]),
  /** How the columns of imported files become fields. */
  imports: z.array(importMappingSchema).optional(),
  notes: z.array(z.strictObject({ at: z.string(), text: words })).default([]),
  scenarios: z.array(scenarioSchema).min(1).max(26),
});

export type Project = z.infer<typeof projectSchema>;
export type Vessel = z.infer<typeof vesselSchema>;
export type Site = z.infer<typeof siteSchema>;
export type Survey = z.infer<typeof surveySchema>;
export type Quote = z.infer<typeof quoteSchema>;
export type Adjustment = z.infer<typeof adjustmentSchema>;
export type Scenario = z.infer<typeof scenarioSchema>;
export type Relationship = z.infer<typeof relationshipSchema>;
export type Change = z.infer<typeof changeSchema>;
