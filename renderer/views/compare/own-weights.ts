import type { NamedEdit } from '../../edits/edits';

/** Writes the weights as they stand into the document, where the board can change each of them. */
export function ownWeights(
  usual: readonly { readonly criterion: string; readonly weight: string }[],
): NamedEdit {
  return {
    label: 'set the board’s own weights',
    apply: draft => {
      const weights = usual.map(one => ({ ...one }));
      Object.assign(draft, { decision: { ...draft.decision, weights } });
    },
  };
}
