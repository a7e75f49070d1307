import { formSections, type Award, type FormSection } from '../../funding';
import { fromCents } from '../../money';
import { letterOf } from '../../sheet';
import { centsCell, headingRow, moneyFormula, text } from './cells';
import { inOrder } from './rows';
import type { PaperCell, PaperSheet } from './model';

/** Each form as it is filled in, section by section, to the cent. Sums are live; the other amounts are values. */
export function formSectionsSheet(awards: readonly Award[]): PaperSheet {
  const cells: PaperCell[] = [
    text(1, 1, 'The forms, section by section, US dollars', 'title'),
    text(2, 1, 'Amounts come from the program; sums are live. The forms ask for whole dollars.', 'note'),
  ];
  let next = 4;
  let columns = 0;
  for (const { form, source } of awards) {
    cells.push(text(next, 1, `${form.kind}: ${source.title}`, 'total'));
    next += 1;
    for (const section of formSections(form)) {
      cells.push(...sectionCells(section, next));
      next += section.lines.length + 2;
      columns = Math.max(columns, section.columns.length);
    }
  }
  return {
    name: 'Form sections',
    cells,
    widths: [60, ...Array.from({ length: columns }, () => 20)],
    headingRows: 2,
    landscape: columns > 3,
  };
}

function sectionCells({ title, columns, lines }: FormSection, top: number): PaperCell[] {
  return [
    ...headingRow(top, [title, ...columns]),
    ...inOrder(lines, top + 1, (line, row) => [
      text(row, 1, line.title, line.sums === undefined ? undefined : 'total'),
      ...line.cents.map((cents, place) => {
        const column = place + 2;
        if (line.sums === undefined) return centsCell(row, column, cents);
        const letters = letterOf(column);
        const added = line.sums.map(one => `${one.sign < 0 ? '-' : '+'}${letters}${top + 1 + one.line}`);
        return moneyFormula(
          row,
          column,
          `ROUND(${added.join('').replace(/^\+/, '')},2)`,
          fromCents(cents),
          'total',
        );
      }),
    ]),
  ];
}
