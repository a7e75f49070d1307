/** Every trade term and abbreviation that the window uses, in one sentence each. */
const TERMS: readonly { readonly term: string; readonly means: string }[] = [
  { term: 'Activity', means: 'A piece of work that takes time and has a start and a finish.' },
  {
    term: 'Basis',
    means:
      'Where a number comes from: quoted, surveyed, published, common practice, judgement, from memory or invented.',
  },
  { term: 'Berth', means: 'The place at the quay where the ship lies while work goes on.' },
  { term: 'Budget', means: 'The total and the contingency together.' },
  { term: 'Clearance', means: 'The water between the highest point of the ship at rest and the surface.' },
  { term: 'Closure', means: 'A span of days in which work of a kind may not go on.' },
  { term: 'Contingency', means: 'Money kept for what is not yet known, outside the total.' },
  { term: 'Finding', means: 'Something in the data that needs a look, with what it means and what to do.' },
  {
    term: 'GM',
    means: 'The height of the metacentre above the centre of gravity: how strongly a ship rights itself.',
  },
  { term: 'KG', means: 'The height of the centre of gravity above the keel.' },
  { term: 'Lightship', means: 'The mass of the ship with nothing aboard.' },
  { term: 'Long ton', means: '2,240 pounds, 1.016 tonnes: the measure of ships in the United States.' },
  { term: 'nmi', means: 'Nautical mile: 1,852 metres.' },
  { term: 'P50', means: 'The figure that half of all runs stay under.' },
  { term: 'P80', means: 'The figure that eight in ten runs stay under.' },
  {
    term: 'PCB',
    means:
      'Polychlorinated biphenyl: a substance in old cables, gaskets and paint that must come off the ship.',
  },
  { term: 'Production rate', means: 'How many hours of work one unit takes.' },
  {
    term: 'Relationship',
    means: 'What one activity asks of another: to be finished, to have started, with a lag.',
  },
  { term: 'Scenario', means: 'One way to do the job: only what differs from the project is written down.' },
  { term: 'Screening', means: 'A first look that finds trouble early. It is not a naval architect’s study.' },
  {
    term: 'Share not yet checked',
    means: 'The part of the total that rests on judgement, memory or invented figures.',
  },
  { term: 'Short ton', means: '2,000 pounds: the measure of waste and scrap in the United States.' },
  { term: 'Topside', means: 'What stands above the main deck: house, funnel, masts.' },
  {
    term: 'Total',
    means:
      'What the owner pays: contract work at the contractor’s price and the owner’s own cost, without contingency.',
  },
  { term: 'Total float', means: 'How many work days an activity may slip before the finish moves.' },
  { term: 'Upright screen', means: 'A first check whether the ship stays upright while it sinks.' },
  { term: 'Window', means: 'A span of days in which the weather allows the tow and the sinking.' },
  { term: 'Acute hazardous waste', means: 'Waste of which one kilogram a month makes a large generator.' },
  { term: 'Alternate', means: 'A change an owner asks a price for beside the base bid.' },
  { term: 'Allowance', means: 'An amount the owner sets, which every bid carries as it stands.' },
  { term: 'Award', means: 'Money granted under one agreement, with its own form and period.' },
  { term: 'Base bid', means: 'The sum of the items of a bid, without alternates.' },
  {
    term: 'CFR',
    means: 'Code of Federal Regulations: the rules of the federal agencies of the United States.',
  },
  { term: 'CSV', means: 'A table as text, with commas between its cells.' },
  { term: 'Clean-up goal', means: 'What the national guidance wants gone from the ship before it is sunk.' },
  { term: 'EPA', means: 'Environmental Protection Agency of the United States.' },
  { term: 'Episodic event', means: 'A planned time of more waste than usual that counts for no month.' },
  {
    term: 'GAO',
    means: 'Government Accountability Office: it wrote the guides for estimates and schedules.',
  },
  { term: 'gal', means: 'United States gallon: 231 cubic inches, 3.785 litres.' },
  {
    term: 'Generator category',
    means: 'Very small, small or large: how much hazardous waste a site makes in a month.',
  },
  { term: 'Indirect cost', means: 'The county’s own overhead that a grant pays as a share of a base.' },
  { term: 'JSON', means: 'A file of plain text that programs read.' },
  { term: 'Match', means: 'The part of the cost that others than the grant must bear.' },
  { term: 'Narrative', means: 'The sentences of a grant budget that explain each amount.' },
  { term: 'Permeability', means: 'The part of a space that water can fill.' },
  { term: 'ppm', means: 'Parts per million: milligrams in a kilogram.' },
  { term: 'Reporting limit', means: 'The least amount a laboratory can tell from nothing.' },
  { term: 'Retainage', means: 'The part of each payment held back until the work is accepted.' },
  { term: 'SF-424A', means: 'The federal form for budgets without construction.' },
  { term: 'SF-424C', means: 'The federal form for construction budgets.' },
  { term: 'Sounding', means: 'The depth of liquid found in a tank.' },
  { term: 'TBT', means: 'Tributyltin: a poison in old underwater paint.' },
  { term: 'TCLP', means: 'A laboratory test of what leaches from waste.' },
  { term: 'Trip-point', means: 'The amount at which a rule begins to bind.' },
  { term: 'US', means: 'United States.' },
];

/** The terms in the order of the alphabet. */
export const GLOSSARY = TERMS.toSorted((a, b) => a.term.localeCompare(b.term));
