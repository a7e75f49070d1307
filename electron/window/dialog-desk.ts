import path from 'node:path';
import type { App, BrowserWindow, Dialog } from 'electron';
import type { Desk } from '../files/desk';
import { documentFileName } from '../files/file-name';

const FILTERS = [{ name: 'Reefwright project', extensions: ['reef.json', 'json'] }];

/** The desk of the desktop window: the system's own dialogs. */
export function dialogDesk(dialog: Dialog, app: App, window: () => BrowserWindow | undefined): Desk {
  let folder = app.getPath('documents');
  const remembered = (target: string | undefined) => {
    if (target !== undefined) folder = path.dirname(target);
    return target;
  };
  return {
    asksBeforeReplacing: true,
    chooseToOpen: async () => {
      const options = { defaultPath: folder, filters: FILTERS, properties: ['openFile' as const] };
      const parent = window();
      const chosen = parent
        ? await dialog.showOpenDialog(parent, options)
        : await dialog.showOpenDialog(options);
      return { path: remembered(chosen.filePaths[0]) };
    },
    chooseToSave: async name => {
      const options = { defaultPath: path.join(folder, documentFileName(name)), filters: FILTERS };
      const parent = window();
      const chosen = parent
        ? await dialog.showSaveDialog(parent, options)
        : await dialog.showSaveDialog(options);
      return chosen.canceled || chosen.filePath === '' ? undefined : remembered(chosen.filePath);
    },
    markEdited: (name, edited) => {
      const parent = window();
      parent?.setDocumentEdited(edited);
      parent?.setTitle(`${edited ? '• ' : ''}${name} - Reefwright`);
    },
  };
}
