import { isSameData } from '../../core/base';
import {
  bookSteps,
  evaluate,
  schedulingSteps,
  type Evaluation,
  type ReviewTrials,
  type SimulatedContingency,
} from '../../core/evaluation';
import {
  grantFindings,
  hasGrant,
  isOpenedName,
  planOf,
  settlingLine,
  unscreenedHead,
  WhyDesk,
  WINDOW_VIEWS,
  windowParts,
  type BottomAmounts,
  type BottomCell,
  type EarlierPlan,
  type FoundOfGrant,
  type OpenedName,
  type OpenedRows,
  type WindowHead,
  type WindowParts,
  type WindowViewName,
} from '../../core/views';
import type { Part, Questions, ViewRows } from './protocol';
import type { RunFound } from './study-protocol';

/** The seed of the window's searches: the same document gives the same answer every time. */
const SEED = 1;
/** A plan that takes longer than this to settle waits a moment for the next edit first, both in milliseconds. */
const SLOW = 200;
const MOMENT = 250;
/** Beforehand work on derivations begins this long after an answer, in milliseconds. */
const LATER = 1200;
/** Of larger projects derivations are worked out when they are asked for: all of them at once would fill the memory. */
const MOST_WARMED = 600;

/** How a question in work speaks to the window, and lets newer questions by. */
export interface Work {
  readonly say: (part: Part) => void;
  /** Waits for some milliseconds. @returns false when a newer question of the same kind has come. */
  readonly pause: (milliseconds: number) => Promise<boolean>;
  readonly now: () => number;
}

type Ask = Questions['evaluate']['ask'];
type Answer = Questions['evaluate']['answer'];

interface Options {
  readonly today: string;
  readonly seed: number;
  readonly scenario: string;
  readonly simulated?: SimulatedContingency;
  readonly trials?: ReviewTrials;
}

/** What the last evaluation left behind: for derivations, and to tell how the next edit moves the bottom line. */
interface Kept {
  readonly about: string;
  readonly evaluation: Evaluation;
  readonly desk: WhyDesk;
  readonly amounts: BottomAmounts;
  readonly bottom: readonly BottomCell[];
  /** What making the grant budget found, of this evaluation or still of an earlier one. */
  readonly ofGrant: FoundOfGrant | undefined;
  /** The head with what is found of this one. */
  readonly headWith: (ofGrant: FoundOfGrant) => Pick<WindowParts, 'head' | 'amounts'> | undefined;
}

/** Views that are looked at together with another. */
const BESIDE: Readonly<Record<string, readonly WindowViewName[]>> = { sinking: ['sinking', 'vessel'] };

/**
 * Evaluates the document for the window: the new total first, then all that is settled, view by view. A document that is
 * opened shows what it comes to before the upright screen, which takes as long again.
 */
export class EvaluationDesk {
  #kept: Kept | undefined;
  #found: RunFound | undefined;
  /** How long the last plan took to settle, and what of that its schedule took beforehand, in milliseconds. */
  #settling = 0;
  #scheduling = 0;
  /** Answers about a document just opened, until its upright screen is settled. */
  #opening: WhyDesk | undefined;
  /** The plan as the document was opened in this scenario: later plans show how they moved from it. */
  #first: { readonly about: string; readonly plan: EarlierPlan } | undefined;

  /** Answers about the last settled evaluation, or about the document just opened. */
  get why(): WhyDesk | undefined {
    return this.#opening ?? this.#kept?.desk;
  }

  async evaluate(ask: Ask, work: Work): Promise<Answer> {
    const { project, scenario, measures } = ask;
    const about = `${ask.document} ${scenario} ${measures}`;
    const options: Options = {
      today: project.statusDate ?? ask.today,
      seed: SEED,
      scenario,
      ...this.#run(ask.found),
    };
    const kept = this.#kept?.about === about ? this.#kept : undefined;
    this.#scheduling = 0;
    const goesOn =
      kept === undefined
        ? await this.#sayOpening(ask, options, work)
        : await this.#sayTotal(project, options, kept, work);
    if (!goesOn) return OVERTAKEN;
    const started = work.now();
    const evaluation = evaluate(project, options);
    this.#settling = this.#scheduling + work.now() - started;
    if (this.#settling > SLOW && !(await work.pause(0))) return OVERTAKEN;
    const partsWith = (found?: FoundOfGrant) =>
      windowParts(project, evaluation, measures, kept?.amounts, this.#earlier(about), found);
    const ofGrant = isGrantLookedAt(ask) ? foundOf(evaluation) : heldOf(kept?.ofGrant);
    const parts = partsWith(ofGrant);
    if (parts === undefined) return { hasRows: false, findings: evaluation.findings };
    const desk = new WhyDesk(evaluation, measures);
    this.#keep({
      about,
      evaluation,
      desk,
      amounts: toldBefore(parts.amounts, kept?.amounts),
      bottom: parts.head.bottom,
      ofGrant,
      headWith: partsWith,
    });
    await sayRows(parts, ask, desk, work);
    return { hasRows: true, findings: evaluation.findings };
  }

  /**
   * The head of the last evaluation with what making its grant budget finds: too slow to be waited for at every edit. A
   * newer evaluation ends it.
   */
  async lookAtGrant({ pause }: Pick<Work, 'pause'>): Promise<{ head?: WindowHead }> {
    const kept = this.#kept;
    if (kept === undefined || !hasGrant(kept.evaluation) || kept.ofGrant?.isHeld === false) return {};
    for (const _ of bookSteps(kept.evaluation)) {
      await pause(0);
      if (this.#kept !== kept) return {};
    }
    const ofGrant = foundOf(kept.evaluation);
    const parts = kept.headWith(ofGrant);
    if (parts === undefined) return {};
    const { amounts, head } = parts;
    this.#kept = { ...kept, ofGrant, amounts, bottom: head.bottom };
    return { head };
  }

  /** Says head and view looked at of a document just opened, but for what waits for the upright screen. */
  async #sayOpening(ask: Ask, options: Options, work: Work): Promise<boolean> {
    const { project, measures, view } = ask;
    this.#opening = undefined;
    if (BESIDE[view] !== undefined) return true;
    const evaluation = evaluate(project, { ...options, upright: false });
    const parts = windowParts(project, evaluation, measures, undefined);
    if (parts === undefined) return true;
    this.#opening = new WhyDesk(evaluation, measures);
    const seen = viewRows(
      parts,
      WINDOW_VIEWS.filter(name => name === view),
    );
    const opened = openedBeside(this.#opening, ask);
    work.say({ kind: 'head', rows: { ...unscreenedHead(parts.head), ...seen }, opened });
    return work.pause(0);
  }

  /**
   * Says the total at once, at the dates of the plan before where the plan has changed; where settling takes long, the
   * total at the new dates as well, as soon as there are any.
   */
  async #sayTotal(
    project: Ask['project'],
    options: Options,
    { evaluation, bottom }: Kept,
    work: Work,
  ): Promise<boolean> {
    const before = evaluation.estimate?.schedule;
    if (before === undefined || before.activities.length === 0) return true;
    const sayPriced = () => {
      const { estimate } = evaluate(project, { ...options, upright: false, held: before });
      if (estimate?.money !== undefined)
        work.say({ kind: 'settling', bottom: settlingLine(estimate, bottom) });
      return estimate;
    };
    const atOnce = sayPriced();
    if (atOnce?.datesHeld !== true || this.#settling <= SLOW) return work.pause(0);
    const started = work.now();
    for (const _ of schedulingSteps(atOnce, options)) if (!(await work.pause(0))) return false;
    this.#scheduling = work.now() - started;
    sayPriced();
    return work.pause(MOMENT);
  }

  /** What a run set, as the same object while it says the same: then nothing is worked out twice. */
  #run(found: RunFound | undefined): RunFound {
    if (found === undefined) return {};
    if (!isSameData(this.#found, found)) this.#found = found;
    return this.#found ?? {};
  }

  #earlier(about: string): EarlierPlan | undefined {
    return this.#first?.about === about ? this.#first.plan : undefined;
  }

  #keep(kept: Kept): void {
    this.#kept = kept;
    this.#opening = undefined;
    if (this.#first?.about !== kept.about) this.#first = { about: kept.about, plan: planOf(kept.evaluation) };
    if ((kept.evaluation.estimate?.items.length ?? 0) > MOST_WARMED) return;
    setTimeout(() => {
      if (this.#kept?.desk === kept.desk) kept.desk.warm();
    }, LATER);
  }
}

const OVERTAKEN: Answer = { hasRows: true, findings: [] };

/** Whether a view is looked at that makes the grant budget anyway, or lists what it finds: then the count waits for it. */
function isGrantLookedAt({ view, beside = [] }: Pick<Ask, 'view' | 'beside'>): boolean {
  return [view, ...beside].some(name => name === 'funding' || name === 'review');
}

function foundOf(evaluation: Evaluation): FoundOfGrant {
  return { findings: grantFindings(evaluation), isHeld: false };
}

function heldOf(before: FoundOfGrant | undefined): FoundOfGrant | undefined {
  return before && { ...before, isHeld: true };
}

/** The amounts to tell the next change by: where not all findings are known yet, their count told last. */
function toldBefore(amounts: BottomAmounts, before: BottomAmounts | undefined): BottomAmounts {
  return { ...amounts, findings: amounts.findings ?? before?.findings };
}

function viewRows(parts: WindowParts, names: readonly WindowViewName[]): ViewRows {
  return names.reduce<ViewRows>((rows, name) => ({ ...rows, ...parts.view(name) }), {});
}

/** The rows of what is looked at of the views that are made when they are opened. */
function openedBeside(
  desk: WhyDesk,
  { view, beside = [] }: Pick<Ask, 'view' | 'beside'>,
): Partial<OpenedRows> {
  const names: readonly OpenedName[] = isOpenedName(view) ? [view, ...beside] : beside;
  return names.reduce<Partial<OpenedRows>>((all, name) => {
    const rows = name in all ? undefined : desk.opened(name);
    return rows === undefined ? all : { ...all, [name]: rows };
  }, {});
}

/** Says head and view looked at together, then the other views one by one. */
async function sayRows(parts: WindowParts, ask: Ask, desk: WhyDesk, work: Work): Promise<void> {
  const first = BESIDE[ask.view] ?? WINDOW_VIEWS.filter(name => name === ask.view);
  const rows = { ...parts.head, ...viewRows(parts, first) };
  work.say({ kind: 'head', rows, opened: openedBeside(desk, ask) });
  for (const name of WINDOW_VIEWS.filter(one => !first.includes(one))) {
    if (!(await work.pause(0))) return;
    work.say({ kind: 'view', rows: parts.view(name) });
  }
}
