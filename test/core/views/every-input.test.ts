import { describe, expect, test } from 'vitest';
import { projectSchema } from '../../../core/project';
import type { Addition, AddField, Edit, Removal } from '../../../core/views';
import { everything, type Everything, type Shown } from './everything';
import { setInside, stepsOf, valueAt, withValueAt } from './document-places';
import { inside, isRecord } from './laws';

/** What is shown beside an input: the cell it stands in, or the sentence. */
interface Input {
  readonly edit: Edit;
  readonly text: string | undefined;
}

const isEdit = (value: unknown): value is Edit =>
  isRecord(value) && typeof value['at'] === 'string' && 'kind' in value && 'value' in value;
const isRemoval = (value: unknown): value is Removal =>
  isRecord(value) && Object.keys(value).toSorted().join(' ') === 'at label';
const isAddition = (value: unknown): value is Addition =>
  isRecord(value) && Array.isArray(value['fields']) && 'what' in value && 'entry' in value;

function inputsOf({ shown }: Everything): readonly Input[] {
  return [...inside(shown)].flatMap(([, held]): Input[] => {
    if (isRecord(held) && isEdit(held['edit'])) {
      const text = held['text'];
      return [{ edit: held['edit'], text: typeof text === 'string' ? text : undefined }];
    }
    return isRecord(held) && isEdit(held['note']) ? [{ edit: held['note'], text: undefined }] : [];
  });
}
const found = <T>({ shown }: Everything, is: (value: unknown) => value is T): readonly T[] =>
  [...inside(shown)].flatMap(([, held]) => (is(held) ? [held] : []));

/** Each unit in the one of its kind that the law takes as the measure: metres, square and cubic metres, tonnes. */
const IN_METRIC: Readonly<Record<string, readonly [of: string, factor: number]>> = {
  ft: ['m', 0.3048],
  mi: ['m', 1609.344],
  km: ['m', 1000],
  nmi: ['m', 1852],
  ft2: ['m2', 0.3048 ** 2],
  ft3: ['m3', 0.3048 ** 3],
  gal: ['m3', 231 * 0.0254 ** 3],
  'long-ton': ['t', 1.0160469088],
  'short-ton': ['t', 0.90718474],
  lb: ['t', 0.00045359237],
  kg: ['t', 0.001],
};
function measured(value: string, unit: string): readonly [amount: number, unit: string] {
  return unit.split('/').reduce<readonly [number, string]>(
    ([amount, of], part, place) => {
      const [metric, factor] = IN_METRIC[part] ?? [part, 1];
      return place === 0 ? [amount * factor, metric] : [amount / factor, `${of}/${metric}`];
    },
    [Number(value), ''],
  );
}

/** What a typed field says that is not what the document holds at its place. */
function wrongInput(project: unknown, { edit, text }: Input): string[] {
  const { at, kind, value, unit = '' } = edit;
  const held = edit.member === true ? undefined : valueAt(project, at);
  const wrong = (what: string) => [`${at}: ${what}, ${value} ${unit} for ${JSON.stringify(held)}`];
  if (edit.member === true) {
    const list = valueAt(project, at.slice(0, at.lastIndexOf('/')));
    const word = stepsOf(at).at(-1);
    const isIn = Array.isArray(list) && list.some(one => one === word);
    return value === String(isIn) ? [] : wrong('member');
  }
  if (kind === 'figure') {
    if (!isRecord(held)) return [];
    const [amount, of] = measured(value, unit);
    const [given, ofGiven] = measured(String(held['value']), String(held['unit']));
    if (of !== ofGiven) return wrong('another kind of unit');
    if (unit === held['unit'] && value !== held['value']) return wrong('not as typed');
    const plainText = text?.replaceAll(',', '').replace('−', '-') ?? '';
    const decimals = plainText.split('.')[1]?.length ?? 0;
    if (Math.abs(Number(plainText) - Number(value)) > 0.5 * 10 ** -decimals && !at.includes('/risk/'))
      return wrong(`shown as ${plainText}`);
    // Converted amounts are rounded to three digits or more, or to a tenth; long roads to whole miles.
    const least = ['mi', 'km'].includes(unit) ? '0.51' : '0.051';
    return Math.abs(amount - given) <= Math.max(0.006 * Math.abs(given), measured(least, unit)[0])
      ? []
      : wrong('another amount');
  }
  if (kind === 'choice' && edit.choices?.some(one => one.id === value) !== true) return wrong('not offered');
  if (isRecord(held)) return held['policy'] === value ? [] : wrong('not the policy');
  if (held === undefined) return value === '' || /^\/(options|items)\//.test(at) ? [] : wrong('not there');
  return [String, Number, (text: string) => text === 'true'].some(read => read(value) === held)
    ? []
    : wrong('not what is there');
}

/** Whether a text in a field is what stands there, in words. */
const isSaid = ({ edit: { kind, value, choices, at }, text }: Input): boolean => {
  if (text === undefined || kind === 'figure') return true;
  if (value === '')
    return /^(–|not given|not chosen|not asked yet|)$/.test(text) || at === '/decision/chosen';
  if (kind === 'date') return text === value || /^\d{1,2} [A-Z][a-z]{2} \d{4}$/.test(text);
  if (kind === 'decimal') return text.replaceAll(',', '') === value;
  return text === value || choices?.find(one => one.id === value)?.title === text;
};

const problems = (document: unknown): readonly string[] =>
  (projectSchema.safeParse(document).error?.issues ?? []).map(
    issue => `${issue.path.join('/')}: ${issue.message}`,
  );

const GIVEN = { basis: 'surveyed', source: 'Typed in this test' };
/** Something that may be typed into a field of a kind, or what stands there at first. */
function typed({ kind, unit, choices, value }: Omit<AddField, 'path' | 'label'>): unknown {
  if (value !== undefined && kind !== 'figure') return kind === 'whole' ? Number(value) : value;
  const values: Readonly<Record<Edit['kind'], unknown>> = {
    figure: { value: '1', unit: unit ?? 'no unit', ...GIVEN },
    decimal: '0.5',
    text: 'Words',
    date: '2030-05-06',
    whole: 1970,
    switch: true,
    choice: choices?.find(one => one.id !== '')?.id,
  };
  return values[kind];
}

/** One input of each kind of place: those of the many entries of one list are alike. */
function kindsOf(inputs: readonly Input[]): readonly Input[] {
  const kinds = new Map<string, Input>();
  for (const input of inputs) {
    const steps = stepsOf(input.edit.at);
    kinds.set(`${steps[0] ?? ''} ${steps.length} ${steps.at(-1) ?? ''} ${input.edit.kind}`, input);
  }
  return [...kinds.values()];
}

/** One addition of each kind of list: what may be added to one space may be added to each. */
function listsOf(additions: readonly Addition[]): readonly Addition[] {
  const kinds = additions.map((one): [string, Addition] => {
    const steps = stepsOf(one.at);
    return [`${steps[0] ?? ''} ${steps.length} ${steps.at(-1) ?? ''}`, one];
  });
  return [...new Map(kinds).values()];
}

/** A new entry with every field that may not be empty, or with all of them but one. */
function entryOf(addition: Addition, isLeftOut: (field: AddField) => boolean): unknown {
  const entry: Record<string, unknown> = structuredClone({ ...addition.entry });
  for (const field of addition.fields) if (!isLeftOut(field)) setInside(entry, field.path, typed(field));
  if (addition.idFrom !== undefined) entry['id'] = 'typed-in-this-test';
  return entry;
}
function added(project: unknown, addition: Addition, isLeftOut: (field: AddField) => boolean): unknown {
  const entry = entryOf(addition, isLeftOut);
  if (addition.single === true) return withValueAt(project, addition.at, entry);
  const list = valueAt(project, addition.at);
  return withValueAt(project, addition.at, [...(Array.isArray(list) ? (list as unknown[]) : []), entry]);
}

const DOCUMENTS: readonly Shown[] = [
  'a full document in feet',
  'a full document in metres',
  'a document just begun',
  'the runs, the comparison and the decision',
];

describe.each(DOCUMENTS)('the inputs of %s', name => {
  test('hold what the document holds, in words that name them and choices that can be told apart', () => {
    const all = everything(name);
    const inputs = inputsOf(all);
    expect(inputs.length).toBeGreaterThan(5);
    expect(inputs.flatMap(input => wrongInput(all.project, input))).toEqual([]);
    expect(inputs.filter(input => !isSaid(input))).toEqual([]);
    const unnamed = inputs.filter(({ edit }) => !/^\S+( \S+)*$/.test(edit.label));
    expect(unnamed.map(({ edit }) => edit)).toEqual([]);
    const vague = inputs.filter(({ edit: { kind, choices = [], unit } }) => {
      const isOneOf = kind === 'choice' || kind === 'switch';
      const ids = new Set(choices.map(one => one.id));
      const titles = new Set(choices.map(one => one.title));
      const isWhole = ids.size === choices.length && titles.size === choices.length && !titles.has('');
      return !isWhole || (isOneOf && choices.length < 1) || (kind === 'figure' && (unit ?? '') === '');
    });
    expect(vague.filter(({ edit }) => !edit.at.startsWith('/items/'))).toEqual([]);
  });

  test('may be filled with anything offered, and may be left empty only where nothing is lost', () => {
    const all = everything(name);
    const wrong = kindsOf(inputsOf(all)).flatMap(({ edit }): string[] => {
      const { at, kind, choices = [] } = edit;
      const held = valueAt(all.project, at);
      if (edit.member === true || (kind === 'figure' && held === undefined) || at.startsWith('/items/'))
        return [];
      const offered: readonly unknown[] =
        kind === 'choice'
          ? choices.filter(one => one.id !== '').map(one => one.puts ?? one.id)
          : kind === 'whole' && edit.value !== ''
            ? [Number(edit.value)]
            : kind === 'whole' && at.startsWith('/funding/payment/')
              ? [3]
              : [typed({ kind, ...(edit.unit === undefined ? {} : { unit: edit.unit }) })];
      const beside = edit.pair === undefined ? undefined : `${at.slice(0, at.lastIndexOf('/'))}/${edit.pair}`;
      const refused = offered.flatMap(value => {
        const changed = withValueAt(all.project, at, value);
        return problems(beside === undefined ? changed : withValueAt(changed, beside, value));
      });
      const isNeeded = problems(withValueAt(all.project, at, undefined)).length > 0;
      return [
        ...refused.slice(0, 2).map(problem => `${at}: ${problem}`),
        ...(edit.optional === true && isNeeded ? [`${at} is needed`] : []),
      ];
    });
    expect(wrong).toEqual([]);
  });

  test('stand beside entries that can be taken out, and leave a document that holds', () => {
    const all = everything(name);
    const removals = found(all, isRemoval);
    for (const { at, label } of removals) {
      expect(valueAt(all.project, at), label).toBeDefined();
      expect(label).toMatch(/^\S+( \S+)*$/);
    }
    expect(new Set(removals.map(({ label }) => label)).size).toBe(removals.length);
    const lists = new Map(removals.map(one => [one.at.slice(0, one.at.lastIndexOf('/')), one]));
    for (const { at } of lists.values()) {
      const rest = withValueAt(all.project, at, undefined);
      expect(problems(rest), at).toEqual([]);
    }
  });

  test('make new entries that the document takes, and every field that is not optional is needed', () => {
    const all = everything(name);
    const additions = found(all, isAddition).filter(({ fields }) =>
      fields.every(({ kind, choices }) => kind !== 'choice' || (choices ?? []).length > 0),
    );
    expect(new Set(additions.map(one => `${one.at} ${one.what}`)).size).toBe(additions.length);
    for (const addition of listsOf(additions)) {
      const { at, what, fields } = addition;
      expect(problems(added(all.project, addition, () => false)), at).toEqual([]);
      expect(problems(added(all.project, addition, field => field.optional === true)), at).toEqual([]);
      expect(what).toMatch(/^\S+( \S+)*$/);
      for (const field of fields) {
        const { label, kind, choices, value, path, unit } = field;
        expect(label, at).toMatch(/^\S+( \S+)*$/);
        if (choices !== undefined)
          expect(new Set(choices.map(one => one.id)).size, path).toBe(choices.length);
        if (choices !== undefined && value !== undefined)
          expect(
            choices.map(one => one.id),
            path,
          ).toContain(value);
        if (kind === 'figure') expect(unit, path).toMatch(/\S/);
      }
    }
  });
});

test('a full document can be added to wherever it holds a list of the reader’s', () => {
  const places = listsOf(found(everything('a full document in feet'), isAddition)).map(one => one.at);
  const ends = new Set(places.map(at => stepsOf(at).at(-1) ?? ''));
  expect([...ends].toSorted()).toEqual([
    ...['alternates', 'closures', 'compartments', 'connections', 'covers', 'items', 'laboratory', 'lessons'],
    ...[
      'notAllowable',
      'obligations',
      'openings',
      'quotes',
      'receivedBids',
      'sources',
      'tanks',
      'uses',
      'vents',
      'weights',
    ],
  ]);
});
