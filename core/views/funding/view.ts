import { lowerFirst, type Finding } from '../../base';
import { mostCarried, type CashView } from '../../cash-flow';
import type { GrantView } from '../../evaluation';
import { NOT_FOUND, type CountyCost } from '../../funding';
import type { EstimateContext } from '../context';
import { monthWords } from '../../calendar';
import { findingWords } from '../finding-words';
import { dollars } from '../number-text';
import type { Sentence } from '../rows';
import { beginFunding } from './begin';
import { cashPicture, cashTable } from './cash';
import { formTable } from './form-table';
import { grantOf } from './grant-of';
import { grantId } from './names';
import { roundedDollars, wholeDollars } from '../whole-dollars';
import type { FundingView } from './rows';
import { sectionTables } from './sections';
import { besideTable, contractTable, reconciliationTable, sourceTable } from './sources';
import { fundingTerms } from './terms';
import { tieOutTable } from './tie-out-table';

/** The grant budget: forms by source, every line tied out, and the cash gap. */
export function fundingView(context: EstimateContext): FundingView {
  const { funding } = context.evaluation.project;
  const view = grantOf(context.evaluation);
  const { book, cash } = view;
  const isWithheld = (one: Finding) => funding !== undefined && book === undefined && one.weight === 'blocks';
  return {
    sentence: sentence(view),
    missing: view.findings.filter(isWithheld).map(findingWords),
    begin: funding === undefined ? beginFunding(context.evaluation.project) : undefined,
    awards: (book?.awards ?? []).map(award => ({
      id: award.source.id,
      title: award.source.title,
      form: award.form.kind,
      table: formTable(award),
      sections: sectionTables(award),
      tieOut: tieOutTable(award),
    })),
    sources: sourceTable(book, funding),
    reconciliations:
      book === undefined || cash === undefined
        ? []
        : [book.reconciliation, cash.cash.reconciliation].map(reconciliationTable),
    cash: cashPicture(cash),
    cashTable: cashTable(cash),
    contracts: contractTable(view, funding),
    beside: besideTable(cash),
    terms: fundingTerms(context),
    findings: funding === undefined ? [] : view.findings.filter(one => !isWithheld(one)).map(findingWords),
  };
}

function sentence({ book, cash }: GrantView): Sentence {
  if (book === undefined || cash === undefined) return ['There is no grant budget yet.'];
  return [...lent(cash.cash.view), ' ', ...inAll(cash.cash.county)];
}

/** What the county lends and has out. */
function lent(view: CashView): Sentence {
  const most = mostCarried(view);
  const out = (from: string): Sentence =>
    most === undefined
      ? []
      : [
          from,
          { text: dollars(most.amount), why: grantId('cash', most.month, 'carried') },
          ` out at most, at the end of ${monthWords(most.month)}`,
        ];
  const { peak } = view;
  if (peak === undefined)
    return [
      'The sources pay for it as it is spent; the county lends nothing beyond its own share',
      ...out('. It has '),
      '.',
    ];
  return [
    `At the end of ${monthWords(peak.month)} the county lends `,
    { text: dollars(peak.amount), why: grantId('cash', peak.month, 'gap') },
    ' beyond its own share',
    ...out('; it has '),
    '.',
  ];
}

/** What the county pays in all: its share, what stands outside the forms, and what no source bears yet. */
function inAll({ total, share, unfunded, outside, outsideSteps }: CountyCost): Sentence {
  const [shareShown = 0, unfundedShown = 0, outsideShown = 0] = wholeDollars(
    [share, unfunded, outside],
    roundedDollars(total),
  );
  const steps = outsideSteps.map(({ title }) => lowerFirst(title)).join(', ');
  const shown = (whole: number, ...why: readonly string[]) => ({
    text: dollars(whole * 100),
    why: grantId(...why),
  });
  const beside: Sentence[] = [
    ...(outside === 0
      ? []
      : [
          [
            'what nobody else bears, ',
            shown(outsideShown, 'county', 'outside'),
            ...outsideWords(steps, unfunded !== 0),
          ],
        ]),
    ...(unfunded === 0 ? [] : [[shown(unfundedShown, 'source', NOT_FOUND), ' that no source bears yet']]),
  ];
  return [
    'The county pays in all ',
    { text: dollars(total), why: grantId('county', 'total') },
    ...(beside.length === 0 ? [] : [': its share of the forms, ', shown(shareShown, 'county', 'share')]),
    ...beside.flatMap((one, place) => [place === beside.length - 1 ? ', and ' : ', ', ...one]),
    '.',
  ];
}

/** The steps that leave cost outside the forms; in brackets where more of the sentence follows. */
function outsideWords(steps: string, goesOn: boolean): readonly string[] {
  if (steps === '') return [];
  return [goesOn ? ` (${steps})` : `: ${steps}`];
}
