import type ExcelJS from 'exceljs';
import type { FigureRole, PaperCell, PaperContent, PaperStyle } from '../../core/papers';

/**
 * The looks of a workbook. Cells that look alike share one object: the writer then knows a look again without
 * comparing it, and a large workbook holds a few dozen looks instead of a million.
 */
export class CellLooks {
  readonly #known = new Map<string, Partial<ExcelJS.Style>>();

  /** @param overFigures a heading or a unit that stands on the side of the figures below it. */
  of(cell: PaperCell, overFigures: boolean): Partial<ExcelJS.Style> {
    const { content, style = 'plain' } = cell;
    const [role, format, side] = [roleOf(content), formatOf(content), sideOf(cell, overFigures)];
    const key = `${style} ${role} ${side} ${format ?? ''}`;
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    const look = lookOf(style, role, side, format);
    this.#known.set(key, look);
    return look;
  }
}

/** On which side of its cell something stands: words keep a gap from the figures to their left. */
type Side = 'usual' | 'right' | 'gap';

function sideOf({ content, column }: PaperCell, overFigures: boolean): Side {
  if (overFigures) return 'right';
  const isWords =
    content.kind === 'text' || (content.kind === 'formula' && typeof content.result === 'string');
  return isWords && column > 1 ? 'gap' : 'usual';
}

const SIDES: Readonly<Record<Side, Partial<ExcelJS.Alignment>>> = {
  usual: {},
  right: { horizontal: 'right' },
  gap: { horizontal: 'left', indent: 1 },
};

function roleOf(content: PaperContent): FigureRole {
  if (content.kind === 'open') return 'input';
  return 'role' in content ? content.role : 'result';
}

const MONEY = '#,##0.00;\u2212#,##0.00';

function formatOf(content: PaperContent): string | undefined {
  switch (content.kind) {
    case 'date':
      return 'yyyy-mm-dd';
    case 'money':
      return MONEY;
    case 'number':
      return numberFormat(content.decimals);
    case 'formula':
      if (content.format === 'text') return undefined;
      return content.format === 'money' ? MONEY : numberFormat(content.decimals);
    case 'text':
    case 'open':
      return undefined;
  }
}

function numberFormat(decimals: number | undefined): string {
  return decimals === undefined
    ? 'General'
    : decimals === 0
      ? '#,##0'
      : `#,##0.${'0'.repeat(Math.min(decimals, 6))}`;
}

function lookOf(
  style: PaperStyle,
  role: FigureRole,
  side: Side,
  numFmt: string | undefined,
): Partial<ExcelJS.Style> {
  const { font, fill, alignment, border } = STYLES[style];
  const filled = fill ?? (role === 'result' ? undefined : FILLS[role]);
  const aligned = side === 'usual' ? alignment : { ...alignment, ...SIDES[side] };
  return {
    font: { name: FACE, size: 10, ...font },
    ...(filled && { fill: filled }),
    ...(aligned && { alignment: aligned }),
    ...(border && { border }),
    ...(numFmt !== undefined && { numFmt }),
    ...(role === 'input' && { protection: { locked: false } }),
  };
}

function solid(argb: string): ExcelJS.Fill {
  return { type: 'pattern', pattern: 'solid', fgColor: { argb } };
}

const FILLS: Readonly<Record<'input' | 'schedule' | 'given', ExcelJS.Fill>> = {
  given: solid('FFF4F5F3'),
  input: solid('FFF3F0E4'),
  schedule: solid('FFE3ECEC'),
};

/** The typeface of every cell: one that each spreadsheet has or has a twin of. */
const FACE = 'Arial';

const STYLES: Readonly<Record<PaperStyle, Partial<ExcelJS.Style>>> = {
  title: { font: { size: 14, bold: true } },
  heading: {
    font: { bold: true },
    alignment: { wrapText: true, vertical: 'bottom' },
    border: { bottom: { style: 'thin' } },
  },
  unit: { font: { italic: true, color: { argb: 'FF5A6464' } } },
  total: { font: { bold: true } },
  note: { font: { italic: true } },
  caution: { font: { bold: true, color: { argb: 'FF8A3A00' } } },
  words: { alignment: { wrapText: true, vertical: 'top' } },
  bar: { fill: solid('FF9FC1C6') },
  'bar-critical': { fill: solid('FF0E5662') },
  plain: {},
};
