import { bugs } from './bug';

/** The window: colours, keys, edits, what it may not work out. */
export const windowBugs = bugs(
  [
    'every pair of colours can be read',
    'renderer/tokens.css',
    '  --paper: #fbfbf8;',
    '  --paper: #7b7b78;',
    'test/renderer/contrast.test.ts',
    'is at least',
  ],
  [
    'the window works nothing out',
    'renderer/parts/verdict-mark.tsx',
    'export function',
    'export const half = (amount: number) => Math.round(amount / 2);\nexport function',
    'test/renderer/house.test.ts',
    'nothing outside the drawings multiplies',
  ],
  [
    'undo restores the document exactly',
    'renderer/state/history.ts',
    'applyPatches(history.project, step.inverse)',
    'applyPatches(history.project, step.inverse.slice(1))',
    'test/renderer/edits.test.ts',
    'undo restores the document exactly',
  ],
  [
    'no two commands have one key',
    'renderer/commands/table.ts',
    "['Ctrl+Shift+S']",
    "['Ctrl+S']",
    'test/renderer/commands.test.ts',
    'no two commands have the same key',
  ],
  [
    'columns in whole dollars add up to their shown total',
    'core/views/whole-dollars.ts',
    'if (missing <= 0) break;',
    'if (missing <= 1) break;',
    'test/core/views/shown.test.ts',
    'whole dollars add up',
  ],
  [
    'a figure shown is the figure of the evaluation',
    'core/views/bottom.ts',
    'dollars(total * 100)',
    'dollars(total * 101)',
    'test/core/views/shown.test.ts',
    'the window shows the figures',
  ],
  [
    'a missing runtime is asked for once a day',
    'electron/launch/choice.ts',
    'if (around.wasRefused()) {',
    'if (around.wasRefused() && words.file !== undefined) {',
    'test/electron/start.test.ts',
    'a refusal within a day',
  ],
);
