import { at } from '../base';
import type { UprightResult } from '../flooding';
import { amountIn, quantity } from '../units';
import type { EstimateContext } from './context';
import { shownNumber } from './number-text';
import type { DrawnStage } from './sinking-rows';

type Stage = UprightResult['stages'][number];

/** A time in words: `4 min 20 s`. */
export function timeWords(seconds: number): string {
  const whole = Math.round(seconds);
  const minutes = Math.floor(whole / 60);
  return minutes === 0 ? `${whole} s` : `${minutes} min ${whole - minutes * 60} s`;
}

/** A length or an area of the screen, which counts in metres, as text in the reader's unit. */
export function inUnit(context: EstimateContext, metres: number, kind: 'm' | 'm2' = 'm'): string {
  const to = context.measures === 'us' ? (kind === 'm' ? 'ft' : 'ft2') : kind;
  return shownNumber(amountIn(quantity(metres.toFixed(6), kind), to).toFixed(6), 1);
}

/** Whether the check says nothing at a moment: more water is aboard than it follows. No balance before is none later. */
export function isWithoutCheck({ isPastCheck, heel }: Stage): boolean {
  return isPastCheck === true && heel !== undefined;
}

function degrees(angle: number): string {
  return `${shownNumber(Math.abs(angle).toFixed(4), 1)}°`;
}

function sideWords(angle: number): string {
  const shown = degrees(angle);
  if (Number.parseFloat(shown) === 0) return shown;
  return `${shown} to ${angle > 0 ? 'starboard' : 'port'}`;
}

function heelWords(stage: Stage): string {
  if (isWithoutCheck(stage)) return `${sideWords(stage.list)} in the simulation`;
  return stage.heel === undefined ? 'no balance' : sideWords(stage.heel);
}

/** Greatest heel that the curve draws where she has no balance: the check looks no further. */
const NO_BALANCE = 60;

/** A moment as it is drawn: at the greatest heel of the check, and past the check at the list of the simulation. */
export function drawn(context: EstimateContext, stage: Stage): DrawnStage {
  const isJudged = !isWithoutCheck(stage);
  return {
    t: stage.t,
    level: stage.level,
    draught: stage.draught,
    heel: isJudged ? stage.heel : stage.list,
    worst: isJudged ? Math.abs(stage.heel ?? NO_BALANCE) : undefined,
    list: stage.list,
    time: timeWords(stage.t),
    heelWords: heelWords(stage),
    worstWords: isJudged ? heelWords(stage) : 'not judged',
    levelWords: inUnit(context, stage.level),
    listWords: degrees(stage.list),
    event: stage.event ?? '',
  };
}

/** Five moments: the first, the last, and those of the greatest heel that is judged and between. */
export function picked(curve: readonly DrawnStage[]): readonly DrawnStage[] {
  if (curve.length <= 5) return curve;
  const heelOf = (stage: DrawnStage): number => (stage.worst === undefined ? -1 : Math.abs(stage.heel ?? 90));
  const worst = curve.reduce((a, b) => (heelOf(b) > heelOf(a) ? b : a));
  const spread = [0, 0.25, 0.5, 0.75, 1].map(share => at(curve, Math.round(share * (curve.length - 1))));
  const near = spread
    .slice(1, -1)
    .reduce((a, b) => (Math.abs(b.t - worst.t) < Math.abs(a.t - worst.t) ? b : a));
  return spread.map(stage => (stage === near ? worst : stage));
}

/** How the sections past the check are drawn, how the simulation ends, and what the picture leaves open. */
export function stripNote(upright: UprightResult): string {
  const { stages, atTheEnd, mayRollOver } = upright;
  const last = stages.at(-1);
  if (last === undefined || atTheEnd === undefined || !isWithoutCheck(last)) return '';
  const rolls =
    atTheEnd.outcome === 'rolled over'
      ? 'The simulation ends there because she has rolled past 60°: she may come to rest on her side.'
      : mayRollOver === true
        ? 'The screen does not exclude that she rolls over: she may come to rest on her side, however she is drawn.'
        : '';
  return [
    `Once the deck is awash nothing is judged. The sections from then on are drawn at the list that the flooding simulation has with the likely values, at the end ${sideWords(last.list)}.`,
    rolls,
    'How she lies on the bottom is not worked out.',
    'Screening, not a naval architect’s study.',
  ]
    .filter(words => words !== '')
    .join(' ');
}
