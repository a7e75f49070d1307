import { shareOf, type FormHints } from '../../cash-flow';
import type { Funding } from '../../project';
import type { WorkItem } from '../../work';
import type { EstimateParts } from '../evaluate';
import type { EstimateLine } from '../summary';
import { centsOfFigure } from './grant-input';

/** What a form needs to know of a line: from its work item, from who pays its crew, and from the funding section. */
export function lineHints(
  line: EstimateLine,
  item: WorkItem,
  parts: EstimateParts,
  funding: Funding | undefined,
): FormHints {
  const contractId = contractOf(line, funding);
  const told = funding?.lineFacts?.find(fact => fact.item === line.id);
  const isTravel = told?.travel ?? (!item.contract && item.formLine.objectClass === 'Travel');
  return {
    ...(isTravel && { travel: true }),
    ...(told?.rent === true && { rent: true }),
    ...(told?.unitPrice && { unitCost: centsOfFigure(told.unitPrice) }),
    ...(contractId !== undefined && { contractId }),
    ...(isDonated(line.id, funding) && { inKind: true }),
    ...(hasScrapCredit(line.id, parts) && { scrapCredit: true }),
    ...fringeOf(line, item, parts),
  };
}

/** The contract that names the item, else the one that holds the contract work of its stage. */
function contractOf(line: EstimateLine, funding: Funding | undefined): string | undefined {
  const contracts = funding?.contracts ?? [];
  const named = contracts.find(contract => contract.lines?.includes(line.id));
  const staged = contracts.find(contract => line.contract && contract.stages?.includes(line.stage));
  return (named ?? staged)?.id;
}

function isDonated(lineId: string, funding: Funding | undefined): boolean {
  return (funding?.sources ?? []).some(
    source => source.support === 'in kind' && source.lines?.includes(lineId) === true,
  );
}

function hasScrapCredit(lineId: string, { money }: EstimateParts): boolean {
  if (money?.scrap.scope.index.has(lineId) !== true) return false;
  return (money.result.money(money.scrap.columns.credit, lineId)?.cents ?? 0) !== 0;
}

/** Fringe benefits inside the labour of public staff: wage × burden is burden ÷ (1 + burden) of wage and burden. */
function fringeOf(line: EstimateLine, item: WorkItem, { input }: EstimateParts): { fringe?: number } {
  const { crews, burdens } = input.library.rateBook;
  const isStaff = crews.some(crew => crew.id === item.crew && crew.employer === 'owner');
  const labour = line.elements.labour?.cents ?? 0;
  if (item.contract || !isStaff || labour <= 0) return {};
  const figure = input.overrides.get('burdens/publicStaff') ?? burdens.publicStaff;
  const burden = Number(figure.value);
  return { fringe: shareOf(labour, burden / (1 + burden)) };
}
