import { differenceTable, type ComparedValue, type Comparison } from '../../scenario';
import { words } from '../cells';
import { inMeasures, unitWords, type Measures } from '../measures';
import { decimalsFor, shownNumber } from '../number-text';
import { dateWords } from '../schedule-axis';
import { perCent, bareDollars } from '../risk/words';
import { roundedDollars } from '../whole-dollars';
import type { Column, Row, Shown, TableRows } from '../rows';

/** What differs between the scenarios and nothing else: first what was chosen, then what follows. */
export function differencesTable({ evaluations }: Comparison, measures: Measures): TableRows {
  const rows = differenceTable(evaluations);
  const columns: Column[] = [
    { key: 'what', title: 'What', kind: 'words' },
    ...evaluations.map(({ scenario, letter }): Column => ({
      key: scenario.id,
      title: letter,
      kind: 'words',
    })),
  ];
  const group = (id: 'input' | 'result', title: string): Row[] => {
    const own = rows.filter(row => row.group === id);
    if (own.length === 0) return [];
    return [
      { id, kind: 'group', cells: { what: words(title) } },
      ...own.map((row): Row => ({
        id: row.key,
        kind: 'line',
        under: id,
        cells: {
          what: words(row.title),
          ...Object.fromEntries(
            evaluations.map(({ scenario }, at) => [scenario.id, shownValue(row.values[at], measures)]),
          ),
        },
      })),
    ];
  };
  return {
    id: 'differences',
    caption: 'What differs',
    columns,
    rows: [...group('input', 'What was chosen'), ...group('result', 'What follows')],
  };
}

function shownValue(value: ComparedValue | undefined, measures: Measures): Shown {
  switch (value?.kind) {
    case 'money':
      return words(`$${bareDollars(roundedDollars(value.amount.cents))}`);
    case 'number': {
      const shown = inMeasures(String(value.value), value.unit, measures);
      const text = shownNumber(shown.value, Math.min(2, decimalsFor(shown.value)));
      return words(`${text} ${unitWords(shown.unit)}`.trim());
    }
    case 'share':
      return words(`${perCent(value.value)} %`);
    case 'date':
      return words(dateWords(value.iso));
    case 'words':
      return words(value.words);
    default:
      return { text: 'not known, see Review', absent: true };
  }
}
