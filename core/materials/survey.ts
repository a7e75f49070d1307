import type { Finding } from '../base';
import { readResult, resultFinding, verdictOf, type LaboratoryCell, type ReadResult } from './laboratory';
import { presenceOf, type Presence, type ShipYears } from './presence';
import type { FamilyKey, Material, TripPoint } from './schema';
import { decimalProduct } from '../units';
import { tripPoint } from './trips';

/** A laboratory result of a sample of a material. */
export interface SampleResult extends LaboratoryCell {
  readonly sample: string;
  readonly material: string;
  readonly analyte: string;
  readonly unit: string;
  readonly date: string;
}

/** An intake answer that is unknown, and how much wider it makes the range of the families it speaks of. */
export interface IntakeWidening {
  readonly item: string;
  readonly families: readonly FamilyKey[];
  /** Share of the likely amount added below and above. */
  readonly widening: number;
}

/** How a laboratory decides presence: trip-point, analytes, and units as factors to the unit of the trip-point. */
interface DecidedBy {
  readonly point: string;
  readonly analyte: RegExp;
  readonly units: Readonly<Record<string, string>>;
  readonly unitWords: string;
}

const BY_WEIGHT: Readonly<Record<string, string>> = {
  ppm: '1',
  'mg/kg': '1',
  'ug/g': '1',
  'µg/g': '1',
  'ug/kg': '0.001',
  'µg/kg': '0.001',
  '%': '10000',
};

/** The families whose presence a laboratory decides. */
const BY_FAMILY: Readonly<Partial<Record<FamilyKey, DecidedBy>>> = {
  pcb: {
    point: 'pcb-bulk-product',
    analyte: /pcb|aroclor|polychlorinated/i,
    units: BY_WEIGHT,
    unitWords: 'mg/kg or ppm for PCB',
  },
  asbestos: {
    point: 'asbestos-content',
    analyte: /asbestos|chrysotile|amosite|crocidolite/i,
    units: { '%': '0.01', percent: '0.01', '1': '1' },
    unitWords: '% for asbestos',
  },
};

/** Materials that a laboratory decides by a trip-point of their own. */
const BY_MATERIAL: Readonly<Record<string, DecidedBy>> = {
  'tbt-antifouling': {
    point: 'tbt-content',
    analyte: /tbt|tributyltin|organotin/i,
    units: BY_WEIGHT,
    unitWords: 'mg of tin a kg of dry paint for tributyltin',
  },
};

function decidedBy({ id, family }: Material): DecidedBy | undefined {
  return BY_MATERIAL[id] ?? BY_FAMILY[family];
}

/** Presence by material: of the survey where it decides, else by era; wider where the intake is unknown. */
export interface SurveyedPresence {
  readonly presence: ReadonlyMap<string, Presence>;
  /** Materials that the survey decided. */
  readonly sampled: ReadonlySet<string>;
  readonly findings: readonly Finding[];
}

/**
 * The presence of every material. A sampled material of which every result, reporting limits too, stays clear of its
 * trip-point is not there; one result that trips makes it certain; otherwise the assumption by era stays.
 */
export function surveyedPresence(
  materials: readonly Material[],
  years: ShipYears,
  results: readonly SampleResult[],
  points: readonly TripPoint[],
  unknowns: readonly IntakeWidening[],
): SurveyedPresence {
  const read = materials.map(material => ({ material, ...decided(material, results, points) }));
  return {
    presence: new Map(
      read.flatMap(({ material, presence }): [string, Presence][] => {
        const found = presence ?? widened(presenceOf(material, years), material, unknowns);
        return found === undefined ? [] : [[material.id, found]];
      }),
    ),
    sampled: new Set(read.flatMap(({ material, presence }) => (presence ? [material.id] : []))),
    findings: read.flatMap(row => row.findings),
  };
}

function decided(
  material: Material,
  results: readonly SampleResult[],
  points: readonly TripPoint[],
): { presence?: Presence; findings: Finding[] } {
  const rule = decidedBy(material);
  const own = results
    .map((result, i) => ({ result, place: `/survey/laboratory/${i}` }))
    .filter(({ result }) => result.material === material.id && rule?.analyte.test(result.analyte));
  if (rule === undefined || own.length === 0) return { findings: [] };
  const point = tripPoint(points, rule.point);
  const read = own.map(({ result, place }) => ({
    result,
    place,
    value: inPointUnit(readResult(result), rule.units[result.unit.trim().toLowerCase()]),
  }));
  const findings = read.flatMap(({ result, place, value }) =>
    value === undefined
      ? [wrongUnit(result, place, rule.unitWords)]
      : (resultFinding(value, point, place, result.sample) ?? []),
  );
  const verdicts = read.map(({ value }) => (value === undefined ? 'cannot tell' : verdictOf(value, point)));
  if (verdicts.includes('trips'))
    return {
      presence: surveyed(
        1,
        own.map(row => row.result),
      ),
      findings,
    };
  if (verdicts.includes('cannot tell')) return { findings };
  return {
    presence: surveyed(
      0,
      own.map(row => row.result),
    ),
    findings,
  };
}

/**
 * Whether a sample of liquid makes transformers and capacitors PCB equipment: at or above the limit by weight.
 * @source 40 CFR 761.3
 */
export function asksForPcbEquipment(points: readonly TripPoint[], result: SampleResult): boolean {
  const rule = BY_FAMILY.pcb;
  if (rule?.analyte.test(result.analyte) !== true) return false;
  const value = inPointUnit(readResult(result), rule.units[result.unit.trim().toLowerCase()]);
  return value !== undefined && verdictOf(value, tripPoint(points, 'pcb-article-class')) === 'trips';
}

function inPointUnit(read: ReadResult, factor: string | undefined): ReadResult | undefined {
  if (factor === undefined) return read.kind === 'measured' || read.kind === 'below' ? undefined : read;
  const scaled = (text: string) => decimalProduct(text, factor);
  if (read.kind === 'measured') return { kind: 'measured', value: scaled(read.value) };
  return read.kind === 'below' ? { kind: 'below', limit: scaled(read.limit) } : read;
}

function surveyed(share: 0 | 1, results: readonly SampleResult[]): Presence {
  const years = results.map(result => Number(result.date.slice(0, 4)));
  return {
    low: share,
    likely: share,
    high: share,
    basis: 'surveyed',
    source: `Laboratory results of ${results.length === 1 ? 'one sample' : `${results.length} samples`}: ${
      share === 0 ? 'all clear of the trip-point' : 'at least one at or past the trip-point'
    }`,
    year: Math.max(...years),
  };
}

function wrongUnit(result: SampleResult, place: string, unitWords: string): Finding {
  return {
    code: 'survey/wrong-unit',
    weight: 'warns',
    place,
    message: `Sample ${result.sample}: "${result.unit}" is not a unit in which ${result.analyte} is held against its trip-point.`,
    meaning: 'The result is not used; the assumption by era stays.',
    remedy: `Give the result in ${unitWords}.`,
  };
}

function widened(
  presence: Presence | undefined,
  material: Material,
  unknowns: readonly IntakeWidening[],
): Presence | undefined {
  const by = Math.max(
    0,
    ...unknowns.filter(row => row.families.includes(material.family)).map(row => row.widening),
  );
  if (presence === undefined || by === 0) return presence;
  const { likely } = presence;
  return {
    ...presence,
    low: Math.min(presence.low, round(likely * (1 - by))),
    high: Math.max(presence.high, round(likely * (1 + by))),
  };
}

function round(share: number): number {
  return Math.round(share * 1e6) / 1e6;
}
