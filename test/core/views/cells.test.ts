import { describe, expect, test } from 'vitest';
import type { Figure } from '../../../core/base';
import { isStarting } from '../../../core/project';
import {
  asStep,
  basisCell,
  editCell,
  figureEdit,
  givenCell,
  memberCell,
  removeCell,
  switchCell,
  words,
} from '../../../core/views/cells';
import { changeOf, groupBy, indexBy } from '../../../core/views/index-of';
import { optionalFigure } from '../../../core/views/term-rows';
import { fillSteps } from '../../../core/views/fill-steps';
import { findingWords } from '../../../core/views/finding-words';
import { isOpenedName } from '../../../core/views/opened';
import { DEMO, evaluatedAs, figure } from './awkward';

const LENGTH: Figure = { value: '1430', unit: 'm', basis: 'surveyed', source: 'A tape', year: 2026 };

describe('a cell', () => {
  test('of words holds its words and nothing else', () => {
    expect(words('Hold one')).toStrictEqual({ text: 'Hold one' });
    expect(removeCell('/a/b', 'the b')).toStrictEqual({
      text: 'Remove',
      remove: { at: '/a/b', label: 'the b' },
    });
  });

  test('of a place writes a slash inside a step as ~1 and a tilde as ~0', () => {
    expect(asStep('trades/burner/~wage')).toBe('trades~1burner~1~0wage');
  });

  test('of a basis tells where it comes from and opens it only where that is known', () => {
    expect(basisCell(undefined, 'A tape', 'given:/a')).toStrictEqual({ text: '–' });
    expect(basisCell('quoted')).toStrictEqual({ text: 'quoted', basis: 'quoted' });
    expect(basisCell('quoted', 'A letter')).toStrictEqual({
      text: 'quoted',
      basis: 'quoted',
      source: 'A letter',
    });
    expect(basisCell('quoted', undefined, 'given:/a')).toStrictEqual({
      text: 'quoted',
      basis: 'quoted',
      why: 'given:/a',
    });
  });

  test('of a given number has its unit, where it comes from and a way to change it', () => {
    expect(givenCell('/vessel/length', 'Length', LENGTH, 'metric')).toStrictEqual({
      text: '1,430',
      unit: 'm',
      why: 'given:/vessel/length',
      basis: 'surveyed',
      source: 'A tape',
      edit: { at: '/vessel/length', kind: 'figure', value: '1430', unit: 'm', label: 'Length' },
    });
    // 1430 m are 4,691.6 ft of 0.3048 m.
    expect(givenCell('/vessel/length', 'Length', LENGTH, 'us')).toMatchObject({
      text: '4,691.6',
      unit: 'ft',
      edit: { value: '4691.6', unit: 'ft' },
    });
    const begun = { ...LENGTH, source: 'Starting value, to be replaced' };
    expect(givenCell('/a', 'A', begun, 'metric').edit).toStrictEqual({
      at: '/a',
      kind: 'figure',
      value: '1430',
      unit: 'm',
      label: 'A',
      begins: true,
    });
    expect([isStarting(begun), isStarting({ source: 'A Starting value' })]).toEqual([true, false]);
  });

  test('of a number that is not given is empty in the reader’s unit', () => {
    expect(figureEdit('/a', 'A', undefined, 't', 'us')).toStrictEqual({
      at: '/a',
      kind: 'figure',
      value: '',
      unit: 'long-ton',
      label: 'A',
    });
    expect(optionalFigure('/a', 'A', undefined, 'm', 'metric')).toStrictEqual({
      text: '',
      edit: { at: '/a', kind: 'figure', value: '', unit: 'm', label: 'A', optional: true },
    });
    expect(optionalFigure('/a', 'A', LENGTH, 'm', 'metric').edit).toStrictEqual({
      at: '/a',
      kind: 'figure',
      value: '1430',
      unit: 'm',
      label: 'A',
      optional: true,
    });
  });

  test('of a field shows a dash while nothing stands in it, and of a switch yes or no', () => {
    const edit = { at: '/a', kind: 'text', value: '', label: 'A' } as const;
    expect(editCell(edit)).toStrictEqual({ text: '–', edit });
    expect(editCell(edit, 'not asked yet')).toStrictEqual({ text: 'not asked yet', edit });
    const choices = [
      { id: 'true', title: 'yes' },
      { id: 'false', title: 'no' },
    ];
    const switched = (value: string) => ({
      text: value,
      edit: { at: '/a', kind: 'switch', value, label: 'A', choices },
    });
    expect(switchCell('/a', 'A', true)).toStrictEqual(switched('true'));
    expect(switchCell('/a', 'A', false)).toStrictEqual(switched('false'));
    const { text, edit: field } = switched('true');
    expect(memberCell('/a', 'A', true)).toStrictEqual({ text, edit: { ...field, member: true } });
  });
});

describe('an index of a list', () => {
  const list = [
    { key: 'a', value: 1 },
    { key: 'b', value: 2 },
    { key: 'a', value: 3 },
  ];
  test('finds the first entry of a key, and is made once for each list', () => {
    let asked = 0;
    const index = indexBy((entry: (typeof list)[number]) => {
      asked += 1;
      return entry.key;
    });
    expect(index(list).get('a')).toBe(list[0]);
    const before = asked;
    expect([index(list).get('b'), index(list).get('c'), index(list).size]).toEqual([list[1], undefined, 2]);
    expect(asked).toBe(before);
    expect(index([...list]).get('b')).toBe(list[1]);
    expect(asked).toBeGreaterThan(before);
  });
  test('in groups holds all of a key in their order, without those that have none', () => {
    let asked = 0;
    const groups = groupBy(({ key }: (typeof list)[number]) => {
      asked += 1;
      return key === 'b' ? undefined : key;
    });
    expect([...groups(list)]).toEqual([['a', [list[0], list[2]]]]);
    expect(groups(list)).toBe(groups(list));
    expect(asked).toBe(3);
  });
  test('finds what the planner changed about an item', () => {
    const items = [{ item: 'ocean-tow', note: 'Once more' }];
    expect(changeOf({ ...DEMO, items }, 'ocean-tow')).toBe(items[0]);
    expect(changeOf({ ...DEMO, items }, 'tow-tug')).toBeUndefined();
  });
});

describe('compartments by the time they take to fill', () => {
  const { upright } = evaluatedAs(DEMO, { upright: true });
  const [sized] = upright?.sizing ?? [];
  if (upright === undefined || sized === undefined) throw new Error('the example is screened');
  const filled = (...minutes: readonly number[]) =>
    fillSteps({
      ...upright,
      sizing: minutes.map((fillMinutes, at) => ({ ...sized, compartment: `c${at}`, fillMinutes })),
    });

  test('are three steps of a third of the span, each with its end', () => {
    // From 3 to 12 minutes a third is 3: up to 6, to 9, to 12. What never fills has no step.
    const { step, legend } = filled(3, 6, 6.1, 9, 9.1, 12, Infinity);
    expect(['c0', 'c1', 'c2', 'c3', 'c4', 'c5', 'c6', 'elsewhere'].map(step)).toEqual([
      ...[0, 0, 1, 1, 2, 2],
      ...[undefined, undefined],
    ]);
    expect(legend).toEqual([
      { step: 0, text: 'up to 6.0' },
      { step: 1, text: 'to 9.0' },
      { step: 2, text: 'to 12.0 min' },
    ]);
  });

  test('that all take as long are one step, and none where nothing fills', () => {
    const same = filled(5, 5.01);
    expect([same.step('c0'), same.step('c1'), same.step('elsewhere')]).toEqual([0, 0, undefined]);
    expect(same.legend).toEqual([{ step: 0, text: '5.0 min' }]);
    expect(filled(Infinity).legend).toEqual([]);
    expect(filled(Infinity).step('c0')).toBeUndefined();
    expect(fillSteps(undefined).legend).toEqual([]);
    expect(fillSteps(undefined).step('c0')).toBeUndefined();
  });
});

test('a finding is told as sentences, without the part it has not', () => {
  const finding = { code: 'a/b', weight: 'warns', place: '/a', message: 'it is so', remedy: 'look' } as const;
  expect(findingWords(finding)).toBe('It is so. Look.');
  expect(findingWords({ ...finding, meaning: 'what of it?' })).toBe('It is so. What of it? Look.');
});

test('the views that are made when they are opened are these', () => {
  const opened = ['materials', 'funding', 'bid', 'review', 'scenarios', 'evidence'];
  expect(opened.filter(isOpenedName)).toEqual(opened);
  expect(['work', 'risk', 'toString', ''].filter(isOpenedName)).toEqual([]);
});

test('a length that stays in the reader’s unit is told as it was typed', () => {
  expect(givenCell('/a', 'A', figure('240.50', 'ft'), 'us')).toMatchObject({ text: '240.50', unit: 'ft' });
});
