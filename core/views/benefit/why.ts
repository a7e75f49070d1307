import { lowerFirst, sourceWithYear } from '../../base';
import {
  CORROSION_IDS,
  corrosionOf,
  ENDS,
  type BenefitFigures,
  type BenefitInput,
  type End,
} from '../../benefit';
import { shippedBookRules } from '../../evaluation';
import type { EstimateContext } from '../context';
import { printed, shortNumber } from '../number-text';
import type { Shown, WhyRows } from '../rows';
import { sumRows } from '../why-sums';
import { dutyWhy, yearsOf } from './duty-why';
import { benefitId, benefitOf } from './names';
import { HERE, money, number, row, SAID, told } from './told';
import { ratioText } from './view';

const END_WORDS: Readonly<Record<End, string>> = {
  low: 'all figures low',
  likely: 'the likely figures',
  high: 'all figures high',
};

interface Asked {
  readonly id: string;
  readonly end: End;
  readonly figures: BenefitFigures;
  readonly input: BenefitInput;
  readonly context: EstimateContext;
}

type Answer = (asked: Asked) => WhyRows;

const ANSWERS: Readonly<Record<string, Answer>> = {
  years: ({ id, end, figures, input }) =>
    told(
      id,
      `Years counted, ${END_WORDS[end]}`,
      { text: String(figures.years), unit: 'years' },
      'The last year that is counted, or the end of the life of the plate where that comes first.',
      [row('=', { text: String(input.horizonYears), unit: 'years' }, 'the last year that is counted')],
    ),
  year: ({ id, end, figures, input }) => {
    const rows = input.uses.map((use, place) =>
      row(
        place === 0 ? '=' : '+',
        money(
          Math.round(use.visitsPerYear[end] * use.valuePerVisit[end] * 100),
          `given:/benefits/uses/${use.id}/visitsPerYear`,
        ),
        `${lowerFirst(use.title)}: ${shortNumber(String(use.visitsPerYear[end]))} visits at $${printed(String(use.valuePerVisit[end]))}`,
      ),
    );
    return told(
      id,
      `Benefit in a year, ${END_WORDS[end]}`,
      money(figures.benefitPerYear),
      'Visits a year times what a visit is worth, over all uses.',
      rows,
    );
  },
  benefit: ({ id, end, figures, input }) =>
    told(
      id,
      `Worth today of all years, ${END_WORDS[end]}`,
      money(figures.presentBenefit),
      `The benefit of each year from year ${input.firstBenefitYear} to year ${figures.years}, brought to today at the discount rate. ${SAID}`,
      [
        row('=', money(figures.benefitPerYear, benefitId(end, 'year')), 'benefit in a year'),
        row('×', number(figures.annuity, 4), 'what a dollar in each of the years is worth today'),
      ],
    ),
  cost: asked => costWhy(asked),
  obligations: ({ id, end, figures, input }) =>
    told(
      id,
      `Worth today of what binds after the sinking, ${END_WORDS[end]}`,
      money(figures.presentObligations),
      'Each obligation by the year in which it falls due, brought to today at the discount rate.',
      input.obligations.length === 0
        ? [row('=', money(0), 'nothing binds after the sinking')]
        : input.obligations.map(one =>
            row(
              '',
              money(one.costPerYear, benefitId('duty', one.id)),
              `a year: ${lowerFirst(one.title)}, ${yearsOf(one)}`,
            ),
          ),
    ),
  both: ({ id, end, figures }) => ({
    ...sumRows(
      id,
      `Cost and what binds after the sinking, ${END_WORDS[end]}`,
      'What the benefit is set against.',
      [
        { cents: figures.cost, words: 'cost up to the sinking', why: benefitId(end, 'cost') },
        {
          cents: figures.presentObligations,
          words: 'worth today of what binds after it',
          why: benefitId(end, 'obligations'),
        },
      ],
    ),
    ...HERE,
  }),
  npv: ({ id, end, figures }) =>
    told(
      id,
      `Net present value, ${END_WORDS[end]}`,
      money(figures.netPresentValue),
      `What all years are worth today less what it costs. ${SAID}`,
      [
        row('=', money(figures.presentBenefit, benefitId(end, 'benefit')), 'worth today of all years'),
        row('−', money(figures.cost, benefitId(end, 'cost')), 'cost up to the sinking'),
        row('−', money(figures.presentObligations, benefitId(end, 'obligations')), 'what binds after it'),
      ],
    ),
  ratio: ({ id, end, figures }) =>
    told(
      id,
      `Benefit over cost, ${END_WORDS[end]}`,
      { text: ratioText(figures) },
      `What all years are worth today over what it costs, obligations after the sinking among it. ${SAID}`,
      [
        row('=', money(figures.presentBenefit, benefitId(end, 'benefit')), 'worth today of all years'),
        row('÷', money(figures.presentCost, benefitId(end, 'both')), 'cost and what binds after the sinking'),
      ],
    ),
  visits: ({ id, end, figures }) =>
    told(
      id,
      `Visits a year at which benefit and cost are equal, ${END_WORDS[end]}`,
      { text: figures.breakEvenVisits === undefined ? 'none' : printed(String(figures.breakEvenVisits)) },
      'What it costs over what one visit a year is worth today, all uses in the shares that are given; rounded up.',
      [
        row('=', money(figures.presentCost, benefitId(end, 'both')), 'cost and what binds after the sinking'),
        row(
          '÷',
          money(figures.benefitPerYear, benefitId(end, 'year')),
          'benefit in a year, a visit’s share of it',
        ),
        row('÷', number(figures.annuity, 4), 'what a dollar in each of the years is worth today'),
      ],
    ),
};

/** The total of the estimate without the lines that fall due after the sinking. */
function costWhy({ id, end, figures, context }: Asked): WhyRows {
  const total = context.summary?.total?.cents ?? figures.cost;
  const parts = [
    { cents: total, words: 'total of the estimate', why: 'sums/total' },
    { cents: figures.cost - total, words: 'lines of the estimate that fall due after the sinking' },
  ];
  return {
    ...sumRows(
      id,
      `Cost up to the sinking, ${END_WORDS[end]}`,
      'The estimate without what falls due after the sinking. It is the same low and high: the spread of the cost stands under Risk.',
      parts,
    ),
    ...HERE,
  };
}

/** The years a plate lasts: its thickness over the fast and the slow corrosion. */
function lifeWhy({ evaluation }: EstimateContext, id: string): WhyRows | undefined {
  const { case: made, input } = benefitOf(evaluation);
  const life = made?.life;
  if (life === undefined || input?.plateThickness === undefined) return undefined;
  const rules = shippedBookRules().benefit;
  const plate: Shown = {
    text: shortNumber(String(input.plateThickness)),
    unit: 'mm',
    why: 'given:/benefits/plateThickness',
  };
  const published = CORROSION_IDS.map(which => rules.corrosion.find(one => one.id === which)).flatMap(one =>
    one === undefined
      ? []
      : [
          row(
            '',
            {
              text: one.figure.value,
              unit: one.figure.unit,
              basis: one.figure.basis,
              source: sourceWithYear(corrosionOf(rules, one.id)),
            },
            lowerFirst(one.title),
          ),
        ],
  );
  return told(
    id,
    'How long the plate lasts',
    { text: `${life.lowYears} to ${life.highYears}`, unit: 'years' },
    'The thickness over the fast end of the corrosion of wreck hulls, and over the slow rate on both faces. Rates of one wreck do not carry over to another.',
    [
      row('=', plate, 'thickness of the plate that matters'),
      row(
        '÷',
        { text: shortNumber(String(life.fastest)), unit: 'mm a year' },
        'lost at the fast end: the low end of the band',
      ),
      row(
        '÷',
        { text: shortNumber(String(life.slowest)), unit: 'mm a year' },
        'lost at the slow end: the high end of the band',
      ),
      ...published,
    ],
  );
}

/** The derivation of a figure of the benefit case by its name; undefined when there is no such figure. */
export function benefitWhy(context: EstimateContext, id: string): WhyRows | undefined {
  if (!id.startsWith('benefit:')) return undefined;
  const [first = '', second = '', third = ''] = id.slice('benefit:'.length).split('|');
  if (first === 'life') return lifeWhy(context, id);
  if (first === 'duty') return dutyWhy(context, id, second, third);
  const end = ENDS.find(one => one === first);
  const { case: made, input } = benefitOf(context.evaluation);
  const figures = end === undefined ? undefined : made?.[end];
  if (end === undefined || figures === undefined || input === undefined) return undefined;
  return ANSWERS[second]?.({ id, end, figures, input, context });
}
