import type { Finding } from '../base';
import { sumCents } from './cents';
import { ELEMENTS, type EstimateLine } from './estimate-lines';
import { dollars } from './dollars';

/**
 * Whether the lines are fit to be put into books: unique ids, elements and months that add up to the total,
 * and a fringe part no larger than the labour it is part of.
 */
export function checkLines(lines: readonly EstimateLine[]): Finding[] {
  const repeated = lines.filter((line, index) => lines.findIndex(other => other.id === line.id) !== index);
  return [
    ...repeated.map(line =>
      blocked('books/line-twice', line, `the line id ${line.id} stands twice`, 'give each line its own id'),
    ),
    ...lines.flatMap(checkLine),
  ];
}

function checkLine(line: EstimateLine): Finding[] {
  const findings: Finding[] = [];
  const elements = sumCents(ELEMENTS.map(element => line.amounts[element]));
  if (elements !== line.total)
    findings.push(
      blocked(
        'books/line-elements',
        line,
        `the elements of ${line.title} add up to ${dollars(elements)}, its total is ${dollars(line.total)}`,
        'correct the element or the total that is off',
      ),
    );
  const months = sumCents(line.months.map(month => month.amount));
  if (months !== line.total)
    findings.push(
      blocked(
        'books/line-months',
        line,
        `the months of ${line.title} add up to ${dollars(months)}, its total is ${dollars(line.total)}`,
        'spread the whole total over the months of the line',
      ),
    );
  if (line.months.length === 0 && ELEMENTS.some(element => line.amounts[element] !== 0))
    findings.push(
      blocked(
        'books/line-without-month',
        line,
        `${line.title} has no month of spending`,
        'schedule the line',
      ),
    );
  if (line.fringe !== undefined && line.fringe > line.amounts.labour)
    findings.push(
      blocked(
        'books/line-fringe',
        line,
        `the fringe benefits of ${line.title} are more than its labour`,
        'give the fringe part of the labour, not more than the labour',
      ),
    );
  return findings;
}

function blocked(code: string, line: EstimateLine, message: string, remedy: string): Finding {
  const meaning = 'the books would not add up to the estimate, so none is made';
  return { code, weight: 'blocks', place: `/lines/${line.id}`, message, meaning, remedy };
}
