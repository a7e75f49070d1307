import { lowerFirst, withId } from '../base';
import type { UprightEffect, UprightInput, UprightResult } from '../flooding';
import { structuredCloneJson, type Change, type Project } from '../project';
import type { EstimateParts } from './evaluate';
import { LATE_ENTRY } from './upright-compartments';
import { BALLAST } from './upright-weights';

/** One thing the plan could do: what changes in the document, and what of it the weights alone do not tell. */
export interface ListedChoice {
  readonly id: string;
  readonly title: string;
  /** Choices of one group exclude each other. */
  readonly group?: string;
  readonly changes: readonly Change[];
  readonly effect: UprightEffect;
}

/** A choice that does not apply to this ship or plan, with the reason. */
export interface ChoiceLeftOut {
  readonly title: string;
  readonly why: string;
}

/** What the choices are made from: the scenario as it stands and what its screen found. */
export interface ChoiceGround {
  readonly project: Project;
  readonly parts: EstimateParts;
  readonly input: UprightInput;
  readonly upright: UprightResult;
}

type Offer = (ground: ChoiceGround) => readonly (ListedChoice | ChoiceLeftOut)[];

/** Area, m2, and height, m, of one cut in a bulkhead across the ship: the standard opening. Judgement. */
const CUT_AREA = 1.8;
const CUT_HEIGHT = 1.5;

/** The choices a plan of this ship has, and those that do not apply with the reason. */
export function listedChoices(ground: ChoiceGround): {
  readonly listed: readonly ListedChoice[];
  readonly leftOut: readonly ChoiceLeftOut[];
} {
  const offered = OFFERS.flatMap(offer => offer(ground));
  return {
    listed: offered.filter((one): one is ListedChoice => 'effect' in one),
    leftOut: offered.filter((one): one is ChoiceLeftOut => 'why' in one),
  };
}

const moreTopside: Offer = ({ parts }) => {
  const { values } = withId(parts.input.library.options, 'topside-extent');
  const now = values.findIndex(({ id }) => id === parts.input.options['topside-extent']);
  const more = values.slice(now + 1);
  if (more.length === 0)
    return [{ title: 'More topside off', why: 'The plan takes off as much as the options know.' }];
  return more.map(({ id, title }) => ({
    id: `topside-${id}`,
    title: `More topside off: ${lowerFirst(title)}`,
    group: 'topside',
    changes: [{ at: '/options/topside-extent', to: id }],
    effect: {},
  }));
};

const bulkheadCut: Offer = ground => {
  const sized = ground.upright.crossFlooding?.cuts ?? [];
  if (sized.length > 0) {
    const count = sized.reduce((sum, cut) => sum + cut.count, 0);
    const cuts = sized.map(({ from, to, area, z, height }) => ({
      from,
      to,
      area,
      z,
      height,
      kind: 'cut' as const,
    }));
    return [cutChoice(ground, `${count} cuts in the bulkheads along the ship`, count, { cuts })];
  }
  const pair = middlePair(ground.input);
  if (pair === undefined)
    return [{ title: 'A bulkhead cut', why: 'No two flooded compartments share a bulkhead.' }];
  const [from, to] = pair;
  const z = Math.max(from.z0, to.z0) + CUT_HEIGHT / 2;
  const cut = { from: from.id, to: to.id, area: 2 * CUT_AREA, z, height: CUT_HEIGHT, kind: 'cut' as const };
  return [
    cutChoice(ground, `Two cuts in the bulkhead between ${from.title} and ${to.title}`, 2, { cuts: [cut] }),
  ];
};

function cutChoice(ground: ChoiceGround, title: string, count: number, effect: UprightEffect): ListedChoice {
  return {
    id: 'bulkhead-cut',
    title,
    changes: quantityChange(ground, 'inner-openings-cut', now => now + count, title),
    effect,
  };
}

type Space = UprightInput['compartments'][number];

function floodedFullWidth(input: UprightInput): readonly Space[] {
  return input.compartments
    .filter(space => space.floods !== false && space.y0 < 0 && space.y1 > 0)
    .toSorted((a, b) => a.x0 - b.x0);
}

/** The two neighbours across the ship whose bulkhead lies nearest to the middle of her length. */
function middlePair(input: UprightInput): readonly [Space, Space] | undefined {
  const spaces = floodedFullWidth(input);
  const middle = input.particulars.length / 2;
  const pairs = spaces.flatMap((from, i): (readonly [Space, Space])[] => {
    const to = spaces[i + 1];
    return to === undefined || Math.abs(from.x1 - to.x0) > 0.01 ? [] : [[from, to]];
  });
  return pairs.toSorted(([a], [b]) => Math.abs(a.x1 - middle) - Math.abs(b.x1 - middle))[0];
}

const lowBallast: Offer = ground => {
  const { options } = ground.parts.input;
  const doubled = BALLAST.flatMap(({ item, title }): ListedChoice[] => {
    const changes = quantityChange(ground, item, now => 2 * now, `Twice the ${lowerFirst(title)}`);
    if (changes.length === 0) return [];
    return [
      {
        id: 'more-ballast',
        title: `Low ballast: twice the ${lowerFirst(title)}`,
        group: 'ballast',
        changes,
        effect: {},
      },
    ];
  });
  const solid: ListedChoice = {
    id: 'solid-ballast',
    title: 'Low ballast: solid in place of water',
    group: 'ballast',
    changes: [{ at: '/options/ballast', to: 'solid' }],
    effect: {},
  };
  return options['ballast'] === 'solid' ? doubled : [...doubled, solid];
};

const buoyantLength: Offer = ground => {
  const { input } = ground;
  const spaces = floodedFullWidth(input).filter(({ openings }) => openings.length === 0);
  const middle = input.particulars.length / 2;
  const [space] = spaces.toSorted(
    (a, b) => Math.abs(a.x0 + a.x1 - 2 * middle) - Math.abs(b.x0 + b.x1 - 2 * middle),
  );
  if (space === undefined || spaces.length < 2)
    return [
      {
        title: 'A buoyant length kept until late',
        why: 'The flooded compartments have openings of their own, or there is one alone.',
      },
    ];
  const openings = ground.upright.sizing.find(({ compartment }) => compartment === space.id)?.openings ?? 2;
  const title = `Buoyancy of ${space.title} kept until late`;
  const entry = space.z0 + LATE_ENTRY * (space.z1 - space.z0);
  return [
    {
      id: 'late-length',
      title,
      changes: [
        ...quantityChange(ground, 'temporary-closures', now => now + openings, title),
        ...quantityChange(ground, 'removal-of-patches', now => now + openings, title),
      ],
      effect: { late: [{ compartment: space.id, entry }] },
    },
  ];
};

const otherMethod: Offer = ({ parts }) => {
  const isExplosive = parts.input.options['sinking-method'] === 'explosive';
  return [
    {
      id: isExplosive ? 'by-flooding' : 'by-scuttling',
      title: isExplosive
        ? 'Controlled flooding in place of scuttling'
        : 'Explosive scuttling in place of flooding',
      changes: [{ at: '/options/sinking-method', to: isExplosive ? 'flooding' : 'explosive' }],
      effect: { method: isExplosive ? 'flooding' : 'explosive scuttling' },
    },
  ];
};

const OFFERS: readonly Offer[] = [moreTopside, bulkheadCut, lowBallast, buoyantLength, otherMethod];

/** The change that sets the quantity of an item of the scenario anew; none when the item is not in it. */
function quantityChange(
  { project, parts }: ChoiceGround,
  item: string,
  next: (now: number) => number,
  note: string,
): Change[] {
  const row = parts.work.rows.find(candidate => candidate.item.id === item);
  const now = row && parts.work.result.number(parts.work.items.columns.number, item);
  if (row === undefined || now === undefined) return [];
  const adjusted = project.items.find(candidate => candidate.item === item);
  const quantity = {
    value: next(now).toFixed(row.item.decimals),
    unit: row.own,
    basis: 'judgement' as const,
    source: note,
    year: 2026,
  };
  const to = structuredCloneJson({ ...adjusted, item, quantity, note });
  return [{ at: `/items/${item}`, to }];
}
