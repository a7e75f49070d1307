import { upperFirst } from '../../base';
import { ENDS, PLANNING_FIGURE, type BenefitFigures, type End } from '../../benefit';
import type { Benefits } from '../../project';
import { aligned, words } from '../cells';
import { dollarCell, type EstimateContext } from '../context';
import { findingWords } from '../finding-words';
import { shownNumber } from '../number-text';
import type { Column, Row, Sentence, Shown, TableRows } from '../rows';
import { roundedDollars, wholeDollars } from '../whole-dollars';
import { benefitTerms, obligationTable, useTable, withOwnObligations } from './inputs';
import { benefitId, benefitOf } from './names';
import type { BenefitRows } from './rows';

/** A section to begin with: nobody comes yet, and fifty years are counted from the first. */
const BEGIN: Benefits = { uses: [], horizonYears: 50, firstBenefitYear: 1 };

/** Benefit against cost, the life of the hull, and what binds after the sinking: planning figures, each with its range. */
export function benefitRows(context: EstimateContext): BenefitRows {
  const { evaluation, measures } = context;
  const { benefits } = evaluation.project;
  const view = benefitOf(evaluation);
  const { input, obligations } = view;
  const carried = new Set(obligations?.lineIds);
  const usual = obligations?.beside ?? [];
  const isChangeable = benefits !== undefined && benefits.obligations === undefined && usual.length > 0;
  return {
    sentence: sentence(context),
    missing: benefits === undefined ? [] : view.findings.map(findingWords),
    begin: benefits === undefined ? BEGIN : undefined,
    figures: figureTable(context),
    inputs:
      benefits === undefined
        ? undefined
        : { terms: benefitTerms(benefits, measures), uses: useTable(benefits, measures) },
    life: lifeWords(context),
    obligations: obligationTable(benefits, input?.obligations ?? [], carried, measures),
    own: isChangeable ? withOwnObligations(benefits, usual) : undefined,
  };
}

/** The ratio of benefit over cost as it is told: to hundredths, in words where there is none. */
export function ratioText({ benefitCostRatio }: BenefitFigures): string {
  return benefitCostRatio === undefined ? 'no cost' : shownNumber(benefitCostRatio.toFixed(8), 2);
}

function sentence({ evaluation }: EstimateContext): Sentence {
  const made = benefitOf(evaluation).case;
  const [low, likely, high] = ENDS.map(end => made?.[end]);
  if (low === undefined || likely === undefined || high === undefined)
    return ['What the reef is worth cannot be told yet.'];
  const told = (end: End, figures: BenefitFigures): Shown => ({
    text: ratioText(figures),
    why: benefitId(end, 'ratio'),
  });
  return [
    'Benefit over cost is ',
    told('likely', likely),
    ' at the likely figures, ',
    told('low', low),
    ' with all of them low, ',
    told('high', high),
    ` with all of them high. ${upperFirst(PLANNING_FIGURE)}.`,
  ];
}

const COLUMNS: readonly Column[] = [
  { key: 'title', title: 'Figure', kind: 'words' },
  { key: 'low', title: 'All low', kind: 'number' },
  { key: 'likely', title: 'Likely', kind: 'number' },
  { key: 'high', title: 'All high', kind: 'number' },
  { key: 'unit', title: 'Unit', kind: 'unit' },
];

function figureTable({ evaluation }: EstimateContext): TableRows | undefined {
  const made = benefitOf(evaluation).case;
  if (made?.likely === undefined) return undefined;
  const row = (id: string, title: string, unit: string, of: (figures: BenefitFigures) => Shown): Row => ({
    id,
    kind: id === 'npv' ? 'total' : 'line',
    cells: {
      title: words(title),
      unit: words(unit),
      ...Object.fromEntries(
        ENDS.flatMap(end => {
          const figures = made[end];
          return figures === undefined ? [] : [[end, { ...of(figures), why: benefitId(end, id) }]];
        }),
      ),
    },
  });
  const money = (id: string, title: string, of: (figures: BenefitFigures) => number): Row =>
    row(id, title, '$', figures => dollarCell(of(figures), ''));
  const rows = [
    row('years', 'Years counted', 'years', ({ years }) => words(String(years))),
    money('year', 'Benefit in a year', one => roundedDollars(one.benefitPerYear)),
    money('benefit', 'Worth today of all years', one => roundedDollars(one.presentBenefit)),
    money('cost', 'Cost up to the sinking', one => costsOf(one)[0]),
    money('obligations', 'Worth today of what binds after it', one => costsOf(one)[1]),
    money(
      'npv',
      'Net present value',
      one => roundedDollars(one.presentBenefit) - roundedDollars(one.presentCost),
    ),
    row('ratio', 'Benefit over cost', '', figures => words(ratioText(figures))),
    row('visits', 'Visits a year at which both are equal', 'visits', ({ breakEvenVisits }) =>
      breakEvenVisits === undefined ? words('none') : words(shownNumber(String(breakEvenVisits), 0)),
    ),
  ];
  return {
    id: 'benefit-figures',
    caption: 'Benefit against cost',
    columns: COLUMNS,
    rows: aligned(COLUMNS, rows),
    note: [
      'What divers and anglers gain is counted, not what the county takes in. It is set against the plan’s cost, in every scenario with the same visits.',
    ],
  };
}

/** Cost up to the sinking and what binds after it in whole dollars, adding up to the two together. */
function costsOf({ cost, presentObligations, presentCost }: BenefitFigures): readonly [number, number] {
  const [before = 0, after = 0] = wholeDollars([cost, presentObligations], roundedDollars(presentCost));
  return [before, after];
}

function lifeWords({ evaluation }: EstimateContext): Sentence {
  const made = benefitOf(evaluation).case;
  if (made === undefined) return ['Nothing is worked out while an input is at fault.'];
  const { life } = made;
  if (life === undefined)
    return ['How long the hull lasts is told once the thickness of its plate is given.'];
  return [
    'Plate of that thickness lasts about ',
    { text: `${life.lowYears} to ${life.highYears} years`, why: benefitId('life', 'band') },
    ': a band, never a date.',
  ];
}
