/** What a command acts on: the file, the edits, the view or the window. */
export type CommandGroup = 'file' | 'edit' | 'view' | 'go' | 'help';

export interface Command<I extends string = string> {
  readonly id: I;
  readonly title: string;
  readonly group: CommandGroup;
  /** Keys in order: `Ctrl` stands for Command on a Mac. The first is shown. */
  readonly keys: readonly string[];
  /** Only with an open document. */
  readonly needsDocument: boolean;
}

const command = <I extends string>(
  id: I,
  title: string,
  group: CommandGroup,
  keys: readonly string[] = [],
  needsDocument = false,
): Command<I> => ({ id, title, group, keys, needsDocument });

/** The one table of commands: the menu, the keyboard and the help are all made from it. */
export const COMMANDS = [
  command('new', 'New from a starting point', 'file', ['Ctrl+N']),
  command('open', 'Open a project', 'file', ['Ctrl+O']),
  command('save', 'Save', 'file', ['Ctrl+S'], true),
  command('save-as', 'Save under another name', 'file', ['Ctrl+Shift+S'], true),
  command('download', 'Keep a copy of the document', 'file', [], true),
  command('print', 'Print this view', 'file', ['Ctrl+P'], true),
  command('close', 'Close the project', 'file', ['Ctrl+Shift+W'], true),
  command('undo', 'Undo', 'edit', ['Ctrl+Z'], true),
  command('redo', 'Redo', 'edit', ['Ctrl+Shift+Z', 'Ctrl+Y'], true),
  command('scenarios', 'Scenarios', 'edit', ['Ctrl+Shift+E'], true),
  command('import', 'Bring in a table', 'file', ['Ctrl+Shift+I'], true),
  command('find', 'Find anything', 'edit', ['Ctrl+K', 'Ctrl+F']),
  command('why', 'Why panel: close', 'view', ['Escape'], true),
  command('larger', 'Larger', 'view', ['Ctrl+=', 'Ctrl++']),
  command('smaller', 'Smaller', 'view', ['Ctrl+-']),
  command('actual-size', 'Actual size', 'view', ['Ctrl+0']),
  command('us', 'US measures', 'view'),
  command('metric', 'Metric measures', 'view'),
  command('theme-system', 'Colours as the system', 'view'),
  command('theme-light', 'Light colours', 'view'),
  command('theme-dark', 'Dark colours', 'view'),
  command('theme-contrast', 'High contrast', 'view'),
  command('next-view', 'Next view', 'go', ['Ctrl+PageDown'], true),
  command('previous-view', 'Previous view', 'go', ['Ctrl+PageUp'], true),
  command('next-scenario', 'Next scenario', 'go', ['Ctrl+Alt+PageDown'], true),
  command('previous-scenario', 'Previous scenario', 'go', ['Ctrl+Alt+PageUp'], true),
  command('findings', 'Open findings', 'go', ['F8'], true),
  command('help', 'Help and keyboard', 'help', ['F1', 'Ctrl+/']),
] as const;
export type CommandId = (typeof COMMANDS)[number]['id'];

/** Keys inside tables, told in the help; the grid itself obeys them. */
export const GRID_KEYS: readonly { readonly keys: string; readonly title: string }[] = [
  { keys: 'Arrow keys', title: 'Move from cell to cell' },
  { keys: 'Home, End', title: 'First and last cell of the row' },
  { keys: 'Ctrl+Home, Ctrl+End', title: 'First and last cell of the table' },
  { keys: 'Page Up, Page Down', title: 'Ten rows up or down' },
  { keys: 'Shift+arrow', title: 'Choose a range' },
  { keys: 'Enter or F2', title: 'Edit the number, or ask why when it is worked out' },
  { keys: 'Alt+Enter', title: 'Ask why of a number that can be edited' },
  { keys: 'Escape', title: 'Leave the number as it was' },
  { keys: 'Ctrl+C, Ctrl+V', title: 'Copy and paste a range; a paste is one step to undo' },
];
