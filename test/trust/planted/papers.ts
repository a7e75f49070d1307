import { bugs } from './bug';

/** Comparison, workbook, report, calendar, files to hand over. */
export const paperBugs = bugs(
  [
    'bridge steps are the mean over all orders',
    'core/scenario/averaged-steps.ts',
    'factorial(size) * factorial(count - size - 1)',
    'factorial(size) * factorial(count - size)',
    'test/core/scenario/averaged-steps.test.ts',
    'add up to the difference to the cent',
  ],
  [
    'no text becomes a formula in a CSV file',
    'core/papers/csv/rows.ts',
    "? `'${plain}` : plain;",
    '? plain : plain;',
    'test/core/papers/csv.test.ts',
    'text that starts a formula',
  ],
  [
    'no calendar line has more than 75 octets',
    'core/papers/calendar/content-line.ts',
    'const LONGEST = 75;',
    'const LONGEST = 76;',
    'test/core/papers/calendar.test.ts',
    'no line is longer than 75 octets',
  ],
  [
    'importing a calendar twice makes no second event',
    'core/papers/calendar/calendar.ts',
    '`UID:${activity.id}.${scenario.id}',
    '`UID:${activity.id}.${activity.start}',
    'test/core/papers/calendar.test.ts',
    'a second import replaces',
  ],
  [
    'text that looks like a number is refused with its cell',
    'core/papers/take-back/typed-values.ts',
    "case 'text':\n      return textFault(address, value.text, cell);",
    "case 'text':\n      return value.text;",
    'test/core/papers/take-back.test.ts',
    'text that looks like a number',
  ],
  [
    'every total in bold is a formula',
    'core/papers/workbook/front.ts',
    "moneyFormula(row, 2, name, amount, 'total')",
    "{ row, column: 2, content: { kind: 'number', value: amount?.cents ?? 0 }, style: 'total' }",
    'test/core/papers/workbook.test.ts',
    'every total in bold is a formula',
  ],
  [
    'the same project gives the same bytes',
    'core/papers/calendar/calendar.ts',
    '`DTSTAMP:${basic(today)}T000000Z`',
    '`DTSTAMP:${performance.now()}`',
    'test/core/papers/calendar.test.ts',
    'the same project gives the same bytes',
  ],
  [
    'a scenario that may not be carried out is never recommended',
    'core/scenario/decision-table.ts',
    'one => isPermittable(one) && ',
    'one => ',
    'test/core/papers/decision.test.ts',
    'never recommends a scenario',
  ],
);
