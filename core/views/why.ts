import type { Evaluation } from '../evaluation';
import type { EstimateContext } from './context';
import type { Measures } from './measures';
import { benefitWhy } from './benefit/why';
import { bidWhy } from './bid/why';
import { grantWhy } from './funding/why';
import { materialsWhy } from './materials/why';
import { openedRows, type OpenedName, type OpenedRows } from './opened';
import { generatorWhy } from './waste';
import { pastWhy } from './review/why';
import type { WhyRows } from './rows';
import { shownMoney } from './shown-money';
import { givenWhy } from './why-given';
import { openingsWhy } from './why-openings';
import { scheduleWhy } from './why-schedule';
import { sheetRows, wholeWhy, type SheetWhy } from './why-sheet';
import { sumWhy } from './why-sums';
import { uprightWhy } from './why-upright';
import { summaryOf } from './window';

/** Answers for one evaluation what is not asked at every edit: "why this figure?" and the views that are made when opened. */
export class WhyDesk {
  readonly #context: EstimateContext | undefined;
  #whole: SheetWhy | undefined;
  #isWarm = false;

  constructor(evaluation: Evaluation, measures: Measures) {
    const parts = evaluation.estimate;
    this.#context =
      parts === undefined ? undefined : { evaluation, measures, parts, summary: summaryOf(parts) };
  }

  /** Works out beforehand what all answers share. */
  warm(): void {
    if (this.#isWarm || this.#context === undefined) return;
    this.#isWarm = true;
    this.#whole = wholeWhy(this.#context);
  }

  /** The rows of a view that is made when it is opened; undefined when there is nothing to show. */
  opened<N extends OpenedName>(name: N): OpenedRows[N] | undefined {
    const context = this.#context;
    return context === undefined ? undefined : openedRows(name, context, shownMoney(context));
  }

  /** The derivation of a figure by its name; undefined when there is no such figure. */
  answer(id: string): WhyRows | undefined {
    const context = this.#context;
    if (context === undefined) return undefined;
    const direct =
      givenWhy(context, id) ??
      sumWhy(context, id) ??
      scheduleWhy(context, id) ??
      uprightWhy(context, id) ??
      openingsWhy(context, id) ??
      materialsWhy(context, id) ??
      grantWhy(context, id) ??
      bidWhy(context, id) ??
      benefitWhy(context, id) ??
      pastWhy(context, id) ??
      generatorWhy(context, id);
    if (direct !== undefined) return direct;
    this.warm();
    return sheetRows(context, this.#whole, id);
  }
}
