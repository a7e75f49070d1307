import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { AppFolder } from '../../electron/files/app-folder';
import { folderDesk } from '../../electron/files/desk';
import { HostDocuments } from '../../electron/files/documents';
import { hostChannels, type ChannelMap } from '../../electron/host';
import { PaperRoom } from '../../electron/paper-room';

/** A folder of the test's own. */
export function newFolder(): string {
  return fs.mkdtempSync(path.join(os.tmpdir(), 'reefwright-test-'));
}

/** The real channels over a folder of the test's own. */
export function realChannels(folder: string): ChannelMap {
  const documents = new HostDocuments({
    desk: folderDesk(path.join(folder, 'documents')),
    appFolder: new AppFolder(path.join(folder, 'app')),
    samples: path.join(folder, 'samples'),
  });
  return hostChannels({
    documents,
    papers: new PaperRoom(path.join(folder, 'papers'), undefined),
    about: () => ({ shell: 'browser', version: '0', platform: 'test', today: '2027-01-04' }),
  });
}

export const CHANNEL_NAMES = [
  'about',
  'read-settings',
  'write-settings',
  'opened-at-start',
  'open-document',
  'open-listed',
  'recent-documents',
  'clear-recent',
  'read-sample',
  'save-document',
  'save-document-as',
  'take-over',
  'close-document',
  'write-recovery',
  'discard-recovery',
  'list-recovery',
  'read-recovery',
  'make-papers',
  'read-paper',
  'read-table',
  'take-back',
  'mark-edited',
];
