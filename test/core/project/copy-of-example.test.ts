import { describe, expect, test } from 'vitest';
import { shippedLibrary } from '../../../core/evaluation';
import { copyForOthers, startingProject, type LeftOutBook, type Project } from '../../../core/project';
import { demoProject } from '../evaluation/demo';

const library = shippedLibrary();
const project = demoProject();
const usd = (value: string) => ({ value, unit: 'USD', basis: 'judgement' as const, source: 'made up' });

function leftOf(document: Project, without: LeftOutBook) {
  return new Map(copyForOthers(document, without, library).leftOut.map(each => [each.place, each]));
}

describe('what a copy leaves out is told by what people call it', () => {
  test('sources and contracts of the funding, uses and obligations of the benefits, events of the register', () => {
    const left = leftOf(project, 'owner');
    const { funding, benefits, risk } = project;
    if (funding === undefined || benefits === undefined || risk === undefined)
      throw new Error('the example has them');
    expect(left.get('/funding')?.names).toEqual(
      expect.arrayContaining(funding.sources.map(({ title }) => title)),
    );
    expect(left.get('/risk')?.names).toEqual(expect.arrayContaining(risk.register.map(({ title }) => title)));
    expect(left.get('/benefits')?.entries).toBe(1);
  });

  test('a section without entries by its parts that are filled in', () => {
    const empty = { register: [], surveys: [], ranges: [], correlations: [] };
    if (project.risk === undefined) throw new Error('the example has risk');
    const left = leftOf({ ...project, risk: { ...project.risk, ...empty } }, 'owner');
    expect(left.get('/risk')?.names.length).toBeGreaterThan(0);
    for (const part of ['Register', 'Surveys', 'Ranges', 'Correlations'])
      expect(left.get('/risk')?.names).not.toContain(part);
    expect(leftOf({ ...project, decision: { weights: [] } }, 'bid').get('/decision')?.named).toBe(
      'all of it',
    );
  });

  test.each<LeftOutBook>(['bid', 'owner'])(
    'without the book of the %s every place has words of its own, never a name of the format',
    without => {
      const decision = { weights: [], chosen: project.scenarios[0]?.id ?? 'base' };
      const whole: Project = {
        ...project,
        decision,
        upright: project.upright ?? {},
        rates: { ...project.rates, overrides: [{ at: 'locationFactor', figure: usd('1') }] },
      };
      const left = leftOf(whole, without);
      expect(left.get('/decision')?.words).toBe('What the board weighs and has chosen');
      expect(left.get('/decision')?.named).toBe('Chosen');
      for (const { place, words } of left.values()) {
        expect(words, place).toMatch(/^[A-Z][a-z]+/);
        expect(words, place).toContain(' ');
      }
      expect(left.get('/rates/overrides')?.named).toBe('Location factor');
    },
  );

  test('a document in which nothing was entered leaves out its contingency alone, and that for the bidders', () => {
    const start = startingProject(library, {
      reader: 'grant',
      hullType: 'freighter',
      title: 'New',
      start: '2027-01-04',
    });
    expect([...leftOf(start, 'bid').values()]).toEqual([]);
    expect([...leftOf(start, 'owner').keys()]).toEqual(['/contingency']);
    expect(copyForOthers(start, 'bid', library).project).toEqual(start);
  });

  test('notes and changes of scenarios about what stays behind stay behind with it', () => {
    const document: Project = {
      ...project,
      notes: [
        { at: '/vessel/name', text: 'about the ship' },
        { at: '/rates/overrides/locationFactor', text: 'about a rate' },
        { at: '/rates/priceDate', text: 'about the price date' },
        { at: '/contingency/share', text: 'about the contingency' },
      ],
      scenarios: [
        {
          id: 'only',
          title: 'Only',
          changes: [
            { at: '/contingency/policy', to: 'percentage', note: 'a word on it' },
            { at: '/items/ocean-tow/notBefore', to: '2028-01-01' },
            { at: '/items/ocean-tow', to: { item: 'ocean-tow' } },
          ],
        },
      ],
    };
    const bid = copyForOthers(document, 'bid', library).project;
    expect(bid.notes.map(({ text }) => text)).toEqual([
      'about the ship',
      'about the price date',
      'about the contingency',
    ]);
    expect(bid.scenarios[0]?.changes.map(({ at }) => at)).toEqual([
      '/contingency/policy',
      '/items/ocean-tow/notBefore',
    ]);
    expect(leftOf(document, 'bid').get('/notes')?.names).toEqual(['Overrides, location factor']);
    const owner = copyForOthers(document, 'owner', library).project;
    expect(owner.notes).toEqual([]);
    expect(owner.scenarios[0]?.changes).toEqual([]);
  });
});
