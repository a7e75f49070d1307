import { estimateInput } from '../../core/evaluation/estimate-input';
import { workSheet, type WorkSheet } from '../../core/estimate';
import { startingProject } from '../../core/project';
import { chosenItems, presentDrivers, type Library } from '../../core/work';
import type { HullType, Plant } from '../../core/vessel';

/** Least and greatest value of a driver or waste stream. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** Built when all materials were in use, coated before 2003. */
const BUILT = 1950;
const EXTENTS = ['clearance', 'most'];
const PLANTS: readonly Plant[] = ['steam', 'diesel'];

/**
 * The greatest and least positive value that each driver and stream takes over the hull types at their usual lengths
 * (least, a middle one, and greatest), with each plant the type can have and each extent of topside removal.
 */
export function librarySpans(library: Library): Map<string, Span> {
  const spans = new Map<string, Span>();
  const see = (key: string, value: number | undefined) => {
    if (value === undefined || value <= 0) return;
    const known = spans.get(key) ?? { from: value, to: value };
    spans.set(key, { from: Math.min(known.from, value), to: Math.max(known.to, value) });
  };
  for (const type of library.hullTypes)
    for (const length of lengthsOf(type))
      for (const plant of type.plants.some(row => row.plant === 'none') ? (['none'] as const) : PLANTS)
        for (const extent of EXTENTS) {
          const sheet = sheetOf(library, type, length, plant, extent);
          for (const driver of library.drivers.filter(({ id }) => sheet.drivers.scope.index.has(id)))
            see(driver.id, sheet.result.number(sheet.drivers.columns.number, driver.id));
          for (const { id } of library.rateBook.streams)
            see(`stream ${id}`, sheet.result.number(sheet.streams.columns.tonnes, id));
        }
  return spans;
}

function lengthsOf({ usualLengths: { from, to } }: HullType): number[] {
  const [a, b] = [Number(from.value), Number(to.value)];
  return [a, Math.sqrt(a * b), b];
}

function sheetOf(library: Library, type: HullType, length: number, plant: Plant, extent: string): WorkSheet {
  const start = startingProject(library, {
    reader: 'grant',
    hullType: type.id,
    title: 'A ship of the library',
    start: '2027-01-04',
    built: BUILT,
    length: { value: length.toFixed(2), unit: 'm', basis: 'judgement', source: 'Usual length', year: 2026 },
  });
  const project = {
    ...start,
    vessel: { ...start.vessel, plant },
    options: {
      ...start.options,
      'topside-extent': extent,
      monitoring: extent === 'most' ? 'ten-years' : 'two-years',
    },
  };
  const input = estimateInput(project, library, new Set());
  const measured = new Map<string, string>();
  const drivers = presentDrivers(library.drivers, library.materials, {
    type,
    plant: input.plant,
    years: input.years,
    measured,
    presence: input.presence,
  });
  const items = chosenItems(library.items, {
    options: input.options,
    plant: input.plant,
    drivers,
    include: new Map(),
  });
  return workSheet(
    input,
    library.drivers.filter(driver => drivers.has(driver.id)),
    items,
  );
}

/** A margin either way: ships outside the usual, quantities above the likely. */
export const MARGIN = 2;

/** The range of a span by the rule: half the least, twice the greatest, outwards to two figures. */
export function rangeOf({ from, to }: Span): Span {
  return { from: outwards(from / MARGIN, Math.floor), to: outwards(to * MARGIN, Math.ceil) };
}

function outwards(value: number, round: (value: number) => number): number {
  const step = 10 ** (Math.floor(Math.log10(value)) - 1);
  return Number((round(Number((value / step).toPrecision(12))) * step).toPrecision(2));
}
