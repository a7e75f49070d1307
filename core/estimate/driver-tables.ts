import {
  bareGiven,
  fetched,
  givenFrom,
  link,
  notApplying,
  over,
  power,
  quoted,
  rounded,
  scaled,
  sum,
  unity,
  type Given,
  type Sheet,
  type Step,
  type Table,
} from '../sheet';
import type { TakeOff } from '../vessel';
import type { Driver } from '../work';
import { isPlainUnit, type PlainUnit } from '../units';
import type { EstimateInput } from './inputs';

/** The columns of a table of drivers: the number in the driver's unit, and the same with the unit. */
export interface DriverColumns {
  readonly number: Step<'1'>;
  readonly value: Step<'own'>;
}

/**
 * The drivers, in tables by level: the first scale from the take-off, the next from drivers before them; the last
 * table holds all of them by key.
 */
export function driverTables(
  sheet: Sheet,
  input: EstimateInput,
  takeOff: TakeOff,
  drivers: readonly Driver[],
): Table<DriverColumns> {
  const levels: Table<{ number: Step<'1'> }>[] = [];
  const levelOf = new Map<string, number>();
  for (const driver of drivers) levelOf.set(driver.id, (levelOf.get(driver.base) ?? -1) + 1);
  const deepest = Math.max(0, ...levelOf.values());
  for (let level = 0; level <= deepest; level++) {
    const rows = drivers.filter(driver => levelOf.get(driver.id) === level);
    const before = levels[level - 1];
    levels.push(
      driverTable(sheet, `drivers-${level + 1}`, input, rows, key =>
        before === undefined ? fetched(key, takeOff.numbers, '1') : link(key, before.columns.number),
      ),
    );
  }
  return allDrivers(sheet, drivers, levels);
}

function driverTable(
  sheet: Sheet,
  id: string,
  input: EstimateInput,
  rows: readonly Driver[],
  baseOf: (key: Step<'text'>) => Step<'1'>,
): Table<{ number: Step<'1'> }> {
  return sheet.table(
    id,
    {
      heading: 'Driver',
      of: rows,
      key: driver => driver.id,
      title: driver => driver.title,
      place: driver => `templates/drivers/${driver.id}`,
    },
    t => {
      const base = t.place(
        'base',
        'Scales from',
        baseOf(t.key('base-key', 'Scales from (key)', driver => driver.base)),
      );
      const measured = t.field('measured', 'Measured by survey', '1', driver =>
        input.measured.get(driver.id),
      );
      const reference = t.field('reference', 'Reference', '1', driver => bare(driver.reference, driver));
      const atReference = t.field('at-reference', 'Amount at the reference', '1', driver =>
        atReferenceOf(driver, input),
      );
      const exponent = t.field('exponent', 'Exponent', '1', driver =>
        driver.exponent === undefined ? notApplying('1', '1') : givenFrom(driver.exponent, '1'),
      );
      const fixed = t.field('fixed', 'Fixed part', '1', driver =>
        driver.fixed === undefined ? notApplying('0', '1') : bare(driver.fixed, driver),
      );
      const present = t.field('presence', 'Presence by era or survey', '1', driver =>
        presence(driver, input),
      );
      const step = t.field('rounded-to', 'Rounded to', '1', driver => roundedTo(driver.decimals));
      const ratio = t.place(
        'ratio',
        'Ratio to the reference, to its power',
        rounded(power(rounded(over(base, reference), 9), exponent), 9),
      );
      const raw = sum(scaled(atReference, ratio, present), fixed);
      const computed = t.place(
        'computed',
        'Amount worked out',
        scaled(step, rounded(rounded(over(raw, step), 8), 0)),
      );
      return { number: t.place('number', 'Amount', quoted(measured, computed)) };
    },
  );
}

function allDrivers(
  sheet: Sheet,
  drivers: readonly Driver[],
  levels: readonly Table<{ number: Step<'1'> }>[],
): Table<DriverColumns> {
  const own = (driver: Driver): PlainUnit => (isPlainUnit(driver.unit) ? driver.unit : '1');
  return sheet.table(
    'drivers',
    {
      heading: 'Driver',
      of: drivers,
      key: driver => driver.id,
      title: driver => driver.title,
      own,
      place: driver => `templates/drivers/${driver.id}`,
    },
    t => {
      const key = t.rowKey();
      const [first, ...rest] = levels.map((level, i) =>
        t.place(`level-${i + 1}`, `Of level ${i + 1}`, link(key, level.columns.number)),
      );
      const number = t.place(
        'number',
        'Amount',
        first === undefined ? unity('1') : rest.length === 0 ? first : quoted(first, ...rest),
      );
      return { number, value: t.place('value', 'Amount with unit', scaled(unity('own'), number)) };
    },
  );
}

/** A figure's number in the unit it is given in: the drivers' tables scale plain numbers. */
function bare(figure: Driver['reference'], driver: Driver): Given {
  return bareGiven(figure, `templates/drivers/${driver.id}`);
}

function atReferenceOf(driver: Driver, input: EstimateInput): Given | undefined {
  if (!('hullQuantity' in driver.atReference)) return bare(driver.atReference, driver);
  const key = driver.atReference.hullQuantity;
  const figure = input.ship.type.quantities[key];
  return figure && bareGiven(figure, `templates/hull-types/${input.ship.type.id}/${key}`);
}

function presence(driver: Driver, input: EstimateInput): Given {
  const material = input.library.materials.find(candidate => candidate.id === driver.material);
  const found = material && input.presence.get(material.id);
  if (found === undefined || material === undefined) return notApplying('1', '1');
  const { low, likely, high, basis, source, year } = found;
  return {
    value: String(likely),
    low: String(low),
    high: String(high),
    unit: '1',
    basis,
    source,
    ...(year === undefined ? {} : { year }),
    place: basis === 'surveyed' ? '/survey/laboratory' : `templates/materials/${material.id}`,
  };
}

/** The step a figure is rounded to, from its decimals: 1, 0.1, 0.01. */
export function roundedTo(decimals: number): Given {
  return {
    value: (10 ** -decimals).toFixed(decimals),
    unit: '1',
    basis: 'common practice',
    source: 'Decimals the figure is printed with',
    neutral: true,
  };
}
