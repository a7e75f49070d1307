import { describe, expect, it } from 'vitest';
import { shippedLibrary } from '../../../core/evaluation';
import { importMappingSchema, importTable } from '../../../core/project';
import { readCsv } from '../../../electron/imports/read-table';
import { demoProject } from '../evaluation/demo';

const library = shippedLibrary();
const project = { ...demoProject(), quotes: [] };
const mapping = importMappingSchema.parse({
  id: 'offers',
  title: 'Offers (invented)',
  kind: 'prices',
  columns: { item: 'Item', unit: 'Unit', price: 'Price' },
  constants: { vendor: 'Tern Industrial (invented)', dated: '2026-10-01', validUntil: '2027-01-31' },
});
const priced = (item: string, of = library) =>
  importTable(project, of, readCsv(`Item,Unit,Price\n${item},each,5000\n`), mapping);

describe('a price list', () => {
  it.each(['Tow to the site', 'tow to the site', 'ocean-tow'])('names a work item as %j', written => {
    expect(priced(written).project.quotes.map(quote => quote.covers)).toEqual([
      [{ item: 'ocean-tow', share: '1' }],
    ]);
  });

  it('leaves out a title that no work item has', () => {
    const { project: next, findings } = priced('Keel polish');
    expect(next.quotes).toEqual([]);
    expect(findings.map(one => one.message)).toEqual(['The project has no work item "Keel polish".']);
  });

  it('leaves out a title that two work items have, and names both', () => {
    const tow = library.items.find(one => one.id === 'ocean-tow');
    if (tow === undefined) throw new Error('the library has a tow');
    const { project: next, findings } = priced('Tow to the site', {
      ...library,
      items: [...library.items, { ...tow, id: 'second-tow' }],
    });
    expect(next.quotes).toEqual([]);
    expect(findings.map(one => one.remedy)).toEqual([
      'Write the key of the one that is meant: ocean-tow, second-tow.',
    ]);
  });
});
