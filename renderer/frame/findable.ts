import type { TableRows } from '../../core/views';
import type { Command } from '../commands/table';
import type { ShownRows } from '../engine/protocol';
import { VIEWS, type ViewId } from './view-table';

/** Something that can be found by its words. */
export interface Findable {
  readonly id: string;
  readonly title: string;
  readonly kind: string;
  readonly view?: ViewId;
  readonly subject?: string;
  /** The input that stands for it, on whatever face of the view. */
  readonly at?: string;
  readonly command?: string;
}

function inTable(table: TableRows, view: ViewId, kind: string): Findable[] {
  const named = table.columns.find(column => column.key === 'title');
  const first = (named ?? table.columns.find(column => column.kind === 'words'))?.key ?? '';
  return table.rows
    .filter(row => row.kind === 'line')
    .map(row => {
      const at = Object.values(row.cells).find(shown => shown.edit !== undefined)?.edit?.at;
      return {
        id: `${view}/${table.id}/${row.id}`,
        title: row.cells[first]?.text ?? row.id,
        kind,
        view,
        ...(row.subject === undefined ? {} : { subject: row.subject }),
        ...(at === undefined ? {} : { at }),
      };
    });
}

/** Everything of the window that has a name. */
export function findable(rows: ShownRows | undefined, commands: readonly Command[]): readonly Findable[] {
  const views = VIEWS.map(view => ({
    id: `view/${view.id}`,
    title: view.title,
    kind: 'view',
    view: view.id,
  }));
  const acts = commands.map(command => ({
    id: `command/${command.id}`,
    title: command.title,
    kind: 'command',
    command: command.id,
  }));
  if (rows === undefined) return [...acts];
  return [
    ...views,
    ...(rows.work?.stages ?? []).flatMap(stage =>
      stage.lines.map(line => ({
        id: `work/${line.id}`,
        title: line.title,
        kind: `work item, ${stage.title}`,
        view: 'work' as const,
        subject: line.id,
      })),
    ),
    ...(rows.schedule?.lanes ?? []).flatMap(lane =>
      lane.bars.map(bar => ({
        id: `bar/${bar.id}`,
        title: bar.title,
        kind: `activity, ${lane.title}`,
        view: 'schedule' as const,
        subject: bar.id,
      })),
    ),
    ...(rows.vessel === undefined
      ? []
      : [
          ...inTable(rows.vessel.particulars, 'vessel', 'particular'),
          ...inTable(rows.vessel.compartments, 'vessel', 'compartment'),
          ...inTable(rows.vessel.tanks, 'vessel', 'tank'),
          ...inTable(rows.vessel.weights, 'vessel', 'weight'),
          ...inTable(rows.vessel.site, 'vessel', 'site'),
        ]),
    ...(rows.work === undefined ? [] : inTable(rows.work.quotes, 'work', 'quote')),
    ...(rows.schedule === undefined ? [] : inTable(rows.schedule.closures, 'schedule', 'closure')),
    ...(rows.rates?.tables ?? []).flatMap(table => inTable(table, 'rates', table.caption)),
    ...rows.findings.map((row, at) => ({
      id: `finding/${at}`,
      title: row.finding.message,
      kind: 'finding',
      view: 'review' as const,
    })),
    ...acts,
  ];
}

/** The first forty whose title holds every word, those that begin with the words first. */
export function found(all: readonly Findable[], words: string): readonly Findable[] {
  const asked = words
    .toLowerCase()
    .split(/\s+/)
    .filter(word => word !== '');
  const hits = all.filter(one => asked.every(word => one.title.toLowerCase().includes(word)));
  const start = asked[0] ?? '';
  const first = hits.filter(one => one.title.toLowerCase().startsWith(start));
  return [...first, ...hits.filter(one => !first.includes(one))].slice(0, 40);
}
