import { thousandsApart } from './in-words';
import { converted, unitFor, type Measured, type Measures } from './reader-measures';
import { roundText } from './rounding';
import { unitWords } from './unit-words';

/** An amount in a sentence of the engine, which speaks in metres, tonnes and what is made of them. */
const AMOUNT = /(\d[\d,]*(?:\.\d+)?) (t m|m3|m2|m|t)(?![\w%²³])/g;

/** More decimals than these are not said. */
const MOST_DECIMALS = 2;

/**
 * A sentence of the engine in the reader's measures: lengths, areas, volumes, masses and moments, each with as many
 * decimals as the sentence has. Thousands are separated either way.
 * @example saidIn('KM 7.42 m', 'us') is "KM 24.34 ft"
 */
export function saidIn(text: string, measures: Measures): string {
  return text.replace(AMOUNT, (_, amount: string, unit: string) => said(amount, unit, measures));
}

function said(amount: string, unit: string, measures: Measures): string {
  const plain = amount.replaceAll(',', '');
  const given = plain.split('.')[1]?.length ?? 0;
  const [value, inUnit] = unit === 't m' ? momentIn(plain, measures) : lengthOrMassIn(plain, unit, measures);
  const rounded = roundText(value, Math.min(given, MOST_DECIMALS));
  // More decimals come from a length that was given in other measures, and so is round in those.
  const said = given > MOST_DECIMALS ? rounded.replace(/\.?0+$/, '') : rounded;
  return `${thousandsApart(said)} ${inUnit}`;
}

function inReaders(value: string, unit: string, measures: Measures): Measured {
  return converted(value, unit, unitFor(unit, measures));
}

function lengthOrMassIn(value: string, unit: string, measures: Measures): readonly [string, string] {
  const shown = inReaders(value, unit, measures);
  return [shown.value, unitWords(shown.unit)];
}

/** A moment: its mass and its arm, each in the reader's unit. */
function momentIn(value: string, measures: Measures): readonly [string, string] {
  const mass = inReaders(value, 't', measures);
  const moment = inReaders(mass.value, 'm', measures);
  return measures === 'us' ? [moment.value, 'foot-long tons'] : [value, 'tonne-metres'];
}
