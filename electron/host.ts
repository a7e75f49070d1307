import { extname } from 'node:path';
import { z } from 'zod';
import type { Answer, ChannelName, Request, Reply } from './channels';
import { settingsSchema } from './files/app-folder';
import { EVERY_PAPER } from './papers/kinds';
import type { HostDocuments } from './files/documents';
import type { PaperRoom } from './paper-room';
import { answered } from './problem';

/** One channel: what a question must look like, and who answers it. */
export interface Channel {
  readonly answer: (question: unknown) => Promise<Reply<unknown>>;
}
export type ChannelMap = ReadonlyMap<string, Channel>;

const nothing = z.strictObject({});
const id = z.strictObject({ id: z.string().regex(/^[0-9a-f]{24}$/) });
const text = z.string().max(50 * 1024 * 1024);
const name = z.string().min(1).max(200);
const recoveryKey = z.string().regex(/^[a-z0-9]{8,40}$/);
const paperKinds = z.array(z.enum(EVERY_PAPER)).max(EVERY_PAPER.length);

/** The shape of every question. A question of another shape never reaches its handler. */
export const QUESTIONS = {
  about: nothing,
  'read-settings': nothing,
  'write-settings': settingsSchema,
  'opened-at-start': nothing,
  'open-document': nothing,
  'open-listed': id,
  'recent-documents': nothing,
  'clear-recent': nothing,
  'read-sample': z.strictObject({ sample: z.string().regex(/^[a-z0-9-]{1,60}$/) }),
  'save-document': z.strictObject({ id: id.shape.id, text, overwrite: z.boolean() }),
  'save-document-as': z.strictObject({ name, text, replace: z.boolean() }),
  'take-over': id,
  'close-document': id,
  'write-recovery': z.strictObject({
    key: recoveryKey,
    name,
    text,
    id: z.string().regex(/^([0-9a-f]{24})?$/),
  }),
  'discard-recovery': z.strictObject({ key: recoveryKey }),
  'list-recovery': nothing,
  'read-recovery': z.strictObject({ key: recoveryKey }),
  'make-papers': z.strictObject({ text, scenario: z.string().max(80), only: paperKinds }),
  'read-paper': id,
  'read-table': z.strictObject({ name, base64: z.string().max(28 * 1024 * 1024) }),
  'take-back': z.strictObject({ name, base64: z.string().max(40 * 1024 * 1024), text }),
  'mark-edited': z.strictObject({ name, edited: z.boolean() }),
} satisfies { [C in ChannelName]: z.ZodType<Request<C>> };

type Handlers = { [C in ChannelName]: (question: Request<C>) => Promise<Answer<C>> | Answer<C> };

export interface HostParts {
  readonly documents: HostDocuments;
  readonly papers: PaperRoom;
  readonly about: () => Answer<'about'>;
  /** Where the built reader of tables lies, which reads each in a thread of its own. */
  readonly tableReader?: string;
  /** Where the built reader of papers that come back lies. */
  readonly paperReader?: string;
}

function handlersOf({ documents, papers, about, tableReader, paperReader }: HostParts): Handlers {
  return {
    about,
    'read-settings': () => documents.readSettings(),
    'write-settings': question => documents.writeSettings(question),
    'opened-at-start': () => documents.openedAtStart(),
    'open-document': () => documents.open(),
    'open-listed': question => documents.openListed(question.id),
    'recent-documents': () => documents.recent(),
    'clear-recent': () => documents.clearRecent(),
    'read-sample': question => documents.sample(question.sample),
    'save-document': question => documents.save(question.id, question.text, question.overwrite),
    'save-document-as': question => documents.saveAs(question.name, question.text, question.replace),
    'take-over': question => documents.takeOver(question.id),
    'close-document': question => documents.closeDocument(question.id),
    'write-recovery': question =>
      documents.writeRecovery(question.key, question.name, question.text, question.id),
    'discard-recovery': question => documents.discardRecovery(question.key),
    'list-recovery': () => documents.listRecovery(),
    'read-recovery': question => documents.readRecovery(question.key),
    'make-papers': question => papers.make(question),
    'read-paper': question => papers.read(question.id),
    'read-table': question => tableOf(question, tableReader),
    'take-back': question => returned(question, paperReader),
    'mark-edited': question => documents.markEdited(question.name, question.edited),
  };
}

/** The rows of a table file that the window was given: its text, never its path. */
async function tableOf(
  { name: file, base64 }: Request<'read-table'>,
  reader: string | undefined,
): Promise<Answer<'read-table'>> {
  const { readTableApart } = await import('./imports/table-thread');
  return {
    rows: await readTableApart(reader, { bytes: Buffer.from(base64, 'base64'), extension: extname(file) }),
  };
}

/** A paper that came back, with the text of the document it belongs to. */
async function returned(
  question: Request<'take-back'>,
  reader: string | undefined,
): Promise<Answer<'take-back'>> {
  const { returnedPaper } = await import('./paper-returns');
  return returnedPaper(question, reader);
}

function channel<Q>(schema: z.ZodType<Q>, handler: (question: Q) => unknown): Channel {
  return {
    answer: question => {
      const parsed = schema.safeParse(question);
      if (parsed.success) return answered(() => handler(parsed.data));
      return Promise.resolve({
        ok: false,
        problem: {
          code: 'host/question',
          message: `The question has another shape than this channel takes: ${z.prettifyError(parsed.error)}`,
          meaning: 'Nothing was done.',
          remedy: 'Start the program again; if it comes back, report it.',
        },
      });
    },
  };
}

/** The one map of channels that both shells serve. */
export function hostChannels(parts: HostParts): ChannelMap {
  const handlers = handlersOf(parts);
  const made = new Map<string, Channel>();
  const add = <C extends ChannelName>(key: C, schema: z.ZodType<Request<C>>) => {
    made.set(key, channel(schema, handlers[key]));
  };
  add('about', QUESTIONS.about);
  add('read-settings', QUESTIONS['read-settings']);
  add('write-settings', QUESTIONS['write-settings']);
  add('opened-at-start', QUESTIONS['opened-at-start']);
  add('open-document', QUESTIONS['open-document']);
  add('open-listed', QUESTIONS['open-listed']);
  add('recent-documents', QUESTIONS['recent-documents']);
  add('clear-recent', QUESTIONS['clear-recent']);
  add('read-sample', QUESTIONS['read-sample']);
  add('save-document', QUESTIONS['save-document']);
  add('save-document-as', QUESTIONS['save-document-as']);
  add('take-over', QUESTIONS['take-over']);
  add('close-document', QUESTIONS['close-document']);
  add('write-recovery', QUESTIONS['write-recovery']);
  add('discard-recovery', QUESTIONS['discard-recovery']);
  add('list-recovery', QUESTIONS['list-recovery']);
  add('read-recovery', QUESTIONS['read-recovery']);
  add('make-papers', QUESTIONS['make-papers']);
  add('read-paper', QUESTIONS['read-paper']);
  add('read-table', QUESTIONS['read-table']);
  add('take-back', QUESTIONS['take-back']);
  add('mark-edited', QUESTIONS['mark-edited']);
  return made;
}
