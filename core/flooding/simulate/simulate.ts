import { at } from '../../base';
import { attitude, DEGREE, dry } from '../../stability';
import { breathe, turnLinks, type LinkFlow, type TurnedLink } from './apertures';
import { exchange, flowsNow } from './exchange';
import { heelDegrees, seaRise, settle, type TurnLimits } from './position';
import {
  SEA,
  type FloodableShip,
  type Position,
  type SimulationOptions,
  type SimulationOutcome,
  type SimulationResult,
  type Snapshot,
} from './ship';
import { fullVolume, settleWaters, startingWaters, type Water } from './waters';

/** Most a level may move in one step, m. Judgement. */
const LEVEL_STEP = 0.05;
/** How many of the shortest steps make the longest: the steps are implicit, so this bounds work, not calm. */
const SHORTEST_IN_LONGEST = 10;
/** She counts as settled when in this share of the time followed neither water nor heel has moved to speak of. */
const SETTLED_WITHIN = 0.05;
const SETTLED_WATER = 1e-4;
const SETTLED_HEEL = 0.01;
const FULL = 0.98;
/** Head of shut air, m, from which it counts as trapped and not just as the last air to leave. Judgement. */
const SHUT_HEAD = 0.3;
/** Degrees of heel past which she counts as rolled over, and the simulation ends. */
const ROLLED = 60;

interface Run {
  readonly ship: FloodableShip;
  readonly options: SimulationOptions;
  readonly waters: Water[];
  readonly at: Position;
  readonly depth: number;
  readonly history: Snapshot[];
  readonly fullAt: (number | undefined)[];
  /** Water aboard at the start, m3. */
  readonly atStart: number;
  t: number;
  steps: number;
  fromSea: number;
  isDeckUnder: boolean;
  /** Number of the snapshot that the settling is measured from. */
  watched: number;
}

/** Seconds until some level has moved as far as a step may, or some room is full. */
function stepLength(
  run: Run,
  links: readonly TurnedLink[],
  flows: readonly LinkFlow[],
  longest: number,
): number {
  const net = run.waters.map(() => 0);
  links.forEach(({ link: { a, b } }, k) => {
    const { flow } = at(flows, k);
    if (a !== SEA) net[a] = at(net, a) - flow;
    net[b] = at(net, b) + flow;
  });
  const spare = run.ship.hull.capacity - run.ship.lightVolume - waterAboard(run);
  const inflow = net.reduce((sum, flow) => sum + flow, 0);
  let dt = inflow > 0 && run.options.heldAt === undefined ? Math.min(longest, spare / inflow) : longest;
  run.waters.forEach((water, i) => {
    const rate = Math.abs(at(net, i));
    const room = fullVolume(run.ship, i) - water.volume;
    if (rate < 1e-9 || room <= 0) return;
    dt = Math.min(dt, (LEVEL_STEP * water.surface) / rate);
    if (at(net, i) > 0) dt = Math.min(dt, room / rate);
  });
  return Math.max(dt, longest / SHORTEST_IN_LONGEST);
}

function limits(run: Run, dt: number): TurnLimits {
  const rate = (run.options.turnRate ?? 2) * DEGREE;
  return { heel: rate * dt, slope: 0.02 * dt, disturbance: (run.options.disturbance ?? 0.1) * DEGREE };
}

function position(run: Run, dt: number): boolean {
  if (run.options.heldAt === undefined)
    return settle(run.ship, run.waters, run.at, run.depth, limits(run, dt));
  run.at.level = run.options.heldAt;
  settleWaters(run.ship, run.waters, attitude(0));
  return false;
}

function deckIsUnder(run: Run): boolean {
  const { ship, at } = run;
  const half = ship.breadth / 2;
  const { sin, cos } = attitude(at.heel);
  return [0, ship.length].some(x =>
    [-half, half].some(y => ship.depth * cos - y * sin + at.slope * x < at.level),
  );
}

function waterAboard(run: Run): number {
  return run.waters.reduce((sum, water) => sum + water.volume, 0);
}

function record(run: Run, event?: string): void {
  const { at, ship, waters } = run;
  run.history.push({
    t: run.t,
    water: waterAboard(run),
    volumes: waters.map(water => water.volume),
    levels: waters.map(water => water.level),
    heel: heelDegrees(at),
    trim: at.slope * ship.length,
    draught: at.level - (at.slope * ship.length) / 2,
    ...(event === undefined ? {} : { event }),
  });
}

function hasRolled(run: Run): boolean {
  return run.options.heldAt === undefined && Math.abs(heelDegrees(run.at)) > ROLLED;
}

function happened(run: Run, groundBefore: Position['ground']): string | undefined {
  if (hasRolled(run)) return 'rolled over';
  if (run.at.ground !== groundBefore && run.at.ground !== 'none')
    return run.at.ground === 'both' ? 'on the bottom' : `${run.at.ground} on the bottom`;
  if (run.options.heldAt === undefined && !run.isDeckUnder && deckIsUnder(run)) {
    run.isDeckUnder = true;
    return 'deck edge under';
  }
  return undefined;
}

/** Nothing has moved to speak of for a while, though water may still pass to and fro. */
function hasSettled(run: Run): boolean {
  const since = run.t - SETTLED_WITHIN * run.options.seconds;
  if (since < 0) return false;
  while (at(run.history, run.watched + 1).t <= since) run.watched += 1;
  const [then, now] = [at(run.history, run.watched), at(run.history, run.history.length - 1)];
  const most = SETTLED_WATER * run.ship.lightVolume;
  const isSame = now.volumes.every((volume, i) => Math.abs(volume - at(then.volumes, i)) < most);
  return isSame && Math.abs(now.heel - then.heel) < SETTLED_HEEL;
}

function ended(run: Run, flows: readonly LinkFlow[], isTurning: boolean): SimulationOutcome | undefined {
  if (run.options.heldAt === undefined) {
    if (hasRolled(run)) return 'rolled over';
    if (run.at.ground === 'both') return 'on the bottom';
    const total = run.ship.lightVolume + waterAboard(run);
    if (total >= run.ship.hull.capacity * (1 - 1e-6)) return 'sunk';
    if (Math.abs(run.at.slope) > 0.6) return 'sunk';
  }
  const isStill = flows.every(({ flow }) => Math.abs(flow) <= 1e-4) || hasSettled(run);
  return isStill && !isTurning ? 'afloat' : undefined;
}

function noteFull(run: Run): void {
  run.waters.forEach((water, i) => {
    const { capacity } = at(run.ship.rooms, i).solid;
    if (run.fullAt[i] === undefined && water.volume >= FULL * capacity) run.fullAt[i] = run.t;
  });
}

function result(run: Run, outcome: SimulationOutcome): SimulationResult {
  const water = waterAboard(run);
  return {
    outcome,
    seconds: run.t,
    history: run.history,
    fullAt: run.fullAt,
    volumeError: water > 0 ? Math.abs(water - run.atStart - run.fromSea) / water : 0,
    steps: run.steps,
    trappedAir: run.waters.flatMap(({ isBreathing, air, volume }, room) => {
      const { capacity } = at(run.ship.rooms, room).solid;
      const share = capacity > 0 ? 1 - volume / capacity : 0;
      return !isBreathing && air > SHUT_HEAD && share > 0.02 ? [{ room, share }] : [];
    }),
  };
}

function advance(run: Run, longest: number): SimulationOutcome | undefined {
  const links = turnLinks(run.ship, run.at);
  breathe(run.ship, links, run.waters, run.at.level);
  const flows = flowsNow(links, run.waters, run.at.level);
  const dt = Math.min(stepLength(run, links, flows, longest), run.options.seconds - run.t);
  const rise = run.options.heldAt === undefined ? seaRise(run.at) : 0;
  run.fromSea += exchange(links, flows, run.waters, dt, rise);
  run.t += dt;
  run.steps += 1;
  const before = run.at.ground;
  const isTurning = position(run, dt);
  noteFull(run);
  record(run, happened(run, before));
  return ended(run, flows, isTurning);
}

/**
 * Progressive flooding, quasi-static: water passes every opening by its head, the air leaves or is shut in, and
 * the ship settles with the water aboard, heeling, trimming, touching the bottom with one end. Time steps adapt
 * to the fastest level; volumes are conserved by construction.
 * @source Method after Ruponen (pressure-correction) and Braidotti and Mauro, J. Mar. Sci. Eng. 2020 8(5) 369.
 */
export function simulateFlooding(ship: FloodableShip, options: SimulationOptions): SimulationResult {
  const waters = startingWaters(ship, options.aboard ?? []);
  const run: Run = {
    ship,
    options,
    waters,
    at: { level: ship.depth / 2, heel: 0, slope: 0, ground: 'none', sums: dry() },
    depth: options.waterDepth ?? Infinity,
    history: [],
    fullAt: waters.map(() => undefined),
    atStart: waters.reduce((sum, water) => sum + water.volume, 0),
    t: 0,
    steps: 0,
    fromSea: 0,
    isDeckUnder: false,
    watched: 0,
  };
  position(run, 60);
  record(run);
  const longest = options.longestStep ?? options.seconds / 300;
  while (run.t < options.seconds - 1e-9) {
    const outcome = advance(run, longest);
    if (outcome) return result(run, outcome);
  }
  return result(run, 'still flooding');
}
