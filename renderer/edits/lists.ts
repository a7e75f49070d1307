import type { Project } from '../../core/project';
import type { Addition, AddField, Removal } from '../../core/views';
import { takeEntry, target, type NamedEdit } from './edits';
import { isHolder, setAt, type Holder } from './place';

/** What was typed into the fields of a new entry, by path; what was left empty is not there. */
export type Filled = Readonly<Record<string, string>>;

/** Adds an entry to a list of the document, or puts it where the document holds one. */
export function addEntry(addition: Addition, scenario: string, filled: Filled): NamedEdit {
  return {
    label: `add ${addition.what}`,
    apply: draft => {
      const entry: Holder = structuredClone(addition.entry);
      for (const field of addition.fields) {
        const text = filled[field.path];
        if (text !== undefined && text !== '') setAt(entry, field.path, valueOf(field, text));
      }
      if (addition.single === true) {
        const place = target(draft, scenario, addition.at);
        if (place !== undefined) place.holder[place.field] = entry;
        return;
      }
      const list = listAt(draft, scenario, addition.at);
      if (addition.idFrom !== undefined) entry['id'] = freshKey(filled[addition.idFrom] ?? '', list ?? []);
      list?.push(entry);
    },
  };
}

/** Takes an entry out of its list. */
export function removeEntry({ at, label }: Removal, scenario: string): NamedEdit {
  return {
    label: `remove ${label}`,
    apply: draft => {
      takeEntry(draft, scenario, at);
    },
  };
}

/** The list at a place, made when it is not there yet. */
function listAt(draft: Project, scenario: string, at: string): unknown[] | undefined {
  const place = target(draft, scenario, at);
  if (place === undefined) return undefined;
  const there = place.holder[place.field];
  if (Array.isArray(there)) {
    const list: unknown[] = there;
    return list;
  }
  const made: unknown[] = [];
  place.holder[place.field] = made;
  return made;
}

function valueOf(field: AddField, text: string): unknown {
  if (field.kind === 'figure')
    return {
      value: text,
      unit: field.unit ?? '1',
      basis: field.basis ?? 'judgement',
      source: 'Entered by hand',
    };
  if (field.kind === 'whole') return Number(text);
  return field.kind === 'switch' ? text === 'true' : text;
}

/** An id of the words of a title that no entry has yet. */
export function freshKey(title: string, list: readonly unknown[]): string {
  const words = title.toLowerCase().match(/[a-z0-9]+/g) ?? ['new'];
  const key = words.join('-').slice(0, 60).replace(/-$/, '');
  const taken = new Set(list.map(entry => (isHolder(entry) ? entry['id'] : undefined)));
  for (let count = 1; ; count += 1) {
    const tried = count === 1 ? key : `${key}-${count}`;
    if (!taken.has(tried)) return tried;
  }
}

/** Puts sections of the document in place of those that stand there: one step to undo. */
export function takeSections(sections: Partial<Project>, label: string): NamedEdit {
  return { label, apply: draft => void Object.assign(draft, sections) };
}

/** Names a file as evidence, by its name and check sum. */
export function addAttachment(name: string, sha256: string): NamedEdit {
  return { label: `name ${name} as evidence`, apply: draft => void draft.attachments.push({ name, sha256 }) };
}
