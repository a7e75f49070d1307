/**
 * From an edit in the window to the total it shows, in a project of 2,000 lines: the document is sent as the window sends
 * it, evaluated by the engine that the window's worker runs, and every answer is copied as it is copied to the window.
 * Only the browser's own work is missing: the event, two messages between threads, and painting.
 */
import { produce, type Draft } from 'immer';
import type { Project } from '../../core/project';
import { EvaluationDesk, type Work } from '../../renderer/engine/evaluation-desk';
import type { Part, Questions } from '../../renderer/engine/protocol';
import { ProjectReceiver, ProjectSender } from '../../renderer/engine/sent-project';
import { TODAY, largeProject } from './large-project';
import { print, timesOf } from './times';

const LINES = 2000;
type Change = (project: Draft<Project>, run: number) => void;

/** The hours of one line. */
const line: Change = (project, run) => {
  const own = project.ownItems[(run * 37) % project.ownItems.length];
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

const lightship: Change = (project, run) => {
  if (project.vessel.lightship !== undefined) project.vessel.lightship.value = String(3000 + 11 * run);
};

/** A window without a browser. */
class Window {
  project: Project;
  readonly #desk = new EvaluationDesk();
  readonly #sender = new ProjectSender();
  readonly #receiver = new ProjectReceiver();

  constructor(project: Project) {
    this.project = project;
  }

  /** Makes an edit and waits until everything is settled. @returns milliseconds until a total was shown, and until settled. */
  async edit(change: (project: Draft<Project>) => void): Promise<{ total: number; settled: number }> {
    const started = performance.now();
    this.project = produce(this.project, change);
    const packed = this.#sender.packed({ project: this.project });
    const project = this.#receiver.received(structuredClone(packed.sent ?? { whole: this.project }));
    let total: number | undefined;
    const work: Work = {
      say: (part: Part) => {
        structuredClone(part);
        total ??= performance.now() - started;
      },
      pause: milliseconds => new Promise(resolve => setTimeout(() => resolve(true), milliseconds)),
      now: () => performance.now(),
    };
    await this.#desk.evaluate(askOf(project), work);
    return { total: total ?? Number.NaN, settled: performance.now() - started };
  }
}

function askOf(project: unknown): Questions['evaluate']['ask'] {
  const frame = { scenario: 'a', today: TODAY, measures: 'us', document: 'bench', view: 'work' } as const;
  const whole = project as Project;
  return { ...frame, project: whole, scenario: whole.scenarios[0]?.id ?? '' };
}

/** `npm run bench -- edit [--json]`. */
export async function edit(args: readonly string[]): Promise<number> {
  const window = new Window(largeProject(LINES));
  const opened = await window.edit(() => undefined);
  const rows = [];
  for (const [name, change, runs] of [
    ['price of a line', price, 20],
    ['hours of a line', line, 4],
    ['lightship', lightship, 4],
  ] as const) {
    const totals: number[] = [];
    const settled: number[] = [];
    for (let run = 0; run < runs; run++) {
      const times = await window.edit(project => change(project, run));
      if (run < 1) continue;
      totals.push(times.total);
      settled.push(times.settled);
    }
    rows.push(
      timesOf(`${name}: edit to shown total`, totals),
      timesOf(`${name}: edit to all settled`, settled),
    );
  }
  const memory = process.memoryUsage();
  const megabytes = (bytes: number) => Math.round(bytes / 1e6);
  const more = {
    firstAnswerMilliseconds: Math.round(opened.settled),
    heapMegabytes: megabytes(memory.heapUsed),
    residentMegabytes: megabytes(memory.rss),
  };
  print(rows, more, args.includes('--json'));
  return 0;
}
