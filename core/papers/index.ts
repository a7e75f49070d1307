export type {
  PaperCell,
  PaperChart,
  FigureRole,
  PaperContent,
  PaperName,
  PaperSheet,
  PaperStyle,
  PaperWorkbook,
} from './workbook/model';
export { largeSheet, partsOf } from './workbook/large-sheet';
export { estimateWorkbook } from './workbook/workbook';
export { calendarFile } from './calendar/calendar';
export { csvFiles, type NamedCsv } from './csv/files';
export { csvFile, type CsvCell } from './csv/rows';
export { monthlySpending, monthsOfLines, type LineMonth, type MonthOfSpending } from './monthly-spending';
export { REPORT_READERS, reportHtml, type ReportReader } from './report/report';
export { bidPaper, bidWorkbook, type BidFrame } from './bid/bid-workbook';
export { internalWorkbook } from './bid/internal-workbook';
export { documentHash } from './document-hash';
export {
  cellsOfCsv,
  inputCells,
  otherCells,
  otherVersion,
  readInputs,
  proposeEdits,
  takeBack,
  takeBackPreview,
  withEdits,
  type FileCell,
  type InputCell,
  type InputKind,
  type PaperOrigin,
  type ProposedEdit,
  type ReadInputs,
  type KnownFigure,
  type ShownChange,
  type TakeBackOptions,
  type TakeBackPreview,
  type TakenBack,
  type TypedContent,
  type TypedRow,
  type WholeEvaluation,
} from './take-back';
export { INPUTS, INPUT_HEADS, stampOf, stampText, type PaperStamp } from './workbook/inputs';
export {
  inAllWords,
  decisionAbout,
  type AfterSinkingCost,
  type CountyMoney,
  type Decision,
  type OtherChoice,
  type Recommendation,
  type Trouble,
} from './decision';
export { EVALUATION_FORMAT, EVALUATION_VERSION, evaluationJson } from './evaluation-json';
export { evaluationSchema } from './evaluation-schema';
export { paperStem } from './paper-name';
