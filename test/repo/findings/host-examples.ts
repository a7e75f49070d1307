import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import type { IpcMain, IpcMainInvokeEvent } from 'electron';
import { loadProject } from '../../../electron/cli/load';
import { saveAtomically } from '../../../electron/files/atomic-save';
import { readDocument } from '../../../electron/files/read-document';
import { readXlsx } from '../../../electron/imports/read-table';
import { readTableApart } from '../../../electron/imports/table-thread';
import { paperMaker } from '../../../electron/paper-maker';
import { PaperRoom } from '../../../electron/paper-room';
import { writePapers } from '../../../electron/papers/paper-set';
import { takeBackFile } from '../../../electron/papers/take-back-file';
import { answered, diskProblem, HostProblem } from '../../../electron/problem';
import { handleChannels } from '../../../electron/window/secure-handle';
import { INPUT_HEADS, stampText } from '../../../core/papers';
import { demoProject, evaluated } from '../../core/evaluation/demo';
import { realChannels } from '../../electron/support';
import { zipped } from '../../trust/legs/workbooks';
import { examples, type Told } from './example';

const folder = () => fs.mkdtempSync(path.join(os.tmpdir(), 'reefwright-example-'));
/** A file of these bytes. */
const file = (bytes: string | Uint8Array, name = 'x.reef.json') => {
  const target = path.join(folder(), name);
  fs.writeFileSync(target, bytes);
  return target;
};
/** The problem that some work throws. */
const thrown = (work: () => unknown) => async (): Promise<readonly Told[]> => {
  try {
    await work();
    return [];
  } catch (cause) {
    if (cause instanceof HostProblem) return [cause.problem];
    throw cause;
  }
};
/** The problem that a channel answers with. */
const asked = (channel: string, question: unknown) => async (): Promise<readonly Told[]> => {
  const reply = await realChannels(folder()).get(channel)?.answer(question);
  return reply === undefined || reply.ok ? [] : [reply.problem];
};
const disk = (code: string) => () => [
  diskProblem(
    Object.assign(new Error(code), { code }),
    'The file on disk is still the version before. Your edits stay open here.',
  ).problem,
];
const bytesOf = (buffer: Uint8Array) => new Uint8Array(buffer).buffer;
const ID = '0'.repeat(24);
const circle = () =>
  evaluated({ ...demoProject(), relationships: [{ from: 'ocean-tow', to: 'tank-washing', kind: 'FS' }] });

export const fileExamples = examples(
  [
    'document/cannot-be-read',
    'the command line asked for a file that is not there',
    () => loadProject('/no/such.reef.json').findings,
  ],
  ['document/not-text', 'a file of the byte 255', () => loadProject(file(Uint8Array.of(255))).findings],
  ['file/enospc', 'a save to a full disk', disk('ENOSPC')],
  ['file/edquot', 'a save beyond one’s share of the disk', disk('EDQUOT')],
  ['file/eacces', 'a save into a folder of somebody else', disk('EACCES')],
  ['file/eperm', 'a save over a file that is held', disk('EPERM')],
  ['file/erofs', 'a save to a read-only disk', disk('EROFS')],
  ['file/enoent', 'a document whose folder is gone', thrown(() => readDocument('/no/such.reef.json'))],
  ['file/ebusy', 'a save over a file in use', disk('EBUSY')],
  [
    'file/enametoolong',
    'a name of 300 letters',
    thrown(() => saveAtomically(path.join(folder(), 'x'.repeat(300)), 'x')),
  ],
  ['file/eio', 'a disk that fails', disk('EIO')],
  ['file/no-recovery', 'kept work that is gone', asked('read-recovery', { key: 'aaaabbbbcccc' })],
  ['file/not-text', 'a document of the byte 255', thrown(() => readDocument(file(Uint8Array.of(255))))],
  [
    'file/read-back-differs',
    'a file that reads back as something else',
    thrown(async () => {
      const real = fs.promises.readFile;
      fs.promises.readFile = (() => Promise.resolve(Buffer.from('something else'))) as unknown as typeof real;
      try {
        await saveAtomically(path.join(folder(), 'x.reef.json'), 'text');
      } finally {
        fs.promises.readFile = real;
      }
    }),
  ],
  [
    'file/too-large',
    'a document of 51 MB',
    thrown(() => {
      const target = file('x');
      fs.truncateSync(target, 51 * 1024 * 1024);
      return readDocument(target);
    }),
  ],
  ['file/unknown', 'a document by an id that was never handed out', asked('open-listed', { id: ID })],
  [
    'file/table-refused',
    'a table of more than 20 MB',
    thrown(() => readTableApart(undefined, { bytes: new Uint8Array(21 * 1024 * 1024), extension: '.csv' })),
  ],
  [
    'file/workbook-refused',
    'text called a workbook',
    thrown(() => readXlsx(bytesOf(Buffer.from('Sample,Result')))),
  ],
  [
    'file/workbook-unreadable',
    'a workbook of empty parts',
    thrown(() =>
      readXlsx(
        bytesOf(
          zipped(
            ['[Content_Types].xml', 'xl/workbook.xml', 'xl/_rels/workbook.xml.rels'].map(name => ({
              name,
              data: Buffer.from('<a><b>'),
            })),
          ),
        ),
      ),
    ),
  ],
);

export const hostExamples = examples(
  [
    'host/fault',
    'a handler that fails',
    async () => {
      const reply = await answered(() => {
        throw new Error('made up');
      });
      return reply.ok ? [] : [reply.problem];
    },
  ],
  ['host/question', 'a question with a path in it', asked('read-settings', { path: '/etc/passwd' })],
  [
    'host/sender',
    'a question from a frame that is gone',
    async () => {
      const handlers = new Map<string, (event: IpcMainInvokeEvent, question: unknown) => unknown>();
      const ipc = {
        handle: (name: string, handler: (event: IpcMainInvokeEvent, question: unknown) => unknown) =>
          handlers.set(name, handler),
      };
      handleChannels(ipc as unknown as IpcMain, realChannels(folder()), new Set());
      const reply = (await handlers.get('about')?.(
        { senderFrame: null } as unknown as IpcMainInvokeEvent,
        {},
      )) as { ok: boolean; problem: Told };
      return reply.ok ? [] : [reply.problem];
    },
  ],
  [
    'papers/none',
    'a build without a maker of papers',
    thrown(() => new PaperRoom(folder(), undefined).make({ text: '', scenario: '', only: [] })),
  ],
  ['papers/unknown', 'a paper by an id that was never handed out', asked('read-paper', { id: ID })],
  [
    'papers/withheld',
    'papers of an empty document',
    thrown(() => paperMaker(() => '2026-11-24')({ text: '', scenario: '', only: ['json'] }, folder())),
  ],
  [
    'papers/no-estimate',
    'a calendar of work that waits for itself in a circle',
    async () => (await writePapers(circle(), folder(), ['calendar'])).findings,
  ],
  [
    'papers/no-grant',
    'the grant file of a project that names no source of money',
    async () => {
      const unfunded = { ...demoProject(), funding: undefined };
      return (await writePapers(evaluated(unfunded), folder(), ['grant-file'])).findings;
    },
  ],
  [
    'papers/no-chromium',
    'a report where no browser is on the path',
    async () => {
      const { PATH, CHROMIUM } = process.env;
      process.env['PATH'] = folder();
      delete process.env['CHROMIUM'];
      try {
        return (await writePapers(evaluated(demoProject()), folder(), ['report'])).findings;
      } finally {
        process.env['PATH'] = PATH;
        if (CHROMIUM !== undefined) process.env['CHROMIUM'] = CHROMIUM;
      }
    },
  ],
  [
    'take-back/no-document',
    'a paper taken back into a document that cannot be read',
    asked('take-back', { name: 'x.csv', base64: '', text: '' }),
  ],
  [
    'take-back/cannot-be-read',
    'text called a workbook, and a reader that fails',
    async () => {
      const reader = file('process.exit(1)', 'reader.mjs');
      const outcome = await takeBackFile(
        demoProject(),
        { name: 'x.xlsx', bytes: Buffer.from('text') },
        new URL(`file://${reader}`),
      );
      return outcome.findings;
    },
  ],
  [
    'take-back/no-scenario',
    'a paper of a scenario that the project does not have',
    async () => {
      const stamp = stampText({ document: 'abc', scenario: 'no-such', dated: '2026-11-24' });
      const csv = `"${stamp}"\n\n\n\n${INPUT_HEADS.join(',')}\n`;
      return (
        await takeBackFile(demoProject(), { name: 'x.csv', bytes: Buffer.from(csv) }, new URL('file:///none'))
      ).findings;
    },
  ],
);
