import { type Finding } from '../../base';
import { DEGREE, dry, fillLevel, gmFromRollPeriod, SEA_WATER, UPRIGHT } from '../../stability';
import { slackMoment } from './free-surface';
import type { ResolvedShip } from './resolved';
import type { LowLikelyHigh } from './types';

/** What is known of KG once the facts on the water are heard, metres, before the removed weights. */
export interface KgEvidence {
  readonly kg: LowLikelyHigh;
  /** Height of the metacentre above the keel, m, at the likely displacement, less the free surface of slack tanks. */
  readonly km: number;
  readonly findings: readonly Finding[];
}

/** How far the coefficient of the roll period may be out, as a share of the period. Judgement. */
const PERIOD_SLACK = 0.1;

function metacentre(ship: ResolvedShip): number {
  const sums = dry();
  fillLevel(ship.hull, UPRIGHT, ship.input.displacement.likely / SEA_WATER, sums);
  return (sums.auu + sums.mw) / sums.volume;
}

function finding(place: string, message: string, remedy: string): Finding {
  const meaning = 'What is given and what is seen cannot both be right, and the verdict turns on it.';
  return { code: 'upright/kg-contradicted', weight: 'warns', place, message, meaning, remedy };
}

/** Bounds on KG that the facts give, low and high. */
function bounds(ship: ResolvedShip, km: number): { low: number; high: number; why: string[] } {
  const { facts, particulars, displacement } = ship.input;
  let [low, high] = [-Infinity, Infinity];
  const why: string[] = [];
  if (facts?.afloatUpright === true) {
    high = km;
    why.push(`she floats upright, so KG is below KM ${km.toFixed(2)} m`);
  }
  if (facts?.rollPeriod !== undefined && facts.rollPeriod > 0) {
    const hull = {
      length: particulars.length,
      breadth: particulars.breadth,
      draught: particulars.lightDraught,
    };
    const { rollPeriod } = facts;
    low = Math.max(low, km - gmFromRollPeriod((1 - PERIOD_SLACK) * rollPeriod, hull));
    high = Math.min(high, km - gmFromRollPeriod((1 + PERIOD_SLACK) * rollPeriod, hull));
    why.push(`she rolls once in ${facts.rollPeriod} s`);
  }
  const moment = facts?.list?.moment;
  if (facts?.list && moment !== undefined && facts.list.degrees !== 0) {
    const gm = Math.abs(moment / (displacement.likely * Math.tan(facts.list.degrees * DEGREE)));
    [low, high] = [Math.max(low, km - 1.2 * gm), Math.min(high, km - 0.8 * gm)];
    why.push(`${Math.abs(moment)} t m list her ${Math.abs(facts.list.degrees)} degrees`);
  }
  return { low, high, why };
}

/**
 * Hears the facts before any default: afloat and upright, an observed list with its moment, a timed roll period.
 * They narrow the range of KG; a range that lies outside them is a finding and gives way to them.
 */
export function hearFacts(ship: ResolvedShip): KgEvidence {
  const { kg, facts } = ship.input;
  const slack = slackMoment(ship.input.tanks ?? [], false) / ship.input.displacement.likely;
  const km = metacentre(ship) - slack;
  const findings: Finding[] = [];
  if (facts?.list && facts.list.degrees !== 0 && facts.list.moment === undefined)
    findings.push(
      finding(
        '/facts/list',
        `She lists ${facts.list.degrees} degrees with no known cause: GM may be negative, or weight may sit off the centreline.`,
        'Find the cause before planning the flooding; give its moment when it is known.',
      ),
    );
  if (kg.likely > km && facts?.afloatUpright !== true)
    findings.push({
      ...finding(
        '/kg',
        `With KG of ${kg.likely.toFixed(2)} m (${kg.basis}) she would not float upright: KM is ${km.toFixed(2)} m.`,
        'If she lies afloat and upright, say so: KG is then below KM, and the screen uses that.',
      ),
      code: 'upright/kg-above-km',
    });
  const { low, high, why } = bounds(ship, km);
  const clamped = (value: number): number => Math.min(Math.max(value, low), Math.max(low, high));
  const isContradicted = kg.likely < low || kg.likely > high;
  if (isContradicted)
    findings.push(
      finding(
        '/kg',
        `KG of ${kg.likely.toFixed(2)} m (${kg.basis}) contradicts what is seen: ${why.join('; ')}.`,
        'Replace the value: the screen uses the nearest KG the facts allow.',
      ),
    );
  const heard = { low: clamped(kg.low), likely: clamped(kg.likely), high: clamped(kg.high) };
  return { kg: heard, km, findings };
}
