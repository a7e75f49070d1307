/**
 * From an edit in the window to the total it shows, in a project of 2,000 lines: the document is sent as the window sends
 * it, evaluated by the engine that the window's worker runs, and every answer is copied as it is copied to the window.
 * Only the browser's own work is missing: the event, two messages between threads, and painting. Totals are measured
 * with the next edit following at once, as in typing: first at the dates of the last settled plan, then of edits that wait
 * for the total at the dates of the plan scheduled anew; a few edits wait until everything is settled.
 */
import { produce, type Draft } from 'immer';
import type { Project } from '../../core/project';
import { EvaluationDesk, type Work } from '../../renderer/engine/evaluation-desk';
import type { Part, Questions } from '../../renderer/engine/protocol';
import { ProjectReceiver, ProjectSender } from '../../renderer/engine/sent-project';
import { TODAY, largeProject } from './large-project';
import { print, timesOf, type Times } from './times';

const LINES = 2000;
type Change = (project: Draft<Project>, run: number) => void;

/** The hours of one line of those that have any. */
const line: Change = (project, run) => {
  const worked = project.ownItems.filter(item => item.hoursPerUnit !== undefined);
  const own = worked[(run * 37) % worked.length];
  if (own?.hoursPerUnit !== undefined) own.hoursPerUnit.value = String(1 + (run % 7) / 10);
};

/** The price of one line. */
const price: Change = (project, run) => {
  const own = project.ownItems[(run * 53) % project.ownItems.length];
  if (own === undefined) return;
  own.feeFixed = {
    value: String(100 + run),
    unit: 'USD',
    basis: 'quoted',
    source: 'Entered in the bench',
    year: 2026,
  };
};

/** The weight of the ship, which more than half of the lines scale with, within the range that is given for it. */
const lightship: Change = (project, run) => {
  if (project.vessel.lightship !== undefined)
    project.vessel.lightship.value = String(4905 + ((run * 37) % 490));
};

/** The day whose prices the rates are brought to, which moves every line that costs anything. */
const priceDate: Change = (project, run) => {
  project.rates.priceDate = `2026-0${1 + (run % 9)}-15`;
};

/** The first day of the project, which moves every date. */
const start: Change = (project, run) => {
  project.calendars.start = `2027-0${1 + (run % 9)}-11`;
};

interface Edited {
  /** Milliseconds until a total was shown, until it was one at dates of its own plan, and until all was settled. */
  readonly total: number;
  readonly scheduled: number;
  readonly settled: number;
  /** Processor time until the total was shown, milliseconds. */
  readonly processor: number;
}

const processorTime = () => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

type Until = 'total' | 'scheduled' | 'settled';

/** Whether a part shows a total at the dates of its own plan: the finish is told with it. */
const isScheduled = (part: Part) =>
  part.kind === 'head' ||
  (part.kind === 'settling' && part.bottom.some(cell => cell.key === 'finish' && cell.value.absent !== true));

/** A window without a browser. */
class Window {
  project: Project;
  readonly #desk = new EvaluationDesk();
  readonly #sender = new ProjectSender();
  readonly #receiver = new ProjectReceiver();

  constructor(project: Project) {
    this.project = project;
  }

  /** Makes an edit and waits until everything is settled, or only until a total is shown or scheduled. */
  async edit(change: (project: Draft<Project>) => void, until: Until): Promise<Edited> {
    const started = performance.now();
    const before = processorTime();
    this.project = produce(this.project, change);
    const packed = this.#sender.packed({ project: this.project });
    const project = this.#receiver.received(structuredClone(packed.sent ?? { whole: this.project }));
    let total: number | undefined;
    let scheduled: number | undefined;
    let processor = Number.NaN;
    const goesOn = () => until === 'settled' || (until === 'scheduled' && scheduled === undefined);
    const work: Work = {
      say: (part: Part) => {
        structuredClone(part);
        if (total === undefined) processor = processorTime() - before;
        total ??= performance.now() - started;
        if (isScheduled(part)) scheduled ??= performance.now() - started;
      },
      pause: milliseconds => new Promise(resolve => setTimeout(() => resolve(goesOn()), milliseconds)),
      now: () => performance.now(),
    };
    await this.#desk.evaluate(askOf(project), work);
    return {
      total: total ?? Number.NaN,
      scheduled: scheduled ?? Number.NaN,
      processor,
      settled: performance.now() - started,
    };
  }
}

function askOf(project: unknown): Questions['evaluate']['ask'] {
  const frame = { scenario: 'a', today: TODAY, measures: 'us', document: 'bench', view: 'work' } as const;
  const whole = project as Project;
  return { ...frame, project: whole, scenario: whole.scenarios[0]?.id ?? '' };
}

const WARM_UP = 10;
const TOTALS = 40;
const SCHEDULED = 20;
const SETTLED = 2;

async function rowsOf(window: Window, name: string, change: Change): Promise<Times[]> {
  const shown: Edited[] = [];
  for (let run = 0; run < WARM_UP + TOTALS; run++) {
    const edited = await window.edit(project => change(project, run), 'total');
    if (run >= WARM_UP) shown.push(edited);
  }
  const scheduled: Edited[] = [];
  for (let run = 0; run < SCHEDULED; run++)
    scheduled.push(await window.edit(project => change(project, 500 + run), 'scheduled'));
  const settled: Edited[] = [];
  for (let run = 0; run < SETTLED; run++)
    settled.push(await window.edit(project => change(project, 1000 + run), 'settled'));
  return [
    timesOf(
      `${name}: edit to shown total`,
      shown.map(one => one.total),
    ),
    timesOf(
      `${name}: processor time of that`,
      shown.map(one => one.processor),
    ),
    timesOf(
      `${name}: edit to total at its own dates`,
      scheduled.map(one => one.scheduled),
    ),
    timesOf(
      `${name}: edit to all settled`,
      settled.map(one => one.settled),
    ),
  ];
}

/** `npm run bench -- edit [--json]`. */
export async function edit(args: readonly string[]): Promise<number> {
  const window = new Window(largeProject(LINES));
  const opened = await window.edit(() => undefined, 'settled');
  const rows: Times[] = [];
  for (const [name, change] of [
    ['price of a line', price],
    ['hours of a line', line],
    ['lightship', lightship],
    ['price date', priceDate],
    ['start of the project', start],
  ] as const)
    rows.push(...(await rowsOf(window, name, change)));
  const memory = process.memoryUsage();
  const megabytes = (bytes: number) => Math.round(bytes / 1e6);
  const more = {
    firstAnswerMilliseconds: Math.round(opened.settled),
    heapMegabytes: megabytes(memory.heapUsed),
    arrayMegabytes: megabytes(memory.arrayBuffers),
    residentMegabytes: megabytes(memory.rss),
  };
  print(rows, more, args.includes('--json'));
  return 0;
}
