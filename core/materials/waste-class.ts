import type { Finding } from '../base';
import { decimalProduct } from '../units';
import { readResult, verdictOf, type ReadResult, type Verdict } from './laboratory';
import { LEACH_METALS, totalThatAsks, type LeachMetal } from './leach';
import type { TripPoint } from './schema';
import type { SampleResult } from './survey';
import { tripPoint } from './trips';

/** What laboratory results of metals say of the waste of a material. */
export type WasteClass = 'hazardous' | 'not hazardous' | 'test asked for' | 'cannot tell';

/** The class of the waste of one sampled material. */
export interface SampledClass {
  readonly material: string;
  readonly wasteClass: WasteClass;
  /** Samples it rests on, and the year of the latest. */
  readonly samples: number;
  readonly year: number;
  readonly findings: readonly Finding[];
}

const SYMBOLS: Readonly<Record<LeachMetal, string>> = {
  lead: 'Pb',
  chromium: 'Cr',
  cadmium: 'Cd',
  arsenic: 'As',
  mercury: 'Hg',
  selenium: 'Se',
  silver: 'Ag',
  barium: 'Ba',
};

/** Units of a leachate, as factors to milligrams a litre, and of a total, as factors to milligrams a kilogram. */
const LEACHATE: Readonly<Record<string, string>> = { 'mg/l': '1', 'ug/l': '0.001', 'µg/l': '0.001' };
const TOTAL: Readonly<Record<string, string>> = {
  'mg/kg': '1',
  ppm: '1',
  'ug/g': '1',
  'µg/g': '1',
  'ug/kg': '0.001',
  'µg/kg': '0.001',
  '%': '10000',
};

interface MetalResult {
  readonly result: SampleResult;
  readonly place: string;
  readonly metal: LeachMetal;
  readonly kind: 'leachate' | 'total';
  readonly verdict: Verdict;
}

/**
 * The class of the waste of every material that was sampled for metals. A leachate at or above its limit makes it
 * hazardous. A total below twenty times the limit clears; at or above it the leach test is asked for, unless the same
 * sample has one. Only when every result clears is it not hazardous.
 * @source 40 CFR 261.24 table 1; SW-846 method 1311, section 1.2
 */
export function sampledClasses(
  results: readonly SampleResult[],
  points: readonly TripPoint[],
): SampledClass[] {
  const read = results.flatMap((result, i) => metalResult(result, `/survey/laboratory/${i}`, points));
  const materials = [...new Set(read.map(one => one.result.material))];
  return materials.map(material => {
    const own = read.filter(one => one.result.material === material);
    const asking = own.filter(one => asksUnanswered(one, own));
    const unclear = own.filter(one => one.verdict === 'cannot tell');
    const failing = own.filter(one => one.kind === 'leachate' && one.verdict === 'trips');
    return {
      material,
      wasteClass:
        failing.length > 0
          ? 'hazardous'
          : asking.length > 0
            ? 'test asked for'
            : unclear.length > 0
              ? 'cannot tell'
              : 'not hazardous',
      samples: new Set(own.map(one => one.result.sample)).size,
      year: Math.max(...own.map(one => Number(one.result.date.slice(0, 4)))),
      findings: [
        ...asking.map(one => testAskedFor(one, points)),
        ...unclear.map(cannotTell),
        ...failing.map(one => failsTest(one, points)),
      ],
    };
  });
}

function metalResult(result: SampleResult, place: string, points: readonly TripPoint[]): MetalResult[] {
  const metal = LEACH_METALS.find(
    name =>
      new RegExp(`\\b${name}\\b`, 'i').test(result.analyte) ||
      new RegExp(`\\b${SYMBOLS[name]}\\b`).test(result.analyte),
  );
  if (metal === undefined) return [];
  const unit = result.unit.trim().toLowerCase();
  const kind = unit in LEACHATE ? 'leachate' : 'total';
  const factor = LEACHATE[unit] ?? TOTAL[unit];
  if (factor === undefined) return [{ result, place, metal, kind, verdict: 'cannot tell' }];
  const point = tripPoint(points, `leach-${metal}`);
  const value = kind === 'leachate' ? point.figure.value : totalThatAsks(points, metal);
  const held: TripPoint = { ...point, figure: { ...point.figure, value } };
  return [{ result, place, metal, kind, verdict: verdictOf(scaled(readResult(result), factor), held) }];
}

function scaled(read: ReadResult, factor: string): ReadResult {
  if (read.kind === 'measured') return { kind: 'measured', value: decimalProduct(read.value, factor) };
  return read.kind === 'below' ? { kind: 'below', limit: decimalProduct(read.limit, factor) } : read;
}

function asksUnanswered(one: MetalResult, own: readonly MetalResult[]): boolean {
  if (one.kind !== 'total' || one.verdict !== 'trips') return false;
  return !own.some(
    other =>
      other.kind === 'leachate' &&
      other.metal === one.metal &&
      other.result.sample === one.result.sample &&
      other.verdict !== 'cannot tell',
  );
}

function testAskedFor({ result, place, metal }: MetalResult, points: readonly TripPoint[]): Finding {
  return {
    code: 'survey/leach-test-asked-for',
    weight: 'warns',
    place,
    message: `Sample ${result.sample}: total ${metal} of ${result.result} ${result.unit} is at or above ${totalThatAsks(points, metal)} mg/kg, twenty times the leach limit.`,
    meaning: 'Whether the waste is hazardous is open; the assumed share stays.',
    remedy: 'Have the leach test made on this sample and enter its result in mg/L.',
    rule: tripPoint(points, 'leach-screen').rule,
  };
}

function failsTest({ result, place, metal }: MetalResult, points: readonly TripPoint[]): Finding {
  const point = tripPoint(points, `leach-${metal}`);
  return {
    code: 'survey/fails-leach-test',
    weight: 'notes',
    place,
    message: `Sample ${result.sample}: ${metal} of ${result.result} ${result.unit} in the leachate is at or above ${point.figure.value} mg/L.`,
    meaning:
      'The waste of this material is hazardous: all of it is priced so and counts towards the generator category.',
    remedy: 'Sample more spaces if part of it may be clear, and keep the two apart.',
    rule: point.rule,
  };
}

function cannotTell({ result, place, metal }: MetalResult): Finding {
  return {
    code: 'survey/leach-result-unclear',
    weight: 'warns',
    place,
    message: `Sample ${result.sample}: "${result.result}" ${result.unit} does not tell whether ${metal} clears its limit.`,
    meaning: 'Whether the waste is hazardous is open; the assumed share stays.',
    remedy: 'Give the result, or a reporting limit below the limit of the rule.',
    rule: '40 CFR 261.24 table 1',
  };
}
