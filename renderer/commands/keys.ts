import { COMMANDS } from './table';

/** A key press in the words of the table: `Ctrl+Shift+Z`. Command on a Mac counts as Ctrl. */
export function pressed(event: KeyboardEvent): string {
  const key = event.key.length === 1 ? event.key.toUpperCase() : event.key;
  const parts = [
    event.ctrlKey || event.metaKey ? 'Ctrl' : '',
    event.altKey ? 'Alt' : '',
    event.shiftKey && (key.length > 1 || /[A-Z]/.test(key)) ? 'Shift' : '',
    key,
  ];
  return parts.filter(part => part !== '').join('+');
}

/** The command of a key press, when there is one. */
export function commandOf(event: KeyboardEvent): string | undefined {
  const words = pressed(event);
  return COMMANDS.find(command => command.keys.includes(words))?.id;
}

/** Keys as they are written on this machine. */
export function shownKeys(keys: string, platform: string): string {
  const words = keys.replace('PageDown', 'Page Down').replace('PageUp', 'Page Up').replace('Escape', 'Esc');
  if (platform !== 'darwin') return words.replace(/\+/g, ' ').replace(/ $/, ' +');
  return words.replace('Ctrl+', '⌘').replace('Shift+', '⇧').replace('Alt+', '⌥');
}
