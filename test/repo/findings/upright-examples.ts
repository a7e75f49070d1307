import { evaluate } from '../../../core/evaluation';
import { uprightScreen, type UprightCompartment, type UprightInput } from '../../../core/flooding';
import { weightTotals } from '../../../core/stability';
import { demoProject } from '../../core/evaluation/demo';
import { bargeInput, coasterInput } from '../../core/flooding/invented-ship';
import { examples, type Told } from './example';

const coaster = (change: Partial<UprightInput>) => (): readonly Told[] =>
  uprightScreen(coasterInput(change)).findings;
const barge = (change: Partial<UprightCompartment>) => (): readonly Told[] => {
  const input = bargeInput(4);
  return uprightScreen({ ...input, compartments: input.compartments.map(space => ({ ...space, ...change })) })
    .findings;
};
const figure = (value: string, unit: string) =>
  ({ value, unit, basis: 'surveyed', source: 'made up', year: 2026 }) as const;

export const uprightExamples = examples(
  [
    'upright/air-left',
    'a hold whose only air escape lies at the keel',
    barge({ vents: [{ area: 4, z: 0 }] }),
  ],
  ['upright/air-trapped', 'a hold with openings and no air escape', barge({ vents: [] })],
  [
    'upright/kg-above-km',
    'a centre of gravity 8 m above the keel',
    coaster({ kg: { low: 7.5, likely: 8, high: 8.5, basis: 'assumed' } }),
  ],
  [
    'upright/kg-contradicted',
    'the same, and she lies afloat and upright',
    coaster({ kg: { low: 6, likely: 7, high: 8, basis: 'assumed' }, facts: { afloatUpright: true } }),
  ],
  [
    'upright/nonsense',
    'a draught over the depth',
    coaster({ particulars: { length: 80, breadth: 13, depth: 3, lightDraught: 4 } }),
  ],
  ['upright/nothing-floods', 'a ship whose compartments stay tight', barge({ openings: [], floods: false })],
  [
    'upright/tight-low',
    'a room that stays tight below the centre of gravity',
    () => {
      const input = coasterInput();
      return uprightScreen({
        ...input,
        compartments: input.compartments.map((space, i) =>
          i === 2 ? { ...space, floods: false, z1: 4 } : space,
        ),
      }).findings;
    },
  ],
  ['upright/undivided-length', 'one hold over the whole length', barge({})],
  [
    'upright/weight-item',
    'a mast of -4 t',
    () =>
      weightTotals([
        {
          title: 'Mast',
          mass: -4,
          vcg: 20,
          massSpread: 0.1,
          vcgSpread: 1,
          provenance: { basis: 'judgement', source: 'made up' },
        },
      ]).findings,
  ],
  [
    'upright/weight-list',
    'a weight list of the mast alone',
    () => {
      const base = demoProject();
      const mast = {
        id: 'mast',
        title: 'Mast',
        mass: figure('40', 't'),
        vcg: figure('25', 'm'),
        lcg: figure('50', 'm'),
        tcg: figure('0', 'm'),
      };
      return evaluate(
        { ...base, vessel: { ...base.vessel, weights: [mast] } },
        { today: '2026-11-24', seed: 1, schedules: 10 },
      ).findings;
    },
  ],
);
