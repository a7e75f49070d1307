import { describe, expect, it } from 'vitest';
import { figureSchema } from '../../core/base';
import { isUnit } from '../../core/units';
import { readLibrary } from '../../core/work';
import { crewsBeyond, danglingReferences, duplicateIds, wrongDriverUnits, wrongItemUnits } from './checks';
import { objectsIn, shipped, templateCopy } from './library';

const figures = [...objectsIn(templateCopy(), 'templates')].flatMap(({ row, object }) =>
  'value' in object && 'unit' in object ? [{ row, figure: figureSchema.parse(object) }] : [],
);

describe('figures of the templates', () => {
  it('number more than a thousand, so that the walk below sees them', () => {
    expect(figures.length).toBeGreaterThan(1000);
  });

  it('each name a known unit, a basis, a source in words and a year', () => {
    const faults = figures
      .filter(({ figure }) => !isUnit(figure.unit) || figure.source.length < 8 || figure.year === undefined)
      .map(({ row, figure }) => `${row}: ${figure.value} ${figure.unit}, ${figure.source}`);
    expect(faults).toEqual([]);
  });

  it('lie inside their range', () => {
    const faults = figures
      .filter(
        ({ figure }) =>
          Number(figure.low ?? figure.value) > Number(figure.value) ||
          Number(figure.high ?? figure.value) < Number(figure.value),
      )
      .map(({ row }) => row);
    expect(faults).toEqual([]);
  });

  it('never call a remembered or judged value published: a published one names its outside source', () => {
    const faults = figures
      .filter(({ figure }) => figure.basis === 'published' && /remember|judg|memory/i.test(figure.source))
      .map(({ row }) => row);
    expect(faults).toEqual([]);
  });
});

describe('rows of the templates', () => {
  const library = shipped();
  it('have no id twice', () => {
    expect(duplicateIds(library)).toEqual([]);
  });
  it('name only what is there', () => {
    expect(danglingReferences(library)).toEqual([]);
  });
  it('ask for no more crews at once than there are', () => {
    expect(crewsBeyond(library)).toEqual([]);
  });
  it('state every figure in the unit its field wants', () => {
    expect([...wrongItemUnits(library), ...wrongDriverUnits(library)]).toEqual([]);
  });
});

describe('a spoilt template row is named', () => {
  type Spoilt = { items: Record<string, unknown>[] };
  const spoil = (change: (item: Record<string, unknown>, all: Spoilt) => void) => {
    const files = templateCopy();
    const cleanUp = files.work[4] as Spoilt;
    const row = cleanUp.items.find(item => item['id'] === 'tank-washing');
    if (row === undefined) throw new Error('tank-washing is gone');
    change(row, cleanUp);
    return readLibrary(files);
  };

  it('when its basis is missing', () => {
    const { library, findings } = spoil(row => {
      delete (row['hoursPerUnit'] as Record<string, unknown>)['basis'];
    });
    expect(library).toBeUndefined();
    expect(findings.map(found => found.message).join()).toContain('tank-washing');
  });
  it('when its unit is wrong', () => {
    const { library } = spoil(row => {
      (row['hoursPerUnit'] as Record<string, unknown>)['unit'] = 'h/m3';
    });
    expect(library && wrongItemUnits(library)).toEqual([
      'work item "tank-washing": hoursPerUnit is in h/m3, not in h/m2',
    ]);
  });
  it('when it names what is not there', () => {
    const { library } = spoil(row => {
      row['crew'] = 'no-such-crew';
    });
    expect(library && danglingReferences(library)).toEqual([
      'work item "tank-washing": there is no crew "no-such-crew"',
    ]);
  });
  it('when it asks for more crews than there are', () => {
    const { library } = spoil(row => {
      row['crewsAtOnce'] = { ...(row['crewsAtOnce'] as object), value: '99' };
    });
    expect(library && crewsBeyond(library).join()).toContain('work item "tank-washing": 99 crews at once');
  });
  it('when its id is there twice', () => {
    const { library } = spoil((row, all) => {
      all.items.push(structuredClone(row));
    });
    expect(library && duplicateIds(library)).toEqual(['work item "tank-washing" is there twice']);
  });

  it.each([
    ['rates', 'used-oil', 'unitPrice', 'streams'],
    ['drivers', 'void-area', 'atReference', 'drivers'],
    ['tripPoints', 'pcb-bulk-product', 'figure', 'tripPoints'],
  ] as const)('when a figure of %s loses its basis, in %s', (file, id, field, list) => {
    const files = templateCopy();
    const rows = (files[file] as Record<string, Record<string, unknown>[]>)[list];
    const row = rows?.find(candidate => candidate['id'] === id);
    if (row === undefined) throw new Error(`${id} is gone`);
    delete (row[field] as Record<string, unknown>)['basis'];
    const { library, findings } = readLibrary(files);
    expect(library).toBeUndefined();
    expect(findings.map(found => found.message).join()).toContain(`row "${id}"`);
  });
});
