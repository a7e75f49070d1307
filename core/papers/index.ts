export type {
  PaperCell,
  PaperChart,
  PaperContent,
  PaperName,
  PaperSheet,
  PaperStyle,
  PaperWorkbook,
} from './workbook/model';
export { estimateWorkbook } from './workbook/workbook';
export { calendarFile } from './calendar/calendar';
export { csvFiles, type NamedCsv } from './csv/files';
export { csvFile, type CsvCell } from './csv/rows';
export { monthlySpending, type MonthOfSpending } from './monthly-spending';
export { reportHtml } from './report/report';
export { bidPaper, bidWorkbook, type BidFrame } from './bid/bid-workbook';
export { internalWorkbook } from './bid/internal-workbook';
