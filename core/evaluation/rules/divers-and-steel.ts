import type { Figure, Finding } from '../../base';
import { dayOf } from '../../calendar';
import { asksForPcbEquipment, tripPoint } from '../../materials';
import type { Project } from '../../project';
import { compareDecimals, convert, isConvertible, isUnit, quantity, type Unit } from '../../units';
import type { NoticeParts } from './notices';

/** What the State, the agency that releases the hull, and divers ask of steel, age, exits and PCB equipment. */
export function furtherFindings(project: Project, parts: NoticeParts): Finding[] {
  return [
    ...releaseFindings(project, parts),
    ...steelFindings(project, parts),
    ...exitFindings(project, parts),
    ...equipmentFindings(project, parts),
    ...eventFindings(parts),
  ];
}

const point = ({ input }: NoticeParts, id: string) => tripPoint(input.library.tripPoints, id);

function amountOf(figure: Figure, unit: Unit): string | undefined {
  if (!isUnit(figure.unit) || !isConvertible(figure.unit, unit)) return undefined;
  return convert(quantity(figure.value, figure.unit), unit).value;
}

/** A federal agency releases younger ships only. */
function releaseFindings({ vessel }: Project, parts: NoticeParts): Finding[] {
  const { figure, rule, consequence } = point(parts, 'hull-age');
  const isAgency = parts.input.options['hull-source'] === 'federal-agency';
  if (!isAgency || vessel.built >= Number(figure.value)) return [];
  return [
    {
      code: 'rules/hull-too-old-to-release',
      weight: 'warns',
      place: '/options/hull-source',
      message: `The ship was built in ${vessel.built}; the agency releases ships of ${figure.value} or later.`,
      meaning: `${consequence}.`,
      remedy: 'Ask the agency in writing before money is spent, or choose another hull.',
      rule,
    },
  ];
}

/** Plate that is thinner than a State's general permit takes. */
function steelFindings({ benefits }: Project, parts: NoticeParts): Finding[] {
  const given = benefits?.plateThickness;
  const metres = given && amountOf(given, 'm');
  const { figure, rule, consequence } = point(parts, 'steel-thickness');
  if (given === undefined || metres === undefined) return [];
  const limit = (Number(figure.value) * 0.0254).toFixed(6);
  if (compareDecimals(metres, limit) >= 0) return [];
  return [
    {
      code: 'rules/plate-too-thin',
      weight: 'notes',
      place: '/benefits/plateThickness',
      message: `The plate is ${given.value} ${given.unit} thick; ${figure.value} in are asked for.`,
      meaning: `${consequence}; elsewhere the site’s own permit governs.`,
      remedy:
        'Measure the plate by ultrasonic gauge; in State waters of Florida ask for an individual permit.',
      rule,
    },
  ];
}

/** Spaces so long that a diver in the middle of one is further from an exit than practice allows. */
function exitFindings({ vessel }: Project, parts: NoticeParts): Finding[] {
  const access = parts.input.options['diver-access'];
  if (access !== 'open' && access !== 'outer-spaces') return [];
  const { figure, rule, consequence } = point(parts, 'diver-exit-distance');
  return vessel.compartments.flatMap((space): Finding[] => {
    const [from, to] = [amountOf(space.from, 'ft'), amountOf(space.to, 'ft')];
    if (from === undefined || to === undefined) return [];
    const reach = 2 * Number(figure.value);
    const length = Number(to) - Number(from);
    const exits = Math.ceil(length / reach);
    if (exits < 2) return [];
    return [
      {
        code: 'rules/diver-far-from-exit',
        weight: 'notes',
        place: `/vessel/compartments/${space.id}`,
        message: `${space.title} is ${Math.round(length)} ft long: ${exits} exits along it keep a diver within ${figure.value} ft of one.`,
        meaning: `${consequence}.`,
        remedy: 'Mark the exits on the opening plan, or close the space where a diver could be lost.',
        rule,
      },
    ];
  });
}

/** Samples of liquid PCB that make the equipment PCB equipment rather than contaminated equipment. */
function equipmentFindings({ survey }: Project, parts: NoticeParts): Finding[] {
  const { figure, rule, consequence } = point(parts, 'pcb-article-class');
  return survey.laboratory.flatMap((result, at): Finding[] => {
    if (result.material !== 'liquid-pcb' || !asksForPcbEquipment(parts.input.library.tripPoints, result))
      return [];
    return [
      {
        code: 'rules/pcb-equipment',
        weight: 'warns',
        place: `/survey/laboratory/${at}`,
        message: `Sample ${result.sample}: ${result.result} ${result.unit} is at or above ${figure.value} ppm.`,
        meaning: `${consequence}.`,
        remedy: 'Have the liquid and its carcass priced by a firm approved for them.',
        rule,
      },
    ];
  });
}

/** A second planned event within a year is not to be had without a petition. */
function eventFindings(parts: NoticeParts): Finding[] {
  const event = parts.generator?.event;
  const months = parts.generator?.months ?? [];
  if (event === undefined) return [];
  const last = dayOf(event.start) + 365;
  const others = months.filter(
    ({ month, category }) =>
      category !== 'very small' && dayOf(`${month}-01`) > dayOf(event.finish) && dayOf(`${month}-01`) < last,
  );
  const first = others[0];
  if (first === undefined) return [];
  const { rule, consequence } = point(parts, 'episodic-yearly');
  return [
    {
      code: 'rules/second-event',
      weight: 'notes',
      place: '/options/episodic-event',
      message: `The event of ${event.start} is used for the year; ${first.month} still makes a ${first.category} generator.`,
      meaning: `${consequence}.`,
      remedy: 'Bring the work of that month into the event, or keep to the rules of that category.',
      rule,
    },
  ];
}
