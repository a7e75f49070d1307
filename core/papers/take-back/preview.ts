import { at } from '../../base';
import type { Money } from '../../money';
import { dollarsAndCents, numberWords } from '../report/words';
import { unitShown } from '../unit-shown';
import type { TakenBack } from './take-back';

/** A figure of the document as it stands, with its name for its derivation. */
export interface KnownFigure {
  readonly text: string;
  readonly why?: string;
}

/** One change as a reader sees it before it is made: all words. */
export interface ShownChange {
  /** Where it was typed. */
  readonly cell: string;
  readonly title: string;
  readonly before: KnownFigure;
  readonly after: string;
  readonly unit: string;
  readonly basis: string;
  readonly source: string;
}

/** What a paper that came back would change, in words for a reader; nothing is changed by making it. */
export interface TakeBackPreview {
  /** The scenario the paper is of, by id: the figures as they stand are derived in it. */
  readonly scenario: string;
  readonly summary: string;
  readonly changes: readonly ShownChange[];
  /** What the changes come to: total and finish, before and after. */
  readonly results: readonly {
    readonly title: string;
    readonly before: KnownFigure;
    readonly after: string;
  }[];
}

const WORKED_OUT = 'worked out';

/** The preview of what was taken back. @param scenario the one the paper is of. */
export function takeBackPreview(
  { edits, totals, finish }: Pick<TakenBack, 'edits' | 'totals' | 'finish'>,
  scenario: { readonly id: string; readonly title: string },
): TakeBackPreview {
  const total = { text: dollars(totals.before), why: 'sums/total' };
  return {
    scenario: scenario.id,
    summary: summaryOf(edits.length, scenario.title),
    changes: edits.map(({ cell, address, value, basis, source }) => ({
      cell: address,
      title: cell.title,
      before: { text: readable(cell.value), why: at(cell.figures, 0) },
      after: readable(value),
      unit: unitShown(cell.unit).replace(/^USD/, '$').replace('/', ' per ').replace(' per each', ' each'),
      basis,
      source,
    })),
    results: [
      { title: 'Total', before: total, after: dollars(totals.after) },
      {
        title: 'Total at the dates of the paper',
        before: total,
        after: dollars(totals.atSameDates),
      },
      {
        title: 'Finish',
        before: { text: finish.before ?? 'none', why: 'schedule:finish' },
        after: finish.after ?? 'none',
      },
    ],
  };
}

function summaryOf(count: number, scenario: string): string {
  if (count === 0) return `The paper of scenario ${scenario} asks for no change.`;
  const changes = count === 1 ? '1 change' : `${count} changes`;
  return `The paper of scenario ${scenario} asks for ${changes}. They hold in all scenarios.`;
}

/** A typed number with its thousands apart. */
function readable(value: string | undefined): string {
  return value === undefined ? WORKED_OUT : numberWords(Number(value));
}

function dollars(amount: Money | undefined): string {
  return amount === undefined ? 'absent' : dollarsAndCents(amount);
}
