import { at } from '../../base';
import {
  gmUpright,
  leverArea,
  leverAt,
  leverCurve,
  type Centre,
  type LeverCurve,
  type WetShip,
} from '../../stability';
import type { ScreenCase } from './cases';
import { slackMoment } from './free-surface';
import { centreAfter, massAfter, type ResolvedShip } from './resolved';
import type { UprightYardstick } from './types';

/** What the rules measure on a ship afloat. */
interface Afloat {
  readonly gm: number;
  readonly curve: LeverCurve;
}

type Rule = readonly [
  rule: string,
  asks: string,
  unit: UprightYardstick['unit'],
  least: number,
  of: (ship: Afloat) => number,
];

/** Weather criteria for a ship under way, and a stricter one for fishing vessels. As read in 2023. */
const AFLOAT: readonly Rule[] = [
  ['46 CFR 170.173(b)', 'GM of at least 0.15 m', 'm', 0.15, ship => ship.gm],
  ['46 CFR 170.173(b)', 'GZ of at least 0.20 m at 30 degrees or more', 'm', 0.2, ship => leverFrom30(ship)],
  [
    '46 CFR 170.173(b)',
    'greatest GZ at 25 degrees or more',
    'degrees',
    25,
    ship => ship.curve.greatest.degrees,
  ],
  ['46 CFR 170.173(b)', 'at least 3.15 metre degrees up to 30 degrees', 'm degrees', 3.15, area(0, 30)],
  ['46 CFR 170.173(b)', 'at least 5.15 metre degrees up to 40 degrees', 'm degrees', 5.15, area(0, 40)],
  [
    '46 CFR 170.173(b)',
    'at least 1.72 metre degrees between 30 and 40 degrees',
    'm degrees',
    1.72,
    area(30, 40),
  ],
  [
    '46 CFR 170.173(c)',
    'greatest GZ at 15 degrees or more',
    'degrees',
    15,
    ship => ship.curve.greatest.degrees,
  ],
  ['46 CFR 28.570', 'GM of at least 0.35 m', 'm', 0.35, ship => ship.gm],
  ['46 CFR 28.570', 'righting levers up to 60 degrees', 'degrees', 60, ship => ship.curve.vanishes],
];

function area(from: number, to: number): (ship: Afloat) => number {
  return ({ curve }) => leverArea(curve, from, Math.min(to, Math.max(from, curve.vanishes)));
}

function leverFrom30({ curve }: Afloat): number {
  return curve.greatest.degrees >= 30 ? curve.greatest.gz : leverAt(curve, 30);
}

function afloat(ship: ResolvedShip, likely: ScreenCase): UprightYardstick[] {
  const dry = at(likely.path.levels, 0);
  const { tanks = [], displacement } = ship.input;
  const slack = slackMoment(tanks, false) - slackMoment(tanks, true);
  const { kg, tcg } = centreAfter(ship.input, likely.displacement, likely.kg);
  const centre = { kg: kg + slack / massAfter(ship.input, displacement.likely), tcg };
  const measured = { gm: gmUpright(dry.ship, centre.kg), curve: leverCurve(dry.ship, centre) };
  return AFLOAT.map(([rule, asks, unit, least, of]) => {
    const found = of(measured);
    return { condition: 'afloat before the sinking', rule, asks, found, unit, meets: found >= least };
  });
}

/** What the rules for a damaged ship measure beyond her equilibrium heel. */
interface Settled {
  readonly heel: number;
  readonly greatest: number;
  readonly range: number;
  readonly gm: number;
}

/**
 * Factor s of an intermediate stage: the fourth root of greatest lever over 0.05 m times range over 7 degrees, at
 * most 1, and 0 beyond 15 degrees of heel. @source SOLAS 1974 as amended, chapter II-1 regulation 7-2 (from memory).
 */
export function intermediateFactor({ heel, greatest, range }: Omit<Settled, 'gm'>): number {
  if (heel > 15 || greatest <= 0 || range <= 0) return 0;
  return Math.min(1, ((Math.min(greatest, 0.05) / 0.05) * (Math.min(range, 7) / 7)) ** 0.25);
}

type DamageRule = readonly [
  rule: string,
  asks: string,
  unit: UprightYardstick['unit'],
  of: (ship: Settled) => number,
  meets: (found: number) => boolean,
];

const atLeast = (limit: number) => (found: number) => found >= limit;
const atMost = (limit: number) => (found: number) => found <= limit;

const FLOODED: readonly DamageRule[] = [
  ['46 CFR 172.245', 'heel of at most 15 degrees', 'degrees', ship => ship.heel, atMost(15)],
  ['46 CFR 172.245', 'range of at least 20 degrees beyond it', 'degrees', ship => ship.range, atLeast(20)],
  ['46 CFR 172.245', 'greatest GZ of at least 0.10 m', 'm', ship => ship.greatest, atLeast(0.1)],
  ['46 CFR 172.245', 'GM of at least 0.05 m', 'm', ship => ship.gm, atLeast(0.05)],
  ['33 CFR 157.21', 'heel of at most 25 degrees', 'degrees', ship => ship.heel, atMost(25)],
  ['IMO guidance after damage', 'greatest GZ of at least 0.05 m', 'm', ship => ship.greatest, atLeast(0.05)],
  ['IMO guidance after damage', 'range of at least 7 degrees', 'degrees', ship => ship.range, atLeast(7)],
  ['SOLAS II-1/7-2', 'factor s of an intermediate stage, 1 is full', '1', intermediateFactor, atLeast(1)],
];

function settled(ship: WetShip, centre: Centre, heel: number): Settled {
  const curve = leverCurve(ship, centre, Math.abs(heel), heel < 0 ? -1 : 1);
  return {
    heel: Math.abs(heel),
    greatest: curve.greatest.gz,
    range: Math.max(0, curve.vanishes - Math.abs(heel)),
    gm: gmUpright(ship, centre.kg),
  };
}

function flooded(ship: ResolvedShip, likely: ScreenCase): UprightYardstick[] {
  const reached = likely.path.levels.filter(({ state }) => state.level === likely.worst.level);
  const centre = centreAfter(ship.input, likely.displacement, likely.kg);
  const heel = likely.worst.heel;
  const measured = heel === undefined ? undefined : settled(at(reached, 0).ship, centre, heel);
  return FLOODED.map(([rule, asks, unit, of, meets]) => {
    const frame = { condition: 'at the worst flood level', rule, asks, unit } as const;
    if (measured === undefined) return { ...frame, meets: false };
    const found = of(measured);
    return { ...frame, found, meets: meets(found) };
  });
}

/**
 * Values of public stability rules for the likely ship: afloat before the sinking by the weather criteria, and at the
 * flood level of her greatest heel by those after damage. Yardsticks for context: the rules are not made for a ship
 * that is to be sunk, and nothing here is an approval.
 */
export function yardsticks(ship: ResolvedShip, likely: ScreenCase): UprightYardstick[] {
  return [...afloat(ship, likely), ...flooded(ship, likely)];
}
