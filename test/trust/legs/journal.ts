import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { Journal, replay, withoutCheckSum } from '../../../electron/files/journal';
import { sequence, type Leg, type Outcome } from '../leg';
import { versionText } from '../version-text';

/** A journal of real edits, cut after every single byte: what is read back is the state before the torn edit. */
async function cutAnywhere(long: boolean): Promise<Outcome> {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'reefwright-journal-'));
  const file = path.join(folder, 'x.journal');
  const journal = new Journal(file);
  const random = sequence(3);
  const states: string[] = [];
  let text = versionText(1, long ? 20_000 : 2000);
  for (let edit = 0; edit < (long ? 60 : 15); edit++) {
    const at = Math.floor(random() * text.length);
    text = `${text.slice(0, at)}é${edit}${text.slice(at + Math.floor(random() * 40))}`;
    states.push(withoutCheckSum(text));
    await journal.keep('x', text, { place: '', base: '' });
  }
  const whole = fs.readFileSync(file);
  const ends = [...whole.entries()].flatMap(([at, byte]) => (byte === 10 ? [at] : []));
  const wrong: string[] = [];
  for (let length = 0; length <= whole.length; length++) {
    const entries = ends.filter(end => end < length).length;
    try {
      const found = replay(whole.subarray(0, length).toString('utf8'))?.text;
      if (found !== (entries === 0 ? undefined : states[entries - 1]))
        wrong.push(`cut after ${length} bytes`);
    } catch (cause) {
      wrong.push(`cut after ${length} bytes: ${String(cause)}`);
    }
  }
  fs.rmSync(folder, { recursive: true, force: true });
  return {
    ok: wrong.length === 0 && ends.length === states.length,
    words: `a journal of ${states.length} edits cut after each of its ${whole.length} bytes: ${wrong.length} wrong ${wrong.slice(0, 3).join('; ')}`,
  };
}

export const journalLegs: readonly Leg[] = [{ name: 'journal cut anywhere', run: cutAnywhere }];
