import type { Why, WhyStep } from './why';

/** An explanation as a tree that JSON can print: each step expanded once, later mentions only named. */
export interface WhyTree {
  readonly id: string;
  readonly title: string;
  /** A double; null when absent. */
  readonly value: number | null;
  readonly unit: string;
  readonly operation?: string;
  readonly words?: string;
  readonly settings?: Readonly<Record<string, string | number>>;
  readonly basis?: string;
  readonly source?: string;
  readonly year?: number;
  readonly low?: string;
  readonly high?: string;
  readonly typed?: string;
  readonly inputs?: readonly WhyTree[];
  /** This step is expanded at an earlier mention. */
  readonly seen?: true;
}

/** The explanation as nested steps, the figure outermost; a step already expanded is only named. */
export function whyTree(explanation: Why): WhyTree {
  const seen = new Set<string>();
  const expand = (id: string): WhyTree => {
    const step = explanation.steps.get(id);
    if (step === undefined) return { id, title: id, value: null, unit: '1', seen: true };
    const named = nameOf(step);
    if (seen.has(id)) return { ...named, seen: true };
    seen.add(id);
    return {
      ...named,
      operation: step.operation,
      words: step.words,
      ...(Object.keys(step.settings).length > 0 && { settings: step.settings }),
      ...step.given,
      inputs: step.inputs.map(expand),
    };
  };
  return expand(explanation.root);
}

function nameOf({ id, title, value, unit }: WhyStep) {
  return { id, title, value: value === undefined ? null : Number(value), unit };
}
