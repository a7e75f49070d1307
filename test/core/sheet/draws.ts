import { randomStream, type RandomStream } from '../../../core/base';
import type { Given } from '../../../core/sheet';
import type { PlainUnit, Unit } from '../../../core/units';

/** Values of givens by id, in place of the generator's own: a trial of a simulation. */
export type Override = (id: string) => string | undefined;

/** What a given may be drawn from: amounts that are likely to hit an edge. */
export type Draw = (random: RandomStream) => string;

export function pick<T>(random: RandomStream, from: readonly T[]): T {
  const found = from[Math.floor(random() * from.length)];
  if (found === undefined) throw new Error('nothing to pick from');
  return found;
}

export const decimal =
  (from: number, to: number, digits: number): Draw =>
  random =>
    (from + random() * (to - from)).toFixed(digits);

const oneOf =
  (...draws: readonly Draw[]): Draw =>
  random =>
    pick(random, draws)(random);

const fixed =
  (text: string): Draw =>
  () =>
    text;

/** Charges, credits, nothing. */
export const money = oneOf(decimal(-9000, 90000, 2), decimal(0, 500, 2), decimal(0, 500, 2), fixed('0'));
export const quantity = oneOf(
  decimal(1, 900, 1),
  decimal(0, 90, 2),
  decimal(1, 40, 0),
  fixed('120'),
  fixed('0'),
);
export const factor = oneOf(decimal(0.1, 3, 3), fixed('0.5'), fixed('1.15'), fixed('3'), fixed('7'));
export const part = oneOf(decimal(0, 0.4, 3), fixed('0.015'), fixed('0.125'));
export const rate = oneOf(decimal(1, 400, 2), fixed('12.5'), fixed('0.05'));
export const flag = oneOf(fixed('0'), fixed('1'));

/** The unit of a field in a row: `own` bound. */
export function bound(unit: string, own: PlainUnit): Unit {
  return unit.replace('own', own) as Unit;
}

/** A given by its id: absent at times, the same for the same seed, or what the trial says. */
export function givenOf(seed: number, override: Override, absentShare: number) {
  return (id: string, unit: Unit, draw: Draw): Given => {
    const random = randomStream(seed, id);
    const own = random() < absentShare ? undefined : draw(random);
    return { value: override(id) ?? own, unit, basis: 'judgement', source: 'drawn at random' };
  };
}
