import { expect, test } from 'vitest';
import { shownKeys } from '../../renderer/commands/keys';
import { COMMANDS } from '../../renderer/commands/table';
import { moved, rangeOf } from '../../renderer/parts/grid/move';

test('no two commands have the same key or the same name', () => {
  const keys = COMMANDS.flatMap(command => command.keys);
  expect(new Set(keys).size).toBe(keys.length);
  expect(new Set(COMMANDS.map(command => command.title)).size).toBe(COMMANDS.length);
  expect(new Set(COMMANDS.map(command => command.id)).size).toBe(COMMANDS.length);
});

test('keys are written as the machine writes them', () => {
  expect(shownKeys('Ctrl+Shift+S', 'linux')).toBe('Ctrl Shift S');
  expect(shownKeys('Ctrl+Shift+S', 'darwin')).toBe('⌘⇧S');
});

test('the focus of a grid never leaves it', () => {
  const extent = { rows: 3, columns: 2 };
  expect(moved('ArrowUp', false, { row: 0, column: 0 }, extent)).toEqual({ row: 0, column: 0 });
  expect(moved('ArrowRight', false, { row: 0, column: 1 }, extent)).toEqual({ row: 0, column: 1 });
  expect(moved('PageDown', false, { row: 0, column: 1 }, extent)).toEqual({ row: 2, column: 1 });
  expect(moved('End', true, { row: 0, column: 0 }, extent)).toEqual({ row: 2, column: 1 });
  expect(moved('a', false, { row: 0, column: 0 }, extent)).toBeUndefined();
});

test('a range runs from its first to its last cell whichever was chosen first', () => {
  expect(rangeOf({ row: 4, column: 0 }, { row: 1, column: 3 })).toEqual({
    from: { row: 1, column: 0 },
    to: { row: 4, column: 3 },
  });
});
