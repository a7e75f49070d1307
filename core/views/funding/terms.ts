import type { Figure } from '../../base';
import { FORM_KINDS } from '../../funding';
import type { Funding, Project } from '../../project';
import type { EstimateContext } from '../context';
import { awardTerms } from './award-terms';
import { notAllowableTable } from './not-allowable';
import { aligned, editCell, REMOVE_COLUMN, removeCell, switchCell } from '../cells';
import type { Measures } from '../measures';
import { inHundred } from '../risk/words';
import { optionalFigure, termRow, termTable } from '../term-rows';
import type { Addition, Column, Edit, Row, Shown, TableRows } from '../rows';

const choicesOf = (ids: readonly string[]) => ids.map(id => ({ id, title: id }));
const KINDS = choicesOf(['federal', 'state', 'applicant', 'other']);
const FORMS = choicesOf([...FORM_KINDS, 'none']);
const SUPPORT = choicesOf(['cash', 'in kind']);
const MODES = choicesOf(['reimbursement', 'advance', 'own']);

const SOURCE_COLUMNS: readonly Column[] = [
  { key: 'title', title: 'Source', kind: 'words' },
  { key: 'kind', title: 'Kind', kind: 'words' },
  { key: 'form', title: 'Form', kind: 'words' },
  { key: 'support', title: 'Gives', kind: 'words' },
  { key: 'share', title: 'Share at most', unit: '0 to 1', kind: 'number' },
  { key: 'cap', title: 'Cap', unit: '$', kind: 'number' },
  { key: 'start', title: 'From', kind: 'words' },
  { key: 'finish', title: 'To', kind: 'words' },
  { key: 'mode', title: 'Pays by', kind: 'words' },
  { key: 'lagMonths', title: 'After', unit: 'months', kind: 'number' },
  REMOVE_COLUMN,
];

/** The sources as the reader decides them. */
function sourceTerms({ calendars }: Project, funding: Funding, measures: Measures): TableRows {
  // A grant is begun with the start of the project as its award date: its first day takes the place of that.
  const isFirstDay = ({ form, period }: Funding['sources'][number]) =>
    form !== 'none' && period === undefined && funding.awardDate === calendars.start;
  const rows = funding.sources.map((source): Row => {
    const at = `/funding/sources/${source.id}`;
    const word = (field: string, value: string, label: string, more: Partial<Edit> = {}): Shown =>
      editCell({ at: `${at}/${field}`, kind: 'text', value, label: `${label} of ${source.title}`, ...more });
    const choice = (field: string, value: string, label: string, choices: Edit['choices']): Shown =>
      word(field, value, label, { kind: 'choice', ...(choices === undefined ? {} : { choices }) });
    return {
      id: source.id,
      kind: 'line',
      cells: {
        title: word('title', source.title, 'Name'),
        kind: choice('kind', source.kind, 'Kind', KINDS),
        form: choice('form', source.form, 'Form', FORMS),
        support: choice('support', source.support, 'Support', SUPPORT),
        share: optionalFigure(`${at}/share`, `Share of ${source.title}`, source.share, '1', measures),
        cap: optionalFigure(`${at}/cap`, `Cap of ${source.title}`, source.cap, 'USD', measures),
        start: word('period/start', source.period?.start ?? '', 'First day', {
          kind: 'date',
          pair: 'finish',
          ...(isFirstDay(source) ? { takesAlong: '/funding/awardDate' } : {}),
        }),
        finish: word('period/finish', source.period?.finish ?? '', 'Last day', {
          kind: 'date',
          pair: 'start',
        }),
        mode: choice('mode', source.mode, 'Way of paying', MODES),
        lagMonths: word('lagMonths', String(source.lagMonths), 'Months until it pays', { kind: 'whole' }),
        remove: removeCell(at, `the source ${source.title}`),
      },
    };
  });
  return {
    id: 'source-terms',
    caption: 'Sources of funding',
    columns: SOURCE_COLUMNS,
    rows: aligned(SOURCE_COLUMNS, rows),
    add: ADD_SOURCE,
  };
}

const ADD_SOURCE: Addition = {
  at: '/funding/sources',
  what: 'a source',
  idFrom: 'title',
  entry: { stageCaps: [], preAwardApproved: false },
  fields: [
    { path: 'title', kind: 'text', label: 'Name' },
    { path: 'kind', kind: 'choice', label: 'Kind', choices: KINDS, value: 'applicant' },
    { path: 'form', kind: 'choice', label: 'Form', choices: FORMS, value: 'none' },
    { path: 'support', kind: 'choice', label: 'Gives', choices: SUPPORT },
    { path: 'share', kind: 'figure', label: 'Share at most, 0 to 1', unit: '1', optional: true },
    { path: 'cap', kind: 'figure', label: 'Cap, $', unit: 'USD', optional: true },
    { path: 'mode', kind: 'choice', label: 'Pays by', choices: MODES, value: 'own' },
    { path: 'lagMonths', kind: 'whole', label: 'After months', value: '0' },
  ],
};

const FLAGS = [
  ['byAcceptedMethod', 'Worked out by an accepted method'],
  ['documented', 'Written down'],
  ['acceptedByAgency', 'Accepted by the agency'],
  ['reserve', 'A reserve for what cannot be foreseen'],
] as const;

/** The confidence a contingency by the runs begins with, and those that can be chosen. */
const USUAL_CONFIDENCE = '0.8';
const CONFIDENCES = ['0.5', '0.6', '0.7', USUAL_CONFIDENCE, '0.9', '0.95'];

/** The share of the runs that the budget is to hold in; running the trials sets the amount. */
function confidenceRow(value: string): Row {
  const offered = CONFIDENCES.includes(value) ? CONFIDENCES : [value, ...CONFIDENCES];
  return termRow(
    'confidence',
    'Confidence; the trials under Risk set the amount',
    editCell({
      at: '/contingency/confidence',
      kind: 'choice',
      value,
      label: 'Confidence of the contingency',
      choices: offered.map(id => ({
        id,
        title: id === '' ? 'to be chosen' : `${inHundred(Number(id))} in 100`,
      })),
    }),
    'of the runs',
  );
}

function shareRow(share: Figure | undefined, measures: Measures): Row {
  return termRow(
    'share',
    'Share of the total',
    optionalFigure('/contingency/share', 'Contingency, share of the total', share, '1', measures),
    'of the total',
  );
}

/** The contingency and how it stands with the agency. */
export function contingencyTerms(project: Project, measures: Measures): TableRows {
  const { contingency, funding } = project;
  const isByRuns = contingency.policy === 'confidence';
  const rows: Row[] = [
    termRow(
      'policy',
      'Contingency is set by',
      editCell({
        at: '/contingency',
        kind: 'choice',
        value: contingency.policy,
        label: 'How the contingency is set',
        choices: [
          { id: 'percentage', title: 'a share of the total', puts: { policy: 'percentage' } },
          {
            id: 'confidence',
            title: 'a confidence of the simulation',
            puts: { policy: 'confidence', confidence: USUAL_CONFIDENCE },
          },
        ],
      }),
    ),
    isByRuns ? confidenceRow(contingency.confidence ?? '') : shareRow(contingency.share, measures),
    ...(funding === undefined
      ? []
      : FLAGS.map(([field, title]) =>
          termRow(
            field,
            title,
            switchCell(`/funding/contingency/${field}`, title, funding.contingency[field]),
          ),
        )),
  ];
  return termTable('contingency-terms', 'Contingency', rows);
}

/** Everything the reader decides of the funding. */
export function fundingTerms(context: EstimateContext): readonly TableRows[] {
  const { evaluation, measures } = context;
  const { project } = evaluation;
  const { funding } = project;
  const contingency = contingencyTerms(project, measures);
  return funding === undefined
    ? [contingency]
    : [
        sourceTerms(project, funding, measures),
        awardTerms(funding, measures),
        notAllowableTable(context, funding),
        contingency,
      ];
}
