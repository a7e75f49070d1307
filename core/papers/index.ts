export type {
  PaperCell,
  PaperContent,
  PaperName,
  PaperSheet,
  PaperStyle,
  PaperWorkbook,
} from './workbook/model';
export { estimateWorkbook } from './workbook/workbook';
