import { upperFirst } from '../base';
import type { Scenario } from '../project';
import { editCell, REMOVE_COLUMN, removeCell, words } from './cells';
import type { EstimateContext } from './context';
import { printed } from './number-text';
import { unitWords } from './measures';
import type { Column, Row, TableRows } from './rows';

export interface ScenariosView {
  readonly scenarios: TableRows;
  /** What each scenario changes. */
  readonly changes: TableRows;
}

const SCENARIO_COLUMNS: readonly Column[] = [
  { key: 'letter', title: 'Letter', kind: 'words' },
  { key: 'title', title: 'Scenario', kind: 'words' },
  { key: 'note', title: 'Note', kind: 'words' },
  { key: 'count', title: 'Changes', kind: 'number' },
  REMOVE_COLUMN,
];
const CHANGE_COLUMNS: readonly Column[] = [
  { key: 'letter', title: 'Letter', kind: 'words' },
  { key: 'what', title: 'What it changes', kind: 'words' },
  { key: 'to', title: 'To', kind: 'words' },
  { key: 'note', title: 'Why', kind: 'words' },
  REMOVE_COLUMN,
];

/** The scenarios and what each changes of the project they share. */
export function scenariosView({ evaluation: { library, project } }: EstimateContext): ScenariosView {
  const letter = (index: number) => String.fromCharCode(65 + index);
  const options = new Map(library.options.map(option => [option.id, option]));
  const items = new Map([...library.items, ...project.ownItems].map(item => [item.id, item.title]));
  const scenarios = project.scenarios.map((one, index): Row => ({
    id: one.id,
    kind: 'line',
    cells: {
      letter: words(letter(index)),
      title: editCell({
        at: `/scenarios/${one.id}/title`,
        kind: 'text',
        value: one.title,
        label: `Name of scenario ${letter(index)}`,
      }),
      note: editCell({
        at: `/scenarios/${one.id}/note`,
        kind: 'text',
        value: one.note ?? '',
        label: `Note on scenario ${letter(index)}`,
        optional: true,
      }),
      count: words(String(one.changes.length)),
      ...(project.scenarios.length < 2
        ? {}
        : { remove: removeCell(`/scenarios/${one.id}`, `scenario ${letter(index)}, ${one.title}`) }),
    },
  }));
  const changes = project.scenarios.flatMap((one, index) =>
    one.changes.map((change): Row => {
      const at = `/scenarios/${one.id}/changes/${change.at.replaceAll('/', '~1')}`;
      const said = changeWords(change, options, items);
      return {
        id: `${one.id}${change.at}`,
        kind: 'line',
        cells: {
          letter: words(letter(index)),
          what: words(said.what),
          to: words(said.to),
          note: editCell({
            at: `${at}/note`,
            kind: 'text',
            value: change.note ?? '',
            label: `Why scenario ${letter(index)} changes ${said.what}`,
            optional: true,
          }),
          remove: removeCell(at, `the change of ${said.what} in scenario ${letter(index)}`),
        },
      };
    }),
  );
  return {
    scenarios: { id: 'scenarios', caption: 'Scenarios', columns: SCENARIO_COLUMNS, rows: scenarios },
    changes: {
      id: 'scenario-changes',
      caption: 'What each scenario changes',
      columns: CHANGE_COLUMNS,
      rows: changes,
    },
  };
}

type Option = EstimateContext['evaluation']['library']['options'][number];

function changeWords(
  change: Scenario['changes'][number],
  options: ReadonlyMap<string, Option>,
  items: ReadonlyMap<string, string>,
): { what: string; to: string } {
  const steps = change.at.split('/').slice(1);
  const option = steps[0] === 'options' ? options.get(steps[1] ?? '') : undefined;
  if (option !== undefined) {
    const chosen = option.values.find(one => one.id === change.to)?.title;
    return { what: option.title, to: chosen ?? textOf(change.to) };
  }
  const [section = '', id = '', ...fields] = steps;
  const item = section === 'items' ? items.get(id) : undefined;
  const place = item === undefined ? steps : fields;
  const what = [...(item === undefined ? [] : [item]), ...place.map(spoken)].join(', ');
  return { what: upperFirst(what), to: textOf(change.to) };
}

/** A key in words: `hoursPerUnit` is "hours per unit". */
function spoken(key: string): string {
  return key
    .replaceAll('-', ' ')
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase();
}

/** Fields of an entry that say what it is about and why, and not what it is set to. */
const NOT_SET = new Set(['id', 'item', 'note', 'source', 'basis', 'year']);

/** A value of the document as it is read. */
function textOf(value: unknown): string {
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string' || typeof value === 'number') return String(value);
  if (value === null || typeof value !== 'object') return 'nothing';
  if ('value' in value && typeof value.value === 'string') {
    const unit = 'unit' in value && typeof value.unit === 'string' ? unitWords(value.unit) : '';
    return `${printed(value.value)} ${unit}`.trim();
  }
  if (Array.isArray(value)) return value.length === 1 ? '1 entry' : `${value.length} entries`;
  const set = Object.entries(value).filter(([key]) => !NOT_SET.has(key));
  return set.map(([key, part]) => `${spoken(key)}: ${textOf(part)}`).join('; ');
}
