import { describe, expect, test } from 'vitest';
import {
  INPUT_HEADS,
  INPUTS,
  estimateWorkbook,
  inputCells,
  otherCells,
  proposeEdits,
  readInputs,
  stampText,
  takeBackPreview,
  withEdits,
  type FileCell,
  type ProposedEdit,
  type TypedContent,
} from '../../../core/papers';
import { fromCents } from '../../../core/money';
import type { Project } from '../../../core/project';
import { demoProject, estimated, evaluated } from '../evaluation/demo';
import { bareProject } from './odd-documents';

const project = demoProject();
const wholeOf = (of: Project) => {
  const evaluation = evaluated(of);
  return { ...evaluation, estimate: estimated(evaluation) };
};
const whole = wholeOf(project);
const cells = inputCells(whole);
const ORIGIN = { kind: 'workbook', dated: '2026-11-24' } as const;
const WAGE = '/rates/trades/abatement-worker/wage';

function cellOf(key: string, of = cells) {
  const found = of.find(cell => cell.key === key);
  if (found === undefined) throw new Error(`there is no input ${key}`);
  return found;
}

/** What is proposed for one figure typed over. */
function proposed(key: string, value: TypedContent, of = whole) {
  const { unit } = cellOf(key, inputCells(of));
  const rows = [{ address: 'Inputs!C9', key, value, unit, basis: '', source: '' }];
  const { edits, findings } = proposeEdits(of, rows, ORIGIN);
  return { edits, findings: findings.filter(({ code }) => code !== 'take-back/rows-missing') };
}

const stamp = { document: 'ab12', scenario: 'base', dated: '2026-11-24' };

/** The sheet of inputs with the heads that are left and one row. */
function sheetWith(heads: readonly string[], row: Readonly<Record<string, TypedContent>>): FileCell[] {
  const at = (line: number, column: number, content: TypedContent): FileCell => ({
    sheet: INPUTS,
    row: line,
    column,
    content,
  });
  return [
    at(2, 1, { kind: 'text', text: stampText(stamp) }),
    ...heads.map((text, i) => at(5, i + 1, { kind: 'text', text })),
    ...heads.flatMap((head, i) => {
      const content = row[head];
      return content === undefined ? [] : [at(6, i + 1, content)];
    }),
  ];
}

describe('a sheet of inputs that came back', () => {
  const row: Readonly<Record<string, TypedContent>> = {
    Amount: { kind: 'number', value: 30 },
    Unit: { kind: 'text', text: 'USD/h' },
    Key: { kind: 'text', text: WAGE },
  };

  test('may have lost the columns of basis and source', () => {
    const { rows, findings } = readInputs(sheetWith(['Key', 'Unit', 'Amount'], row));
    expect(findings).toEqual([]);
    expect(rows).toEqual([
      {
        address: `${INPUTS}!C6`,
        key: WAGE,
        value: { kind: 'number', value: 30 },
        unit: 'USD/h',
        basis: '',
        source: '',
      },
    ]);
  });

  test.each(['Amount', 'Unit', 'Key'])('without its column %s is not read at all', gone => {
    const heads = INPUT_HEADS.filter(head => head !== gone);
    const { rows, findings } = readInputs(sheetWith(heads, row));
    expect(rows).toEqual([]);
    expect(findings).toMatchObject([{ code: 'take-back/not-ours', weight: 'blocks' }]);
  });

  test('has the basis and the source that were typed beside an amount', () => {
    const typed = {
      ...row,
      'Basis of a new amount': { kind: 'text', text: 'quoted' },
      'Source of a new amount': { kind: 'text', text: 'Letter of the yard' },
    } as const;
    expect(readInputs(sheetWith([...INPUT_HEADS], typed)).rows).toMatchObject([
      { basis: 'quoted', source: 'Letter of the yard' },
    ]);
  });

  test('reads words typed as numbers as they stand, and a row without a key as no figure', () => {
    const typed = { ...row, Unit: { kind: 'number', value: 1 } } as const;
    expect(readInputs(sheetWith([...INPUT_HEADS], typed)).rows).toMatchObject([{ unit: '1' }]);
    const dated = { ...row, Key: { kind: 'date', iso: '2027-01-01' } } as const;
    const { rows, findings } = readInputs(sheetWith([...INPUT_HEADS], dated));
    expect(rows).toEqual([]);
    expect(findings).toMatchObject([{ code: 'take-back/row-without-key', place: `${INPUTS}!C6` }]);
  });
});

describe('an amount as it was typed', () => {
  test.each([
    [1 / 3, '0.333333333333'],
    [1e-7, '0.0000001'],
    [-1e-14, '0'],
    [1200, '1200'],
    [0.123456789012, '0.123456789012'],
  ])('%d is kept as %s', (value, kept) => {
    expect(proposed(WAGE, { kind: 'number', value }).edits.map(edit => edit.value)).toEqual([kept]);
  });

  test.each(['12 t', '12 furlongs', 'twelve'])('%j where a wage belongs is no amount of one', text => {
    const { edits, findings } = proposed(WAGE, { kind: 'text', text });
    expect(edits).toEqual([]);
    expect(findings[0]?.message).toContain(`"${text}" is not an amount in USD/h`);
  });

  test('a share is asked for in plain numbers', () => {
    const { findings } = proposed('/contingency/share', { kind: 'text', text: 'a third' });
    expect(findings[0]?.message).toContain('"a third" is not an amount in plain numbers');
  });

  test('a long text is shown by its beginning', () => {
    const { findings } = proposed(WAGE, { kind: 'text', text: 'x'.repeat(60) });
    expect(findings[0]?.message).toContain(`"${'x'.repeat(40)}…"`);
  });
});

describe('where a changed figure goes', () => {
  function after(key: string, value: TypedContent, of = whole): Project {
    return withEdits(of.project, proposed(key, value, of).edits);
  }

  test('the way by road, the tow, the contingency and a tank go to their own places', () => {
    const number = { kind: 'number', value: 42 } as const;
    expect(after('/site/yardDistance', number).site.yardDistance?.value).toBe('42');
    expect(after('/site/towDistance', number).site.towDistance.value).toBe('42');
    expect(after('/contingency/share', { kind: 'number', value: 0.4 }).contingency.share?.value).toBe('0.4');
    const [tank] = project.vessel.tanks;
    if (tank === undefined) throw new Error('the example has tanks');
    const { tanks } = after(`/vessel/tanks/${tank.id}/capacity`, number).vessel;
    expect(tanks[0]?.capacity.value).toBe('42');
    expect(tanks.slice(1)).toEqual(project.vessel.tanks.slice(1));
  });

  test('a quantity that is taken out again is worked out anew, and its hours stay', () => {
    const item = cells.find(({ key }) => /^\/items\/[^/]+\/quantity$/.test(key))?.key.split('/')[2] ?? '';
    const key = `/items/${item}/quantity`;
    const figure = { value: '7', basis: 'judgement' as const, source: 'made up' };
    const hoursPerUnit = { ...figure, unit: cellOf(`/items/${item}/hoursPerUnit`).unit };
    const stated: Project = {
      ...project,
      items: [{ item, quantity: { ...figure, unit: cellOf(key).unit }, hoursPerUnit, note: 'kept' }],
    };
    const of = wholeOf(stated);
    expect(cellOf(key, inputCells(of)).value).toBe('7');
    expect(after(key, { kind: 'blank' }, of).items).toEqual([{ item, hoursPerUnit, note: 'kept' }]);
  });

  test('a quote of several lines, or for a unit, cannot be changed in a paper', () => {
    const [given] = project.quotes;
    if (given === undefined) throw new Error('the example has a quote');
    const item = 'stability-study';
    const amount = { ...given.amount, unit: 'USD' };
    const quote = { ...given, covers: [{ item, share: '1' }], amount, chosen: true };
    const keysWith = (changed: Partial<typeof quote>) =>
      inputCells(wholeOf({ ...project, quotes: [{ ...quote, ...changed }] })).map(({ key }) => key);
    const key = `/quotes/${item}/amount`;
    expect(keysWith({})).toContain(key);
    expect(keysWith({ covers: [...quote.covers, { item: 'compartment-survey', share: '1' }] })).not.toContain(
      key,
    );
    expect(keysWith({ amount: { ...amount, unit: 'USD/h' } })).not.toContain(key);
  });
});

describe('the preview of what came back', () => {
  const edit = (before: string | undefined, value: string | undefined): ProposedEdit => ({
    cell: { ...cellOf(WAGE), value: before },
    address: 'Inputs!C9',
    value,
    basis: 'judgement',
    source: 'made up',
    dated: '2026-11-24',
  });
  const scenario = { id: 'base', title: 'As planned' };

  test('says how many changes, what was and will be worked out, and what is absent', () => {
    const preview = takeBackPreview(
      {
        edits: [edit('1200', undefined), edit(undefined, '1300')],
        totals: { before: undefined, atSameDates: undefined, after: fromCents(100) },
        finish: { before: undefined, after: undefined },
      },
      scenario,
    );
    expect(preview.summary).toBe(
      'The paper of scenario As planned asks for 2 changes. They hold in all scenarios.',
    );
    expect(preview.changes.map(({ before, after }) => [before.text, after])).toEqual([
      ['1,200', 'worked out'],
      ['worked out', '1,300'],
    ]);
    expect(preview.results.map(({ title, before, after }) => [title, before.text, after])).toEqual([
      ['Total', 'absent', '$1.00'],
      ['Total at the dates of the paper', 'absent', 'absent'],
      ['Finish', 'none', 'none'],
    ]);
  });

  test('counts one change as one', () => {
    const one = {
      edits: [edit('1', '2')],
      totals: { before: undefined, atSameDates: undefined, after: undefined },
      finish: { before: '2029-01-01', after: '2029-01-02' },
    };
    expect(takeBackPreview(one, scenario).summary).toContain('asks for 1 change.');
    expect(takeBackPreview(one, scenario).results.at(-1)).toMatchObject({
      before: { text: '2029-01-01' },
      after: '2029-01-02',
    });
  });
});

describe('cells beside the inputs', () => {
  const paper = estimateWorkbook(evaluated(bareProject()));
  if (paper === undefined) throw new Error('a new project has an estimate');
  /** All cells as the program wrote them. */
  const written: FileCell[] = paper.sheets.flatMap(({ name, cells: own }) =>
    own.map(({ row, column, content }): FileCell => {
      const place = { sheet: name, row, column };
      switch (content.kind) {
        case 'text':
          return { ...place, content: { kind: 'text', text: content.text } };
        case 'date':
          return { ...place, content: { kind: 'date', iso: content.iso } };
        case 'formula':
          return { ...place, content: { kind: 'blank' }, formula: content.formula };
        case 'open':
          return { ...place, content: { kind: 'blank' } };
        default:
          return { ...place, content: { kind: 'number', value: content.value } };
      }
    }),
  );
  const date = written.find(({ content }) => content.kind === 'date');
  const text = written.find(({ content }) => content.kind === 'text' && content.text.length > 20);
  if (date === undefined || text === undefined) throw new Error('the workbook has both');
  const changed = (cell: FileCell, content: TypedContent) =>
    otherCells(
      paper,
      written.map(one => (one === cell ? { ...one, content } : one)),
    ).map(({ code }) => code);

  test('as the program wrote them need no word', () => {
    expect(otherCells(paper, written)).toEqual([]);
    expect(
      otherCells(paper, [
        ...written,
        { sheet: 'Cover', row: 99, column: 9, content: { kind: 'blank' } },
        { sheet: 'Cover', row: 99, column: 10, content: { kind: 'text', text: '  ' } },
      ]),
    ).toEqual([]);
  });

  test('left out where they hold nothing, or are open to the reader, need no word either', () => {
    const isNothing = ({ content, formula }: FileCell) =>
      formula === undefined && (content.kind === 'blank' || (content.kind === 'text' && content.text === ''));
    const inputs = new Set(
      paper.sheets.flatMap(({ name, cells: own }) =>
        own.flatMap(({ row, column, content }) =>
          'role' in content && content.role === 'input' ? [`${name} ${row} ${column}`] : [],
        ),
      ),
    );
    const isInput = ({ sheet, row, column }: FileCell) => inputs.has(`${sheet} ${row} ${column}`);
    expect(written.some(isNothing)).toBe(true);
    expect(written.some(isInput)).toBe(true);
    expect(
      otherCells(
        paper,
        written.filter(cell => !isNothing(cell) && !isInput(cell)),
      ),
    ).toEqual([]);
    const blank = written.map(cell =>
      isNothing(cell) ? { ...cell, content: { kind: 'blank' as const } } : cell,
    );
    expect(otherCells(paper, blank)).toEqual([]);
  });

  test('a text may break its lines elsewhere, but not run its words together', () => {
    const spoken = text.content.kind === 'text' ? text.content.text : '';
    expect(changed(text, { kind: 'text', text: spoken.replaceAll(' ', '\n') })).toEqual([]);
    expect(changed(text, { kind: 'text', text: spoken.replaceAll(' ', '') })).toEqual([
      'take-back/text-changed',
    ]);
  });

  test('a date of the schedule that was moved is told as one that depends on dates', () => {
    expect(changed(date, { kind: 'date', iso: '2031-01-01' })).toEqual(['take-back/depends-on-dates']);
    expect(changed(date, { kind: 'text', text: 'soon' })).toEqual(['take-back/depends-on-dates']);
  });

  test.each<[string, TypedContent]>([
    ['emptied', { kind: 'blank' }],
    ['typed over by a number', { kind: 'number', value: 1 }],
    ['written anew', { kind: 'text', text: 'Something else' }],
  ])('a text that was %s is told', (_, content) => {
    expect(changed(text, content)).toEqual(['take-back/text-changed']);
  });
});
