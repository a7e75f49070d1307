export { importLaboratory, type LaboratoryRow } from './laboratory';
export {
  importPrices,
  importTanks,
  importWages,
  importWeights,
  type Imported,
  type PriceRow,
} from './figures';
export {
  IMPORT_FIELDS,
  IMPORT_KINDS,
  importMappingSchema,
  type ImportKind,
  type ImportMapping,
} from './mapping';
export { mapTable, type MappedRow, type MappedTable, type TextTable } from './table';
export { importTable, type ImportPreview } from './apply';
export { type ImportChange } from './merge';
export { suggestedMapping } from './suggest';
