import { withId } from '../../base';
import type { Given } from '../../sheet';
import type { WholeEvaluation } from './input-cells';

/** What kind of figure people change in a workbook. */
export type InputKind = 'quantity' | 'rate' | 'quote' | 'survey result' | 'particular';

/** A given where it stands in a sheet. */
export interface PlacedFigure {
  /** Table and column, or block and key: `lines/quote`. */
  readonly column: string;
  readonly rowKey: string | undefined;
  /** The unit of the row in hand. */
  readonly own: string | undefined;
  readonly given: Given | undefined;
}

/** Where a changed figure goes in the document. */
export interface Target {
  readonly key: string;
  readonly kind: InputKind;
  readonly unit: string;
}

/** Rates of the rate book that an override replaces, by their place in it. */
const RATES =
  /^(burdens\/\w+|conditions\/[a-z-]+\/factor|markUps\/[a-z-]+\/share|locationFactor|trades\/[a-z0-9-]+\/wage|equipment\/[a-z0-9-]+\/(rate|mobilisation)|streams\/[a-z0-9-]+\/(unitPrice|containerFee|haulPerContainer|haulPerMetre|manifestPerContainer|profileFee|minimumCharge)|scrap\/[a-z0-9-]+\/(price|freightAndProcessing))$/;
/** Prices of a work item that an override replaces. */
const ITEM_RATES =
  /^work\/[a-z-]+\/[a-z0-9-]+\/(materialPerUnit|subcontractPerUnit|subcontractFixed|feePerUnit|feeFixed)$/;
/** Figures of the ship, the site and the budget that change nothing beside the sheets. */
const PARTICULARS =
  /^\/(site\/(towDistance|yardDistance)|vessel\/tanks\/[a-z0-9-]+\/capacity|contingency\/share)$/;

/** Where a given of the sheets stands in the document, when a change of it can be written there. */
export function targetOf(figure: PlacedFigure, evaluation: WholeEvaluation): Target | undefined {
  const target =
    itemTarget(figure) ??
    surveyTarget(figure, evaluation) ??
    quoteTarget(figure, evaluation) ??
    placedTarget(figure);
  return target === undefined || isSetByScenario(target.key, evaluation) ? undefined : target;
}

function itemTarget({ column, rowKey, own, given }: PlacedFigure): Target | undefined {
  if (rowKey === undefined) return undefined;
  if (column === 'worked/quantity-stated' || column === 'hauled/quantity-stated')
    return { key: `/items/${rowKey}/quantity`, kind: 'quantity', unit: own ?? '1' };
  if (column !== 'worked/hours-per-unit' && column !== 'hauled/hours-per-unit') return undefined;
  if (given === undefined || given.neutral === true) return undefined;
  return { key: `/items/${rowKey}/hoursPerUnit`, kind: 'rate', unit: given.unit };
}

function surveyTarget({ column, rowKey }: PlacedFigure, { library }: WholeEvaluation): Target | undefined {
  if (rowKey === undefined || !/^drivers-\d+\/measured$/.test(column)) return undefined;
  const { unit } = withId(library.drivers, rowKey);
  return { key: `/survey/measured/${rowKey}`, kind: 'survey result', unit };
}

/** The quote of a line. One that covers several lines, or has a price for the unit, stands in the program alone. */
function quoteTarget({ column, rowKey }: PlacedFigure, { project }: WholeEvaluation): Target | undefined {
  if (rowKey === undefined || (column !== 'lines/quote' && column !== 'lines/covered')) return undefined;
  const covering = project.quotes.filter(quote => quote.covers.some(cover => cover.item === rowKey));
  const chosen = covering.filter(quote => quote.chosen);
  const isPlain = chosen.every(quote => quote.covers.length === 1 && quote.amount.unit === 'USD');
  if (chosen.length > 1 || !isPlain) return undefined;
  return column === 'lines/quote'
    ? { key: `/quotes/${rowKey}/amount`, kind: 'quote', unit: 'USD' }
    : { key: `/quotes/${rowKey}/share`, kind: 'quote', unit: '1' };
}

function placedTarget({ given }: PlacedFigure): Target | undefined {
  if (given?.place === undefined || given.neutral === true || given.value === undefined) return undefined;
  const { place, unit } = given;
  if (PARTICULARS.test(place)) return { key: place, kind: 'particular', unit };
  const rate = place
    .replace(/^\/rates\/overrides\//, '')
    .replace(/^templates\/rates\//, '')
    .replace(/^templates\//, '');
  const isRate = rate !== place && (RATES.test(rate) || ITEM_RATES.test(rate));
  return isRate ? { key: `/rates/${rate}`, kind: 'rate', unit } : undefined;
}

/** Whether a change of the scenario stands at, above or below the place: then the scenario holds the figure. */
function isSetByScenario(key: string, { scenario }: WholeEvaluation): boolean {
  const places = [key, key.startsWith('/rates/') ? '/rates/overrides' : key.split('/').slice(0, 3).join('/')];
  return scenario.changes.some(({ at }) =>
    places.some(place => place === at || place.startsWith(`${at}/`) || at.startsWith(`${place}/`)),
  );
}
