import { expect, test } from 'vitest';
import { evaluate, shippedLibrary } from '../../../core/evaluation';
import { projectSchema } from '../../../core/project/schema';
import { startingProject, type Project } from '../../../core/project';
import { WhyDesk, windowRows, type OpenedName } from '../../../core/views';

const library = shippedLibrary();
const TODAY = '2026-11-24';
const VIEWS = ['materials', 'funding', 'bid', 'review', 'scenarios'] as const satisfies readonly OpenedName[];

function begun(reader: Project['reader'], hullType = 'freighter'): Project {
  return startingProject(library, { reader, hullType, title: 'New', start: TODAY });
}

const missingOf = (project: Project) =>
  windowRows(project, evaluate(project, { today: TODAY, seed: 1 }), 'us', undefined)?.rows.missing.rows.map(
    row => row.id,
  );

test.each(['freighter', 'cutter', 'barge'])(
  'every view of a project begun with a %s can be made, whatever is not aboard',
  hullType => {
    if (!library.hullTypes.some(type => type.id === hullType)) throw new Error(`no hull type ${hullType}`);
    const desk = new WhyDesk(evaluate(begun('grant', hullType), { today: TODAY, seed: 1 }), 'us');
    for (const view of VIEWS) expect(desk.opened(view), view).toBeDefined();
  },
);

test('a new grant budget is told what is missing, and each thing given leaves the list', () => {
  const project = begun('grant');
  expect(missingOf(project)).toEqual([
    'name',
    'length',
    'lightship',
    'depth',
    'clearance',
    'tow',
    'start',
    'sources',
    'survey',
  ]);
  const named = { ...project, vessel: { ...project.vessel, name: 'Corrigan' } };
  expect(missingOf(named)).not.toContain('name');
  const clearanceRequired = { value: '50', unit: 'ft', basis: 'published', source: 'The permit' } as const;
  const permitted = { ...project, site: { ...project.site, clearanceRequired } };
  expect(missingOf(permitted)).not.toContain('clearance');
  const later = { ...project, calendars: { ...project.calendars, start: '2027-04-01' } };
  expect(missingOf(later)).not.toContain('start');
  expect(missingOf({ ...project, statusDate: TODAY })).not.toContain('start');
});

test('the total of a ship of which nothing was entered says so, until her name, length or lightship is', () => {
  const labelOf = (project: Project) =>
    windowRows(project, evaluate(project, { today: TODAY, seed: 1 }), 'us', undefined)?.rows.bottom.find(
      cell => cell.key === 'total',
    )?.label;
  const project = begun('grant');
  const { vessel } = project;
  expect(labelOf(project)).toBe('Total of the starting ship');
  const long = { value: '180', unit: 'ft', basis: 'judgement', source: 'Entered by hand' } as const;
  expect(labelOf({ ...project, vessel: { ...vessel, name: 'Corrigan' } })).toBe('Total');
  expect(labelOf({ ...project, vessel: { ...vessel, length: long } })).toBe('Total');
});

// One foot is 0.3048 m (NIST Special Publication 811, appendix B.8).
test('what the upright screen finds wrong with a ship given in feet is told in feet', () => {
  const project = begun('grant');
  const feet = (value: string) =>
    ({ value, unit: 'ft', basis: 'surveyed', source: 'The docking plan' }) as const;
  const vessel = { ...project.vessel, length: feet('180'), depth: feet('5'), draughtLight: feet('9') };
  const { findings } = evaluate({ ...project, vessel }, { today: TODAY, seed: 1 });
  expect(findings.map(one => one.message)).toContain(
    'The draught of 9 ft is not below the depth of 5 ft: the deck would be under water.',
  );
});

test('a bid is asked for its own wages and mark-ups, a comparison for what counts and for the vote', () => {
  expect(missingOf(begun('bid'))).toEqual(expect.arrayContaining(['survey', 'wages', 'mark-ups', 'quotes']));
  expect(missingOf(begun('comparison'))).toEqual(expect.arrayContaining(['last-date', 'weights', 'vote']));
});

test('a funding section begins with one press: it fits the document, and its form is made once the period is given', () => {
  const project = begun('grant');
  const opened = (of: Project) =>
    new WhyDesk(evaluate(of, { today: TODAY, seed: 1 }), 'us').opened('funding');
  const { begin } = opened(project) ?? {};
  if (begin === undefined) throw new Error('there is nothing to begin with');
  const begunWith = projectSchema.parse({ ...project, funding: begin });
  expect(missingOf(begunWith)).toEqual(expect.arrayContaining(['share', 'period']));
  expect(opened(begunWith)?.missing).not.toEqual([]);
  const shareOf = (of: Project) =>
    opened(of)?.terms.find(table => table.id === 'source-terms')?.rows[0]?.cells['share']?.edit;
  expect(shareOf(begunWith)).toMatchObject({ value: '0.75', begins: true });
  expect(opened(begunWith)?.contracts.rows.length).toBe(1);
  const [grant, ...others] = begin.sources;
  const dated = { ...grant, period: { start: TODAY, finish: '2029-12-31' } };
  const given = projectSchema.parse({ ...project, funding: { ...begin, sources: [dated, ...others] } });
  expect(opened(given)?.awards.map(award => award.form)).toEqual(['SF-424A']);
  expect(opened(given)?.begin).toBeUndefined();
});

test('the first day of a grant just begun becomes its award date, until the award has one of its own', () => {
  const project = begun('grant');
  const rowsOf = (of: Project) =>
    new WhyDesk(evaluate(of, { today: TODAY, seed: 1 }), 'us').opened('funding');
  const { begin } = rowsOf(project) ?? {};
  if (begin === undefined) throw new Error('there is nothing to begin with');
  const firstDayOf = (funding: typeof begin) =>
    rowsOf(projectSchema.parse({ ...project, funding }))
      ?.terms.find(table => table.id === 'source-terms')
      ?.rows.map(row => row.cells['start']?.edit?.takesAlong);
  expect(firstDayOf(begin)).toEqual(['/funding/awardDate', undefined]);
  expect(firstDayOf({ ...begin, awardDate: '2027-02-15' })).toEqual([undefined, undefined]);
});

test('the items of a bid begin with the headings of the work, and price the same; then more can be added', () => {
  const project = begun('bid');
  const bidOf = (of: Project) => {
    const found = new WhyDesk(evaluate(of, { today: TODAY, seed: 1 }), 'us').opened('bid');
    if (found === undefined) throw new Error('there is a bid');
    return found;
  };
  const before = bidOf(project);
  const { begin } = before;
  if (begin === undefined) throw new Error('there is something to begin with');
  expect([before.items.rows.length, before.items.add]).toEqual([0, undefined]);
  const withItems = { ...project, bid: begin };
  expect(projectSchema.safeParse(JSON.parse(JSON.stringify(withItems))).success).toBe(true);
  const after = bidOf(withItems);
  expect(after.begin).toBeUndefined();
  expect(after.items.rows.map(row => row.cells['title']?.text)).toEqual(
    begin.items.map(({ title }) => title),
  );
  expect(after.sheet.rows).toEqual(before.sheet.rows);
  expect(after.findings).toEqual(before.findings);
  expect(after.items.add?.at).toBe('/bid/items');

  // A line of its own leaves its heading and is named by its title.
  const line = library.items.find(item => item.contract && item.bidItem === begin.items[0]?.title);
  if (line === undefined) throw new Error('the first heading has work');
  const own = {
    id: 'own',
    title: 'Apart',
    unit: 'lump sum',
    headings: [],
    lines: [line.id],
    unitPriced: false,
  };
  const apart = bidOf({ ...project, bid: { ...begin, items: [...begin.items, own] } });
  expect(apart.items.rows.at(-1)?.cells['headings']?.text).toBe(line.title);
  const amounts = (rows: typeof apart.sheet.rows) => rows.map(row => row.cells['amount']?.text);
  expect(amounts(apart.sheet.rows).at(-1)).toBe(amounts(after.sheet.rows).at(-1));
});
