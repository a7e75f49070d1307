import type { Provenance } from '../base';

/** Low, likely and high of an impact. */
export type ThreePoints = readonly [number, number, number];

/**
 * An entry to begin a risk register with. That such things happen is on record, with the source named; how
 * probable and how large they are on this ship is judgement, to be replaced by the user.
 */
export interface StartingEvent {
  readonly id: string;
  readonly title: string;
  readonly happened: Provenance;
  /** 0 to 1, judgement. */
  readonly probability: number;
  /** What it does to cost: a share of the cost of the stage named, judgement. Absent: time only. */
  readonly cost?: { readonly stage: string; readonly share: ThreePoints };
  /** Work days on the first activity of the stage named, judgement. */
  readonly delay?: { readonly stage: string; readonly workDays: ThreePoints };
  readonly owner: string;
  readonly mitigation: string;
}

const onRecord = (source: string, year: number): Provenance => ({ basis: 'published', source, year });

/** The slips of past projects as register entries. Stage ids are those of the estimate. */
export const STARTING_REGISTER: readonly StartingEvent[] = [
  {
    id: 'pcb-found-late',
    title: 'PCB-bearing material found late behind linings',
    happened: onRecord('state park service on a training ship of 473 ft', 2007),
    probability: 0.25,
    cost: { stage: 'clean-up', share: [0.05, 0.12, 0.35] },
    delay: { stage: 'clean-up', workDays: [10, 30, 90] },
    owner: 'environmental consultant',
    mitigation: 'sample behind linings before the bid',
  },
  {
    id: 'asbestos-found-late',
    title: 'Asbestos found that no list showed',
    happened: onRecord('press on a carrier broken up in a British yard', 2010),
    probability: 0.2,
    cost: { stage: 'clean-up', share: [0.03, 0.08, 0.25] },
    delay: { stage: 'clean-up', workDays: [5, 20, 60] },
    owner: 'environmental consultant',
    mitigation: 'intrusive survey of linings and veneers',
  },
  {
    id: 'acceptance-slips',
    title: 'Final inspection and written acceptance slip',
    happened: { basis: 'published', source: 'press on a destroyer of 563 ft' },
    probability: 0.4,
    delay: { stage: 'acceptance', workDays: [5, 20, 60] },
    owner: 'reef coordinator',
    mitigation: 'invite the agency to agreed hold points during clean-up',
  },
  {
    id: 'tow-order',
    title: 'Coast Guard order for the tow: analysis and an extra tug',
    happened: onRecord('local press on a liner of 990 ft', 2024),
    probability: 0.25,
    cost: { stage: 'tow', share: [0.15, 0.4, 1] },
    delay: { stage: 'tow', workDays: [3, 10, 30] },
    owner: 'tow contractor',
    mitigation: 'submit the tow plan early with a structural survey',
  },
  {
    id: 'permit-slips',
    title: 'Permit decision slips',
    happened: onRecord('33 CFR 325.2 sets targets, not limits', 2001),
    probability: 0.35,
    delay: { stage: 'permits', workDays: [10, 30, 120] },
    owner: 'reef coordinator',
    mitigation: 'pre-application meeting; survey of the bottom first',
  },
  {
    id: 'live-bottom',
    title: 'Live bottom found in the permitted area',
    happened: onRecord('county commission minutes on a restoration grant', 2019),
    probability: 0.1,
    delay: { stage: 'permits', workDays: [20, 60, 180] },
    owner: 'reef coordinator',
    mitigation: 'side-scan and diver survey before the application',
  },
  {
    id: 'lien',
    title: 'Lien or funding gap stops the yard',
    happened: { basis: 'from memory', source: 'several projects stopped for unpaid berth or yard bills' },
    probability: 0.1,
    cost: { stage: 'yard', share: [0.05, 0.15, 0.5] },
    delay: { stage: 'yard', workDays: [10, 40, 200] },
    owner: 'county finance',
    mitigation: 'payment bond; cash-flow gap covered before the start',
  },
  {
    id: 'storm-at-berth',
    title: 'Storm at the berth during clean-up',
    happened: { basis: 'from memory', source: 'hurricane seasons in the Gulf and the south-east' },
    probability: 0.15,
    cost: { stage: 'yard', share: [0.05, 0.15, 0.6] },
    delay: { stage: 'yard', workDays: [3, 8, 25] },
    owner: 'contractor',
    mitigation: 'storm moorings; no open hull in the season',
  },
  {
    id: 'first-sinking-fails',
    title: 'She sinks early, or lies on her side, and has to be put right',
    happened: onRecord('press on a landing ship dock of 510 ft', 2002),
    probability: 0.05,
    cost: { stage: 'sinking', share: [0.3, 1, 3] },
    delay: { stage: 'sinking', workDays: [10, 20, 60] },
    owner: 'sinking contractor',
    mitigation: 'independent review of stability and openings by a naval architect',
  },
  {
    id: 'single-bidder',
    title: 'One bidder only, or a supplier withdraws',
    happened: onRecord('state press release on a standby tug', 2006),
    probability: 0.15,
    cost: { stage: 'tow', share: [0.2, 0.6, 1.5] },
    owner: 'procurement',
    mitigation: 'ask for prices outside the hurricane season; wider window',
  },
];
