import type { Basis, Figure } from '../../base';
import type { Adjustment, Project, Quote } from '../../project';
import type { InputCell } from './input-cells';

/** A change of one figure of the document, as it will be made when the user agrees. */
export interface ProposedEdit {
  readonly cell: InputCell;
  /** Where it was typed. */
  readonly address: string;
  /** The new amount as decimal text; nothing when the figure is taken out again. */
  readonly value: string | undefined;
  readonly basis: Basis;
  readonly source: string;
  /** The day the paper was made, `YYYY-MM-DD`: a new quote is dated by it. */
  readonly dated: string;
}

/** The project with all changes made. It is another document: nothing of the one given is changed. */
export function withEdits(project: Project, edits: readonly ProposedEdit[]): Project {
  return edits.reduce((changed, edit) => EDITORS[rootOf(edit.cell.key)](changed, edit), project);
}

type Root = 'rates' | 'items' | 'survey' | 'quotes' | 'figures';

function rootOf(key: string): Root {
  const [, root = ''] = key.split('/');
  return root === 'rates' || root === 'items' || root === 'survey' || root === 'quotes' ? root : 'figures';
}

const EDITORS: Readonly<Record<Root, (project: Project, edit: ProposedEdit) => Project>> = {
  rates: withRate,
  items: withItem,
  survey: withMeasured,
  quotes: withQuote,
  figures: withFigure,
};

/** The new figure. Its price year stays: it says at which prices the amount is meant. */
function figureOf({ cell, value = '0', basis, source }: ProposedEdit): Figure {
  return { value, unit: cell.unit, basis, source, ...(cell.year !== undefined && { year: cell.year }) };
}

function withRate(project: Project, edit: ProposedEdit): Project {
  const at = edit.cell.key.replace('/rates/', '');
  const others = project.rates.overrides.filter(row => row.at !== at);
  const overrides = [...others, { at, figure: figureOf(edit) }];
  return { ...project, rates: { ...project.rates, overrides } };
}

function withItem(project: Project, edit: ProposedEdit): Project {
  const [, , item = '', field = ''] = edit.cell.key.split('/');
  const known: Adjustment = project.items.find(row => row.item === item) ?? { item, note: edit.source };
  const { quantity, hoursPerUnit, ...rest } = known;
  const figure = edit.value === undefined ? undefined : figureOf(edit);
  const kept = { quantity, hoursPerUnit, [field]: figure };
  const changed: Adjustment = {
    ...rest,
    ...(kept.quantity && { quantity: kept.quantity }),
    ...(kept.hoursPerUnit && { hoursPerUnit: kept.hoursPerUnit }),
  };
  return { ...project, items: [...project.items.filter(row => row.item !== item), changed] };
}

function withMeasured(project: Project, edit: ProposedEdit): Project {
  const driver = edit.cell.key.replace('/survey/measured/', '');
  const others = project.survey.measured.filter(row => row.driver !== driver);
  const measured = edit.value === undefined ? others : [...others, { driver, figure: figureOf(edit) }];
  return { ...project, survey: { ...project.survey, measured } };
}

/** The quote of one line: the one that is there, or a new one whose vendor and dates the user still has to fill in. */
function withQuote(project: Project, edit: ProposedEdit): Project {
  const [, , item = '', field] = edit.cell.key.split('/');
  const known = project.quotes.find(quote => quote.chosen && quote.covers.some(cover => cover.item === item));
  const quote: Quote = known ?? {
    id: `workbook-${item}`,
    vendor: NOT_NAMED,
    dated: edit.dated,
    validUntil: edit.dated,
    covers: [{ item, share: '0' }],
    exclusions: [],
    amount: { ...figureOf(edit), value: '0', unit: 'USD' },
    chosen: true,
  };
  const changed: Quote =
    field === 'share'
      ? { ...quote, covers: [{ item, share: figureOf(edit).value }] }
      : { ...quote, amount: { ...figureOf(edit), unit: 'USD' } };
  return { ...project, quotes: [...project.quotes.filter(one => one.id !== quote.id), changed] };
}

/** Who gave a quote that was typed into a workbook. */
export const NOT_NAMED = 'Not named yet (typed into a workbook)';

function withFigure(project: Project, edit: ProposedEdit): Project {
  const { key } = edit.cell;
  const figure = figureOf(edit);
  const tank = /^\/vessel\/tanks\/([^/]+)\/capacity$/.exec(key)?.[1];
  if (tank !== undefined) {
    const tanks = project.vessel.tanks.map(row => (row.id === tank ? { ...row, capacity: figure } : row));
    return { ...project, vessel: { ...project.vessel, tanks } };
  }
  if (key === '/site/towDistance') return { ...project, site: { ...project.site, towDistance: figure } };
  if (key === '/site/yardDistance') return { ...project, site: { ...project.site, yardDistance: figure } };
  return { ...project, contingency: { ...project.contingency, share: figure } };
}
