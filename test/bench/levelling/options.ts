import { parseArgs } from 'node:util';

/** What the levelling bench is asked to do. */
export interface BenchOptions {
  /** One set, or several with commas between. */
  readonly set: string;
  /** Folder with `bounds.csv` and one folder a set. */
  readonly dir: string;
  readonly schedules?: number;
  /** CPU seconds an instance; absent: only the schedules count. */
  readonly seconds?: number;
  readonly seeds: number;
  /** Every how many-th instance is taken. */
  readonly every: number;
  /** The first that is taken, counted from 0: a long run can be done in parts. */
  readonly from: number;
  /** How many instances of a set are taken at most, spread evenly. */
  readonly take: number;
  readonly isJson: boolean;
  readonly isHeuristicOnly: boolean;
  /** Only instances whose best known finish is above the critical path. */
  readonly isHardOnly: boolean;
  readonly doesBounds: boolean;
  readonly doesReference: boolean;
  readonly doesPeer: boolean;
  readonly doesDated: boolean;
}

/** Instances of each set when only the peer is asked for. */
const PEER_TAKE = 12;

export const USAGE = `bench levelling --set j30|j60|j120|ubo10|NAME[,NAME] [--schedules N] [--seconds S] [--seeds K] [--dir DIR]
  [--every K [--from I]] [--take N] [--hard] [--heuristic] [--bounds] [--reference] [--peer] [--dated] [--json]
  --schedules  forward and backward passes an instance, each counting 1; partial passes count placed / all
               (5000; 50000 for ubo10; with --seconds as many as they allow)
  --seconds    CPU seconds an instance
  --seeds      runs with seeds 1 to K, their mean is reported (1)
  --dir        folder of the sets; default PSPLIB_DIR, for ubo10 RCPSP_MAX_DIR
  --every      only every K-th instance
  --from       beginning with the I-th, counted from 0 (0): parts of a long run
  --take       at most N instances of each set, spread evenly
  --hard       only instances whose best known finish is above the critical path
  --heuristic  no exact search
  --bounds     lower bounds against the best known finishes instead of schedules
  --reference  bare schedule generation here and in C, the same lists
  --peer       Chuffed on the same instances with the same seconds; without --set 12 hard ones of j60 and of j120
  --dated      speed with calendars, lags and varying capacity against without`;

/** Reads the command line; a text says what is wrong with it. */
export function readOptions(args: readonly string[]): BenchOptions | string {
  try {
    const { values } = parseArgs({
      args: [...args],
      options: {
        set: { type: 'string' },
        dir: { type: 'string' },
        schedules: { type: 'string' },
        seconds: { type: 'string' },
        seeds: { type: 'string' },
        every: { type: 'string' },
        from: { type: 'string' },
        take: { type: 'string' },
        json: { type: 'boolean' },
        heuristic: { type: 'boolean' },
        hard: { type: 'boolean' },
        bounds: { type: 'boolean' },
        reference: { type: 'boolean' },
        peer: { type: 'boolean' },
        dated: { type: 'boolean' },
      },
    });
    const isPeerAlone = values.peer === true && values.set === undefined;
    const set = isPeerAlone ? 'j60,j120' : values.set;
    if (set === undefined) return 'Say which set with --set.';
    const numbers = [values.schedules, values.seconds, values.seeds, values.every, values.take].filter(
      text => text !== undefined,
    );
    const wrong = numbers.find(text => !(Number(text) > 0));
    if (!(Number(values.from ?? 0) >= 0)) return `"${values.from ?? ''}" is not a number from 0 on.`;
    if (wrong !== undefined) return `"${wrong}" is not a number above 0.`;
    const seconds = values.seconds === undefined ? {} : { seconds: Number(values.seconds) };
    return {
      set,
      dir: values.dir ?? defaultDir(set),
      ...schedulesOf(set, values.schedules, values.seconds),
      ...seconds,
      seeds: Number(values.seeds ?? 1),
      every: Number(values.every ?? 1),
      from: Number(values.from ?? 0),
      take: Number(values.take ?? (isPeerAlone ? PEER_TAKE : Infinity)),
      isJson: values.json === true,
      isHeuristicOnly: values.heuristic === true,
      isHardOnly: isPeerAlone || values.hard === true,
      doesBounds: values.bounds === true,
      doesReference: values.reference === true,
      doesPeer: values.peer === true,
      doesDated: values.dated === true,
    };
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}

/** As asked; else as many as the seconds allow, or 5,000, or what decides every instance with maximum lags. */
function schedulesOf(
  set: string,
  asked: string | undefined,
  seconds: string | undefined,
): { schedules?: number } {
  if (asked !== undefined) return { schedules: Number(asked) };
  if (seconds !== undefined) return {};
  return { schedules: set.startsWith('ubo') ? 50_000 : 5000 };
}

/** Placements a second that any machine of today reaches: the seconds then end close behind the schedules. */
const PLACEMENTS = 13_000_000;

/** The schedules an instance of so many activities gets. */
export function schedulesFor({ schedules, seconds }: BenchOptions, activities: number): number {
  return schedules ?? Math.round((PLACEMENTS * (seconds ?? 1)) / activities);
}

function defaultDir(set: string): string {
  return set.startsWith('ubo')
    ? (process.env['RCPSP_MAX_DIR'] ?? '../shared/rcpsp-max')
    : (process.env['PSPLIB_DIR'] ?? '../shared/psplib');
}
