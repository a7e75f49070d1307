import { describe, expect, test } from 'vitest';
import { sourceFiles } from './files';

function median(numbers: readonly number[]): number {
  const sorted = [...numbers].sort((a, b) => a - b);
  return sorted[Math.floor((sorted.length - 1) / 2)] ?? 0;
}

describe('the size of source files', () => {
  test('core files have a median under 80 lines and none is over 300', () => {
    const files = sourceFiles('core');
    const longest = [...files].sort((a, b) => b.lines - a.lines).slice(0, 3);
    console.log(longest.map(file => `${String(file.lines)} ${file.path}`).join('\n'));
    expect(median(files.map(file => file.lines))).toBeLessThan(80);
    expect(files.filter(file => file.lines > 300).map(file => file.path)).toEqual([]);
  });

  test('no component of the window and no file of the shell is over 300 lines', () => {
    const files = [...sourceFiles('renderer'), ...sourceFiles('electron')];
    expect(files.filter(file => file.lines > 300).map(file => file.path)).toEqual([]);
  });
});
