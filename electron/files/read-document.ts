import fs from 'node:fs';
import { diskProblem, HostProblem } from '../problem';

/** The largest document that is opened. */
export const LARGEST_DOCUMENT = 50 * 1024 * 1024;

/**
 * Reads a document as text. The size is asked before anything is read; bytes that are not UTF-8 are refused
 * rather than repaired, because a repaired figure would be a different figure.
 * @throws HostProblem
 */
export async function readDocument(target: string): Promise<string> {
  const meaning = 'Nothing was opened.';
  let bytes: Uint8Array;
  try {
    const size = (await fs.promises.stat(target)).size;
    if (size > LARGEST_DOCUMENT) throw tooLarge(size);
    bytes = await fs.promises.readFile(target);
  } catch (cause) {
    if (cause instanceof HostProblem) throw cause;
    throw diskProblem(cause, meaning);
  }
  return decoded(bytes);
}

function decoded(bytes: Uint8Array): string {
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    if (!text.includes('\u0000')) return text;
  } catch (cause) {
    if (!(cause instanceof TypeError)) throw cause;
  }
  throw new HostProblem({
    code: 'file/not-text',
    message: 'The file is not UTF-8 text.',
    meaning: 'A project document is readable text. This is another kind of file, or it was damaged.',
    remedy: 'Choose a file that ends in .reef.json, or the copy kept beside it.',
  });
}

function tooLarge(size: number): HostProblem {
  const megabytes = Math.ceil(size / (1024 * 1024));
  return new HostProblem({
    code: 'file/too-large',
    message: `The file has ${megabytes} MB; 50 MB is the most that is opened.`,
    meaning: 'A project document is far smaller. This is another kind of file.',
    remedy: 'Choose a file that ends in .reef.json.',
  });
}
