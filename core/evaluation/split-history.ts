import { z } from 'zod';
import splitTemplate from '../../templates/history-split.json';
import { figureSchema, key, provenanceSchema, type Basis } from '../base';
import { stageTitle } from '../estimate';
import { STAGES, type StageKey } from '../work';
import type { EstimateParts } from './evaluate';
import type { EstimateSummary } from './summary';

const { splits, largest } = z
  .strictObject({
    splits: z.array(z.strictObject({ id: key, title: z.string(), figure: figureSchema })),
    largest: z.strictObject({ stage: z.enum(STAGES), ...provenanceSchema.shape }),
  })
  .parse(splitTemplate);

/** A share of this estimate beside what past hulls took, and where it falls. */
export interface SplitAgainstHistory {
  readonly id: string;
  readonly title: string;
  readonly value: number;
  readonly unit: string;
  readonly low: number;
  readonly high: number;
  readonly falls: 'below' | 'inside' | 'above';
  readonly basis: Basis;
  readonly source: string;
}

/** The stage that takes most of something, and its share. */
export interface LargestStage {
  readonly of: 'cost' | 'paid hours';
  readonly stage: StageKey;
  readonly share: number;
  /** Whether it is the stage that usually does. */
  readonly isUsual: boolean;
}

/**
 * How the estimate divides, against history: contaminant removal (the clean-up stage at contract price) as a share of
 * the total, its paid hours a tonne of lightship, and which stage is the largest. A figure that is absent is left out.
 */
export function splitAgainstHistory(
  { work }: EstimateParts,
  summary: EstimateSummary,
): { readonly splits: readonly SplitAgainstHistory[]; readonly largest: readonly LargestStage[] } {
  const cost = shares(stage => summary.byStage[stage]?.cents);
  const hours = shares(stage => hoursOf(summary, stage));
  const lightship = work.result.number(work.takeOff.measures.lightship);
  const values: Readonly<Record<string, number | undefined>> = {
    'removal-share': cost.find(({ stage }) => stage === 'clean-up')?.share,
    'hours-per-tonne':
      lightship === undefined || lightship === 0 ? undefined : hoursOf(summary, 'clean-up') / lightship,
  };
  return {
    splits: splits.flatMap(({ id, title, figure }): SplitAgainstHistory[] => {
      const value = values[id];
      if (value === undefined) return [];
      const [low, high] = [Number(figure.low), Number(figure.high)];
      const falls = value < low ? 'below' : value > high ? 'above' : 'inside';
      const { unit, basis, source } = figure;
      return [{ id, title, value: Math.round(value * 1e6) / 1e6, unit, low, high, falls, basis, source }];
    }),
    largest: [
      ...cost.slice(0, 1).map(one => ({ of: 'cost' as const, ...one })),
      ...hours.slice(0, 1).map(one => ({ of: 'paid hours' as const, ...one })),
    ].map(one => ({ ...one, isUsual: one.stage === largest.stage })),
  };
}

/** The same in lines for people. */
export function splitLines({
  splits: rows,
  largest: stages,
}: ReturnType<typeof splitAgainstHistory>): string[] {
  return [
    ...rows.map(({ title, value, unit, low, high, falls, basis }) => {
      const say = (amount: number) => (unit === '1' ? `${Math.round(amount * 100)} %` : amount.toFixed(1));
      const between = `past hulls ${say(low)} to ${say(high)}, ${basis}`;
      return `${title}: ${say(value)} (${between}): ${falls === 'inside' ? 'inside' : `${falls} it`}`;
    }),
    ...stages.map(
      ({ of, stage, share, isUsual }) =>
        `Largest share of ${of}: ${stageTitle(stage)}, ${Math.round(share * 100)} %${isUsual ? '' : '; it is usually the clean-up'}`,
    ),
  ];
}

function hoursOf({ lines }: EstimateSummary, stage: StageKey): number {
  return lines.filter(line => line.stage === stage).reduce((sum, line) => sum + (line.hours ?? 0), 0);
}

/** The share of each stage, the largest first; none while an amount is absent or they come to nothing. */
function shares(of: (stage: StageKey) => number | undefined): { stage: StageKey; share: number }[] {
  const known = STAGES.flatMap(stage => {
    const amount = of(stage);
    return amount === undefined ? [] : [{ stage, amount }];
  });
  const total = known.reduce((sum, { amount }) => sum + amount, 0);
  if (known.length < STAGES.length || total === 0) return [];
  return known
    .toSorted((a, b) => b.amount - a.amount)
    .map(({ stage, amount }) => ({ stage, share: amount / total }));
}
