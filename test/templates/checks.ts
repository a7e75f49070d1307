import { MEASURES } from '../../core/vessel';
import { STAGES, type Library, type WorkItem } from '../../core/work';
import { isUnit } from '../../core/units';

/** A fault of a template row: the row by name, and what is wrong with it. */
export type Fault = string;

function duplicates(kind: string, ids: readonly string[]): Fault[] {
  return ids.filter((id, index) => ids.indexOf(id) !== index).map(id => `${kind} "${id}" is there twice`);
}

/** No two rows of a kind share an id. */
export function duplicateIds(library: Library): Fault[] {
  const { rateBook } = library;
  const kinds: Record<string, readonly { id: string }[]> = {
    'hull type': library.hullTypes,
    material: library.materials,
    caution: library.cautions,
    'trip-point': library.tripPoints,
    driver: library.drivers,
    place: library.places,
    option: library.options,
    'work item': library.items,
    trade: rateBook.trades,
    crew: rateBook.crews,
    equipment: rateBook.equipment,
    stream: rateBook.streams,
    condition: rateBook.conditions,
    scrap: rateBook.scrap,
    'mark-up': rateBook.markUps,
  };
  return Object.entries(kinds).flatMap(([kind, rows]) =>
    duplicates(
      kind,
      rows.map(row => row.id),
    ),
  );
}

/** Everything that an item names is there. */
export function danglingReferences(library: Library): Fault[] {
  const { rateBook } = library;
  const ids = (rows: readonly { id: string }[]) => new Set(rows.map(row => row.id));
  const known = {
    driver: ids(library.drivers),
    item: ids(library.items),
    place: ids(library.places),
    caution: ids(library.cautions),
    material: ids(library.materials),
    crew: ids(rateBook.crews),
    stream: ids(rateBook.streams),
    equipment: ids(rateBook.equipment),
    condition: ids(rateBook.conditions),
    scrap: ids(rateBook.scrap),
    trade: ids(rateBook.trades),
    closure: ids(library.closures),
    window: ids(library.windows),
  };
  const faults: Fault[] = [];
  const named = (row: string, kind: keyof typeof known, id: string | undefined) => {
    if (id !== undefined && !known[kind].has(id)) faults.push(`${row}: there is no ${kind} "${id}"`);
  };
  for (const item of library.items) {
    const row = `work item "${item.id}"`;
    if (item.disposes === undefined) named(row, 'driver', item.driver);
    named(row, 'place', item.place);
    named(row, 'crew', item.crew);
    named(row, 'stream', item.disposes);
    named(row, 'stream', item.pricedAs);
    named(row, 'scrap', item.scrap?.grade);
    named(row, 'window', item.window);
    item.after.forEach(after => {
      named(row, 'item', after.item);
    });
    item.conditions.forEach(id => {
      named(row, 'condition', id);
    });
    item.wastes.forEach(waste => {
      named(row, 'stream', waste.stream);
    });
    item.equipment.forEach(hire => {
      named(row, 'equipment', hire.equipment);
    });
    item.meets.forEach(id => {
      named(row, 'material', id);
    });
    item.cautions.forEach(id => {
      named(row, 'caution', id);
    });
    item.closures.forEach(id => {
      named(row, 'closure', id);
    });
    if (item.duration !== undefined && 'driver' in item.duration) named(row, 'driver', item.duration.driver);
    for (const name of [...(item.span?.from ?? []), ...(item.span?.to ?? [])])
      if (!STAGES.some(stage => stage === name)) named(row, 'item', name);
    for (const condition of item.when) {
      if ('driver' in condition) named(row, 'driver', condition.driver);
      if ('option' in condition) faults.push(...unknownChoices(library, row, condition));
    }
  }
  for (const crew of rateBook.crews)
    crew.members.forEach(member => {
      named(`crew "${crew.id}"`, 'trade', member.trade);
    });
  for (const material of library.materials)
    material.cautions.forEach(id => {
      named(`material "${material.id}"`, 'caution', id);
    });
  for (const place of library.places) {
    place.touches.forEach(id => {
      named(`place "${place.id}"`, 'place', id);
    });
    named(`place "${place.id}"`, 'driver', place.crewLimitGrows?.driver);
  }
  return [...faults, ...danglingDrivers(library)];
}

function unknownChoices(library: Library, row: string, condition: { option: string; is: string[] }): Fault[] {
  const option = library.options.find(candidate => candidate.id === condition.option);
  if (option === undefined) return [`${row}: there is no option "${condition.option}"`];
  return condition.is
    .filter(value => !option.values.some(candidate => candidate.id === value))
    .map(value => `${row}: the option "${option.id}" has no value "${value}"`);
}

function danglingDrivers(library: Library): Fault[] {
  const materials = new Set(library.materials.map(material => material.id));
  const before = new Set<string>(Object.keys(MEASURES));
  return library.drivers.flatMap(driver => {
    const faults: Fault[] = [];
    const row = `driver "${driver.id}"`;
    if (!before.has(driver.base)) faults.push(`${row}: no measure or earlier driver "${driver.base}"`);
    before.add(driver.id);
    if (driver.material !== undefined && !materials.has(driver.material))
      faults.push(`${row}: there is no material "${driver.material}"`);
    const key = 'hullQuantity' in driver.atReference ? driver.atReference.hullQuantity : undefined;
    for (const type of library.hullTypes)
      if (key !== undefined && !(key in type.quantities))
        faults.push(`${row}: hull type "${type.id}" has no quantity "${key}"`);
    return faults;
  });
}

/** The unit each figure of an item must have: rates are per one of the item’s own unit. */
export function wrongItemUnits(library: Library): Fault[] {
  const units = new Map(library.drivers.map(driver => [driver.id, driver.unit]));
  return library.items.flatMap(item => {
    const driver = item.disposes === undefined ? (units.get(item.driver) ?? '?') : 't';
    const own = item.span?.unit ?? driver;
    return itemUnits(item, driver, own).flatMap(([field, unit, wanted]) =>
      unit === undefined || wanted.includes(unit)
        ? []
        : [`work item "${item.id}": ${field} is in ${unit}, not in ${wanted.join(' or ')}`],
    );
  });
}

function itemUnits(
  item: WorkItem,
  driver: string,
  own: string,
): [field: string, unit: string | undefined, wanted: string[]][] {
  const { duration } = item;
  const fixedDuration = duration !== undefined && 'value' in duration ? duration.unit : undefined;
  const perUnit = duration !== undefined && 'perUnit' in duration ? duration.perUnit.unit : undefined;
  return [
    ['factor', item.factor?.unit, ['1']],
    ['exponent', item.exponent?.unit, ['1']],
    ['reference', item.reference?.unit, [driver]],
    ['fixed', item.fixed?.unit, [driver]],
    ['hoursPerUnit', item.hoursPerUnit?.unit, [`h/${own}`]],
    ['valid.from', item.valid?.from.unit, [driver]],
    ['valid.to', item.valid?.to.unit, [driver]],
    ['setupHours', item.setupHours?.unit, ['h']],
    ['hoursPerCrew', item.hoursPerCrew?.unit, ['h']],
    ['crewsAtOnce', item.crewsAtOnce?.unit, ['each']],
    ['duration', fixedDuration, ['day', 'work-day']],
    ['duration.perUnit', perUnit?.split('/')[0], ['day', 'work-day']],
    ['materialPerUnit', item.materialPerUnit?.unit, [`USD/${own}`]],
    ['subcontractPerUnit', item.subcontractPerUnit?.unit, [`USD/${own}`]],
    ['subcontractFixed', item.subcontractFixed?.unit, ['USD']],
    ['feePerUnit', item.feePerUnit?.unit, [`USD/${own}`]],
    ['feeFixed', item.feeFixed?.unit, ['USD']],
    ['removes.perUnit', item.removes?.perUnit.unit, [`t/${own}`]],
    ['removes.heightOverDepth', item.removes?.heightOverDepth.unit, ['1']],
    ['scrap.perUnit', item.scrap?.perUnit.unit, [`t/${own}`]],
    ...item.wastes.map((waste): [string, string, string[]] => ['wastes', waste.perUnit.unit, [`t/${own}`]]),
    ...item.after.map((after): [string, string | undefined, string[]] => [
      `after ${after.item}`,
      after.lag?.unit,
      ['day', 'work-day'],
    ]),
  ];
}

/** Drivers are stated in their own unit at a reference in the unit of what they scale from; all units are known. */
export function wrongDriverUnits(library: Library): Fault[] {
  const units = new Map<string, string>(Object.entries(MEASURES).map(([id, measure]) => [id, measure.unit]));
  return library.drivers.flatMap(driver => {
    const faults: Fault[] = [];
    const base = units.get(driver.base) ?? '?';
    units.set(driver.id, driver.unit);
    const row = `driver "${driver.id}"`;
    if (!isUnit(driver.unit)) faults.push(`${row}: ${driver.unit} is no unit`);
    if (driver.reference.unit !== base)
      faults.push(`${row}: reference is in ${driver.reference.unit}, not in ${base}`);
    if ('unit' in driver.atReference && driver.atReference.unit !== driver.unit)
      faults.push(`${row}: value at reference is in ${driver.atReference.unit}, not in ${driver.unit}`);
    if (driver.fixed !== undefined && driver.fixed.unit !== driver.unit)
      faults.push(`${row}: fixed part is in ${driver.fixed.unit}, not in ${driver.unit}`);
    return faults;
  });
}

/** No item asks for more crews at once than its yard or office can field. */
export function crewsBeyond(library: Library): Fault[] {
  const available = new Map(library.rateBook.crews.map(crew => [crew.id, Number(crew.available.value)]));
  return library.items
    .filter(item => Number(item.crewsAtOnce?.value ?? 1) > (available.get(item.crew ?? '') ?? 1))
    .map(
      item =>
        `work item "${item.id}": ${item.crewsAtOnce?.value ?? ''} crews at once, more than there are of ${item.crew ?? ''}`,
    );
}
