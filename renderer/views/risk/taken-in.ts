import type { LibraryEvent } from '../../../core/views';
import type { NamedEdit } from '../../edits/edits';

/** Takes an event of the library into the project’s register, where its chance and impact can be changed. */
export function takenIn({ title, entry }: LibraryEvent, emptySection: object): NamedEdit {
  return {
    label: `take in ${title}`,
    apply: draft => {
      if (draft.risk === undefined) Object.assign(draft, { risk: structuredClone(emptySection) });
      const register: unknown[] | undefined = draft.risk?.register;
      register?.push(structuredClone(entry));
    },
  };
}
