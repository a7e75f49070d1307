import { firstPresent } from '../columns/kernels';
import { asTrials, inTurn } from '../columns/runs';
import { call, type Term } from '../formula/term';
import type { Kind, Run } from '../kind';
import { loosest } from '../looseness';
import { ABSENT } from '../quick/cells';
import { makeStep, requireOneUnit, type Step } from '../step';
import type { SheetUnit } from '../unit';

const record = (count: number): Kind => ({
  operation: 'first present',
  exact: values => values.find(value => value !== undefined),
  quick: (cells, operands, out) => {
    for (const cell of operands) if (cells.stateOf(cell) !== ABSENT) return cells.copy(out, cell);
    return cells.putAbsent(out);
  },
  live: (operands, out) => {
    const [first, ...rest] = operands.map(operand => asTrials(operand, out.length));
    if (first === undefined) return () => undefined;
    return inTurn([
      n => firstPresent(out, first, first, n),
      ...rest.map(
        (b): Run =>
          n =>
            firstPresent(out, out, b, n),
      ),
    ]);
  },
  passes: constants => {
    const first = constants.findIndex(constant => constant === undefined || !Number.isNaN(constant));
    const last = first === constants.length - 1 || constants[first] !== undefined;
    return first >= 0 && (last || constants.slice(first + 1).every(Number.isNaN)) ? first : undefined;
  },
  formula: context =>
    context
      .terms()
      .reduceRight((computed: Term, quote: Term) => call('IF', `ISNUMBER(${quote.text})`, quote, computed)),
  repeats: Array.from({ length: count - 1 }, (_, i) => i),
  shown: values => {
    const taken = values.findIndex(value => value !== undefined);
    return taken < 0 ? values.map((_, i) => i) : [taken];
  },
  words: (...titles) => titles.join(', or without it '),
});

/**
 * The first that is present: a quote in place of the computed figure, a survey in place of an assumption.
 * The one place where absence does not spread. All but the last must be placed.
 */
export function quoted<U extends SheetUnit>(first: Step<U>, ...rest: readonly Step<NoInfer<U>>[]): Step<U> {
  const steps = [first, ...rest];
  requireOneUnit('first present', steps);
  return makeStep(first.unit, record(steps.length), steps, loosest(steps));
}
