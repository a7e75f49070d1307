import type { IpcMain, IpcMainInvokeEvent, WebContents } from 'electron';
import type { Reply } from '../channels';
import type { ChannelMap } from '../host';
import { isOwnAddress } from './policy';

/** The longest question a window may send. */
const LONGEST = 52 * 1024 * 1024;

/** Whether a question comes from the main frame of a known window, showing our own page. */
export function isTrusted(event: IpcMainInvokeEvent, known: ReadonlySet<WebContents>): boolean {
  const frame = event.senderFrame;
  if (frame === null || frame.parent !== null) return false;
  return known.has(event.sender) && isOwnAddress(frame.url);
}

const refused: Reply<never> = {
  ok: false,
  problem: {
    code: 'host/sender',
    message: 'The question did not come from the window of this program.',
    meaning: 'It was not answered.',
    remedy: 'Start the program again; if it comes back, report it.',
  },
};

function isTooLong(question: unknown): boolean {
  if (question === null || typeof question !== 'object') return false;
  return Object.values(question).some(value => typeof value === 'string' && value.length > LONGEST);
}

/** Registers every channel through one door that checks who asks and how much. */
export function handleChannels(ipc: IpcMain, channels: ChannelMap, known: ReadonlySet<WebContents>): void {
  for (const [name, channel] of channels) {
    ipc.handle(name, (event, question: unknown) =>
      !isTrusted(event, known) || isTooLong(question) ? refused : channel.answer(question),
    );
  }
}
