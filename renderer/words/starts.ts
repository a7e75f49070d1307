export interface Start {
  readonly id: 'grant' | 'bid' | 'comparison';
  readonly title: string;
  readonly reader: string;
  readonly atHand: readonly string[];
  readonly gives: string;
  readonly action: string;
}

/** The three starting points: what to have at hand, and what comes of it. */
export const STARTS: readonly Start[] = [
  {
    id: 'grant',
    title: 'A grant budget',
    reader: 'For a county reef coordinator',
    atHand: [
      'Ship: type, length, year built',
      'Site: depth and distance by sea',
      'Grant: sources, caps, dates',
    ],
    gives:
      'Object classes by source with a basis for every line, the match, and the cash the county must carry.',
    action: 'Start a grant budget',
  },
  {
    id: 'bid',
    title: 'A bid',
    reader: 'For a contractor',
    atHand: [
      'Survey quantities or a bid list',
      'Crews, rates and your mark-ups',
      'Berth dates and crew limits',
    ],
    gives: 'Hours, a levelled crew plan, bid items with overhead and profit, and a clean bid sheet.',
    action: 'Start a bid',
  },
  {
    id: 'comparison',
    title: 'A comparison',
    reader: 'For a board that must choose',
    atHand: [
      'One project, finished or rough',
      'Two to six ways to prepare it',
      'Money in hand and last date',
    ],
    gives:
      'Cost, finish and upright screen side by side, and what exactly separates one choice from another.',
    action: 'Start a comparison',
  },
];
