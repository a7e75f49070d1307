import { over, rounded, unity, type Block, type Sheet, type SheetUnit, type Step } from '../sheet';
import { MEASURES, type MeasureKey } from './measures';

/** Decimals to which a bare number is settled: far finer than any take-off. */
const DECIMALS = 6;

/**
 * The number of each measure in its own unit, without the unit, so that drivers of any unit can scale from it:
 * a block whose values rows fetch by the key of the measure.
 */
export function fetchable(sheet: Sheet, measures: Readonly<Record<MeasureKey, Step<SheetUnit>>>): Block {
  const block = sheet.block('measure-numbers', 'Measures as plain numbers');
  for (const key of Object.keys(MEASURES) as MeasureKey[]) {
    const measure = measures[key];
    block.place(key, `${MEASURES[key].title}, in ${measure.unit}`, bareNumber(measure));
  }
  return block;
}

/** How many of its unit a step is. */
function bareNumber<U extends SheetUnit>(step: Step<U>): Step<'1'> {
  return rounded(over(step, unity<U>(step.unit)), DECIMALS);
}
