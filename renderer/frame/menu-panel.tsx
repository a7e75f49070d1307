import { Header, Menu, MenuItem, MenuSection, Text } from 'react-aria-components';
import { shownKeys } from '../commands/keys';
import { runCommand } from '../commands/run';
import { COMMANDS, type Command, type CommandGroup } from '../commands/table';
import { change, useWindow } from '../state/store';

const GROUPS: readonly { readonly id: CommandGroup; readonly title: string }[] = [
  { id: 'file', title: 'Project' },
  { id: 'edit', title: 'Edits' },
  { id: 'view', title: 'Window' },
  { id: 'go', title: 'Go to' },
  { id: 'help', title: 'Help' },
];

/** What a command is called now: undo and redo say what they would undo. */
function useTitles(): (command: Command) => string {
  const last = useWindow(window => window.history?.past.at(-1)?.label);
  const next = useWindow(window => window.history?.future[0]?.label);
  return command => {
    if (command.id === 'undo' && last !== undefined) return `Undo: ${last}`;
    if (command.id === 'redo' && next !== undefined) return `Redo: ${next}`;
    return command.title;
  };
}

/** The menu: every command of the table with its keys. */
export function MenuPanel() {
  const platform = useWindow(window => window.about?.platform ?? '');
  const hasDocument = useWindow(window => window.history !== undefined);
  const canUndo = useWindow(window => (window.history?.past.length ?? 0) > 0);
  const canRedo = useWindow(window => (window.history?.future.length ?? 0) > 0);
  const titleOf = useTitles();
  const closed = COMMANDS.filter(
    command =>
      (command.needsDocument && !hasDocument) ||
      (command.id === 'undo' && !canUndo) ||
      (command.id === 'redo' && !canRedo),
  ).map(command => command.id);
  return (
    <Menu
      className="menu"
      aria-label="Commands"
      autoFocus="first"
      disabledKeys={closed}
      onAction={key => {
        change({ panel: 'none' });
        runCommand(String(key));
      }}
    >
      {GROUPS.map(group => (
        <MenuSection key={group.id} className="menu-group">
          <Header className="view-group">{group.title}</Header>
          {COMMANDS.filter(command => command.group === group.id && command.id !== 'why').map(command => (
            <MenuItem key={command.id} id={command.id} className="menu-item" textValue={titleOf(command)}>
              <Text slot="label">{titleOf(command)}</Text>
              <Text slot="description" className="quiet">
                {shownKeys(command.keys[0] ?? '', platform)}
              </Text>
            </MenuItem>
          ))}
        </MenuSection>
      ))}
    </Menu>
  );
}
