import type { Finding } from '../../base';
import { SEA_WATER } from '../../stability';
import type { LowLikelyHigh, UprightCompartment, UprightInput } from './types';

type Report = (place: string, message: string, remedy: string, weight?: Finding['weight']) => void;

function positive(report: Report, place: string, name: string, value: number, unit: string): void {
  if (!(value > 0) || !Number.isFinite(value))
    report(
      place,
      `${name} is ${value} ${unit}; it must be a number above zero.`,
      'Enter the measured value.',
    );
}

function ordered(report: Report, place: string, name: string, range: LowLikelyHigh): void {
  if (range.low <= range.likely && range.likely <= range.high) return;
  report(
    place,
    `${name} runs low ${range.low}, likely ${range.likely}, high ${range.high}.`,
    'Give the three values in rising order.',
  );
}

function checkHull(report: Report, input: UprightInput): void {
  const { length, breadth, depth, lightDraught } = input.particulars;
  positive(report, '/particulars/length', 'Length', length, 'm');
  positive(report, '/particulars/breadth', 'Breadth', breadth, 'm');
  positive(report, '/particulars/depth', 'Depth', depth, 'm');
  positive(report, '/particulars/lightDraught', 'Light draught', lightDraught, 'm');
  positive(report, '/displacement/low', 'Displacement', input.displacement.low, 't');
  if (lightDraught >= depth)
    report(
      '/particulars/lightDraught',
      `The draught of ${lightDraught} m is not below the depth of ${depth} m: the deck would be under water.`,
      'Check draught and depth, and that both are measured from the keel.',
    );
  if (input.particulars.stations !== undefined) return;
  const block = blockCoefficient(input);
  if (block > 1 + 1e-6)
    report(
      '/displacement/likely',
      `The block coefficient is ${block.toFixed(2)}: ${input.displacement.likely} t do not fit into ${length} x ${breadth} x ${lightDraught} m.`,
      'Check the displacement with its unit (long ton, short ton, tonne) and the draught that belongs to it.',
    );
  else if (block < 0.35 || block > 0.95)
    report(
      '/displacement/likely',
      `The block coefficient is ${block.toFixed(2)}; ships lie between 0.35 and 0.95.`,
      'Right for a box barge or a very fine hull; otherwise check displacement and draught.',
      'warns',
    );
}

function checkCompartment(
  report: Report,
  space: UprightCompartment,
  place: string,
  input: UprightInput,
): void {
  const volume = (space.x1 - space.x0) * (space.y1 - space.y0) * (space.z1 - space.z0);
  if (!(space.x1 > space.x0 && space.y1 > space.y0 && space.z1 > space.z0))
    report(
      place,
      `${space.title} has a volume of ${volume.toFixed(0)} m3.`,
      'Give each extent from low to high.',
    );
  if (!(space.permeability > 0 && space.permeability <= 1))
    report(
      `${place}/permeability`,
      `The permeability of ${space.title} is ${space.permeability}.`,
      'Give a share above 0 and up to 1, such as 0.95 for an empty space.',
    );
  const known = new Set(input.compartments.map(({ id }) => id));
  for (const connection of space.connections)
    if (!known.has(connection.to) || connection.to === space.id)
      report(
        `${place}/connections`,
        `${space.title} is connected to "${connection.to}", which is not another compartment.`,
        'Name another compartment of the list.',
      );
  const isNonsense = space.openings.some(
    ({ area, count, height }) => !(area > 0 && count > 0 && height >= 0),
  );
  if (isNonsense)
    report(
      `${place}/openings`,
      `An opening of ${space.title} has no area.`,
      'Give area and count above zero.',
    );
}

/** Block coefficient at the light draught that displacement and particulars give together. */
export function blockCoefficient(input: UprightInput): number {
  const { length, breadth, lightDraught } = input.particulars;
  return input.displacement.likely / (SEA_WATER * length * breadth * lightDraught);
}

/** Findings about an input that no ship can have; a blocking one withholds the screen. */
export function checkUprightInput(input: UprightInput): Finding[] {
  const findings: Finding[] = [];
  const report: Report = (place, message, remedy, weight = 'blocks') => {
    const meaning = weight === 'blocks' ? 'The upright screen is withheld.' : undefined;
    findings.push({
      code: 'upright/nonsense',
      weight,
      place,
      message,
      remedy,
      ...(meaning ? { meaning } : {}),
    });
  };
  checkHull(report, input);
  ordered(report, '/displacement', 'Displacement in tonnes', input.displacement);
  ordered(report, '/kg', 'KG in metres', input.kg);
  const removed = input.removedWeights.reduce((sum, { mass }) => sum + mass, 0);
  if (removed >= input.displacement.low)
    report(
      '/removedWeights',
      `${removed.toFixed(0)} t are removed from a ship of ${input.displacement.low} t.`,
      'Check the masses.',
    );
  input.compartments.forEach((space, i) => checkCompartment(report, space, `/compartments/${i}`, input));
  return findings;
}
