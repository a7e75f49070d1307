import type { Project } from '../../core/project';

/** A change of plain data: a new value of a field, a field taken away, or entries put in place of others in a list. */
export type Difference =
  | { readonly at: readonly (string | number)[]; readonly to: unknown }
  | { readonly at: readonly (string | number)[]; readonly gone: true }
  | {
      readonly at: readonly (string | number)[];
      readonly from: number;
      readonly less: number;
      readonly more: readonly unknown[];
    };

/** A project as it is sent: what differs from the one sent before it, or the whole. */
export type SentProject = { readonly whole: Project } | { readonly since: readonly Difference[] };

type Plain = Readonly<Record<string, unknown>>;

function isPlain(value: unknown): value is Plain {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function isList(value: unknown): value is readonly unknown[] {
  return Array.isArray(value);
}

/** What differs between two states of a document that share what no edit touched: objects are compared by identity. */
export function differences(
  before: unknown,
  after: unknown,
  at: readonly (string | number)[] = [],
): Difference[] {
  if (Object.is(before, after)) return [];
  if (isList(before) && isList(after)) return inLists(before, after, at);
  if (!isPlain(before) || !isPlain(after)) return [{ at, to: after }];
  const gone = Object.keys(before).filter(key => !(key in after));
  return [
    ...gone.map((key): Difference => ({ at: [...at, key], gone: true })),
    ...Object.keys(after).flatMap(key =>
      key in before
        ? differences(before[key], after[key], [...at, key])
        : [{ at: [...at, key], to: after[key] }],
    ),
  ];
}

function inLists(
  before: readonly unknown[],
  after: readonly unknown[],
  at: readonly (string | number)[],
): Difference[] {
  if (before.length === after.length)
    return after.flatMap((one, i) => differences(before[i], one, [...at, i]));
  const shorter = Math.min(before.length, after.length);
  let from = 0;
  while (from < shorter && Object.is(before[from], after[from])) from += 1;
  let same = 0;
  while (same < shorter - from && Object.is(before.at(-1 - same), after.at(-1 - same))) same += 1;
  return [{ at, from, less: before.length - from - same, more: after.slice(from, after.length - same) }];
}

/** The document with the differences made; what they do not touch stays the same object. */
export function withDifferences(document: unknown, since: readonly Difference[]): unknown {
  return since.reduce((sofar, difference) => withOne(sofar, difference, 0), document);
}

function withOne(value: unknown, difference: Difference, depth: number): unknown {
  const step = difference.at[depth];
  if (step === undefined) return replaced(value, difference);
  const isLast = depth === difference.at.length - 1;
  if (isList(value)) {
    return value.map((one, i) => (i === step ? withOne(one, difference, depth + 1) : one));
  }
  const fields = isPlain(value) ? value : {};
  if (isLast && 'gone' in difference) {
    return Object.fromEntries(Object.entries(fields).filter(([key]) => key !== step));
  }
  return { ...fields, [step]: withOne(fields[step], difference, depth + 1) };
}

function replaced(value: unknown, difference: Difference): unknown {
  if ('to' in difference) return difference.to;
  if ('gone' in difference) return undefined;
  return isList(value) ? value.toSpliced(difference.from, difference.less, ...difference.more) : value;
}

/** Sends a project whole once, then what differs: copying a large document at every edit would keep the window waiting. */
export class ProjectSender {
  #sent: Project | undefined;

  /** A question with its project taken out and made ready to send. */
  packed(ask: object & { readonly project?: Project }): {
    readonly ask: object;
    readonly sent?: SentProject;
  } {
    const { project, ...rest } = ask;
    if (project === undefined) return { ask };
    const sent = this.#sent === undefined ? { whole: project } : { since: differences(this.#sent, project) };
    this.#sent = project;
    return { ask: rest, sent };
  }
}

/** Puts together what a sender sends: what an edit did not touch stays the same object, so that nothing is worked out twice. */
export class ProjectReceiver {
  #known: unknown;

  received(sent: SentProject): unknown {
    this.#known = 'whole' in sent ? sent.whole : withDifferences(this.#known, sent.since);
    return this.#known;
  }
}
