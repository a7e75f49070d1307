import type { Basis } from '../../core/base';
import type { Change, Project } from '../../core/project';
import type { Edit } from '../../core/views';
import { entryAt, holderAt, isHolder, readAt, stepsOf } from './place';

/** A change of the document: its name for the undo list, and the pure function that makes it on a draft. */
export interface NamedEdit {
  readonly label: string;
  readonly apply: (draft: Project) => void;
}

/** A given number as a person changes it: the range spoke of the old value and goes with it. */
interface GivenChange {
  readonly value: string;
  readonly unit?: string;
  readonly basis?: Basis;
  readonly source?: string;
  readonly note?: string;
  /** Of a rate: the year whose prices it is at. */
  readonly year?: number;
}

const ENTERED = { basis: 'judgement', source: 'Entered by hand' } as const;

/** Where an edit lands: in the scenario when it already differs there, otherwise in the project all scenarios share. */
let isOnlyHere = false;

/** Whether edits of what all scenarios share are kept in the chosen scenario alone, until told otherwise. */
export function keepEditsInScenario(isOn: boolean): void {
  isOnlyHere = isOn;
}

/** What a scenario may hold a change of: not the frame, the scenarios and what belongs to no one way of doing it. */
const CHANGEABLE =
  /^\/(contingency$|(vessel|site|options|calendars|contingency|items|quotes|rates)(\/[A-Za-z0-9-]+)+$)/;

/** A change of the chosen scenario alone, begun from what all share; undefined when there is nothing to begin from. */
function ownChange(
  draft: Project,
  scenario: string,
  at: string,
): { holder: Record<string, unknown>; field: string } | undefined {
  const chosen = draft.scenarios.find(one => one.id === scenario);
  const shared = holderAt(draft, at);
  const now = shared?.holder[shared.field];
  if (chosen === undefined || now === undefined || !CHANGEABLE.test(at)) return undefined;
  // A copy of its own: what all share must not move with it.
  const to: unknown = JSON.parse(JSON.stringify(now));
  const changes: unknown[] = chosen.changes;
  changes.push({ at, to });
  const kept = changes.at(-1);
  return isHolder(kept) ? { holder: kept, field: 'to' } : undefined;
}

export function target(
  draft: Project,
  scenario: string,
  at: string,
): { holder: Record<string, unknown>; field: string } | undefined {
  const chosen = draft.scenarios.find(one => one.id === scenario);
  const own = chosen?.changes.find(change => change.at === at);
  if (own !== undefined) return { holder: own, field: 'to' };
  const around = chosen?.changes.find(change => at.startsWith(`${change.at}/`));
  if (around !== undefined) return holderAt(around.to, at.slice(around.at.length));
  return (isOnlyHere ? ownChange(draft, scenario, at) : undefined) ?? holderAt(draft, at);
}

/**
 * An edit of words as the document has them now: what is shown may be of an earlier document, while the newer one is
 * being worked out. Other kinds are shown in units of their own and stay as they are.
 */
export function asItIsNow(edit: Edit, project: Project | undefined, scenario: string): Edit {
  if (edit.kind !== 'text' || project === undefined) return edit;
  const { changes = [] } = project.scenarios.find(one => one.id === scenario) ?? {};
  const own = changes.find(change => edit.at === change.at || edit.at.startsWith(`${change.at}/`));
  const found = own === undefined ? readAt(project, edit.at) : readAt(own.to, edit.at.slice(own.at.length));
  return typeof found === 'string' ? { ...edit, value: found } : edit;
}

/**
 * Changes a given number. Without a basis of its own the new number rests on judgement, entered by hand. A rate typed
 * again stays at the prices of its year, so that it changes nothing; another one is of the year it is typed in.
 */
export function setGiven(edit: Edit, scenario: string, change: GivenChange): NamedEdit {
  return {
    label: `change ${edit.label}`,
    apply: draft => {
      const place = target(draft, scenario, edit.at);
      if (place === undefined) return;
      const before = place.holder[place.field];
      const unit = change.unit ?? edit.unit ?? (isHolder(before) ? before['unit'] : '1');
      const kept = edit.at.startsWith('/rates/') && isHolder(before) ? before['year'] : undefined;
      const isSame = Number(change.value) === Number(edit.value);
      const year = change.year ?? (isSame ? undefined : edit.yearNow) ?? edit.year ?? kept;
      const note = change.note === undefined || change.note === '' ? {} : { note: change.note };
      place.holder[place.field] = {
        value: change.value,
        unit,
        basis: change.basis ?? edit.basis ?? ENTERED.basis,
        source: change.source ?? ENTERED.source,
        ...(year === undefined ? {} : { year }),
        ...note,
      };
    },
  };
}

/** Changes a word, a date or a choice. An empty text takes a field that may be absent away. */
export function setWord(edit: Edit, scenario: string, value: string): NamedEdit {
  return {
    label: `change ${edit.label}`,
    apply: draft => {
      const place = target(draft, scenario, edit.at);
      if (place === undefined) return;
      place.holder[place.field] = edit.choices?.find(one => one.id === value)?.puts ?? value;
      if (edit.pair !== undefined) place.holder[edit.pair] ??= value;
      const along = edit.takesAlong === undefined ? undefined : target(draft, scenario, edit.takesAlong);
      if (along !== undefined) along.holder[along.field] = value;
    },
  };
}

/** Changes a whole number, such as a year. */
export function setWhole(edit: Edit, scenario: string, value: string): NamedEdit {
  return {
    label: `change ${edit.label}`,
    apply: draft => {
      const place = target(draft, scenario, edit.at);
      if (place !== undefined) place.holder[place.field] = Number(value);
    },
  };
}

export function setSwitch(edit: Edit, scenario: string, isOn: boolean): NamedEdit {
  return {
    label: `change ${edit.label}`,
    apply: draft => {
      const place = target(draft, scenario, edit.at);
      if (place !== undefined) place.holder[place.field] = isOn;
    },
  };
}

/** Puts a word into a list of the document, or takes it out: the last step of the place names the word. */
export function setMember(edit: Edit, scenario: string, isIn: boolean): NamedEdit {
  return {
    label: `change ${edit.label}`,
    apply: draft => {
      const cut = edit.at.lastIndexOf('/');
      const word = stepsOf(edit.at).at(-1) ?? '';
      const place = target(draft, scenario, edit.at.slice(0, cut));
      const list = place?.holder[place.field];
      if (place === undefined || !Array.isArray(list)) return;
      const others: unknown[] = list.filter((one: unknown) => one !== word);
      place.holder[place.field] = isIn ? [...others, word] : others;
    },
  };
}

/** Entries that say nothing without their one field: they go with it. */
const EMPTY_WITHOUT = /^\/((survey\/measured|rates\/(overrides|wages))\/[^/]+\/figure|notes\/[^/]+\/text)$/;

/** Takes the entry of a list out, by its place, or the one entry that a place holds. */
export function takeEntry(draft: Project, scenario: string, at: string): void {
  const cut = at.lastIndexOf('/');
  const place = target(draft, scenario, at.slice(0, cut));
  const list = place?.holder[place.field];
  const step = stepsOf(at).at(-1) ?? '';
  if (isHolder(list)) Reflect.deleteProperty(list, step);
  if (!Array.isArray(list)) return;
  const entry = entryAt(list, step);
  if (entry >= 0) list.splice(entry, 1);
}

/** Takes a change of the planner away: what the program works out counts again. */
export function takeAway(edit: Edit, scenario: string): NamedEdit {
  return {
    label: `take back ${edit.label}`,
    apply: draft => {
      if (EMPTY_WITHOUT.test(edit.at)) {
        takeEntry(draft, scenario, edit.at.slice(0, edit.at.lastIndexOf('/')));
        return;
      }
      const place = target(draft, scenario, edit.at);
      if (place !== undefined) Reflect.deleteProperty(place.holder, place.field);
    },
  };
}

/** The edit of one typed value, of whatever kind. */
export function typedEdit(edit: Edit, scenario: string, value: string): NamedEdit {
  if (edit.kind === 'figure') return setGiven(edit, scenario, { value });
  if (edit.kind === 'whole') return setWhole(edit, scenario, value);
  if (edit.member === true) return setMember(edit, scenario, value === 'true');
  if (edit.kind === 'switch') return setSwitch(edit, scenario, value === 'true');
  return setWord(edit, scenario, value);
}

/** Several changes as one: a paste is one step to undo. */
export function together(label: string, edits: readonly NamedEdit[]): NamedEdit {
  return { label, apply: draft => edits.forEach(edit => edit.apply(draft)) };
}

/** A new scenario that starts as the chosen one and changes more; its own changes take the place of what lies inside. */
export function scenarioOfPlan(
  scenario: string,
  plan: { readonly id: string; readonly title: string; readonly changes: readonly Change[] },
): NamedEdit {
  const { id, title, changes } = plan;
  const isInside = (at: string) => changes.some(own => at === own.at || at.startsWith(`${own.at}/`));
  return {
    label: 'make a scenario of a crew plan',
    apply: draft => {
      const chosen = draft.scenarios.find(one => one.id === scenario);
      if (chosen === undefined || draft.scenarios.some(one => one.id === id)) return;
      const kept = chosen.changes.filter(({ at }) => !isInside(at));
      draft.scenarios.push({ id, title, changes: [...kept, ...changes].map(change => ({ ...change })) });
    },
  };
}

/** A new scenario that starts as the chosen one. */
export function copyScenario(scenario: string, id: string, title: string): NamedEdit {
  return {
    label: 'add a scenario',
    apply: draft => {
      const chosen = draft.scenarios.find(one => one.id === scenario);
      if (chosen === undefined || draft.scenarios.some(one => one.id === id)) return;
      draft.scenarios.push({ id, title, changes: chosen.changes.map(change => ({ ...change })) });
    },
  };
}
