import { existsSync, writeFileSync } from 'node:fs';
import { shippedLibrary } from '../../../core/evaluation';
import { copyForOthers, writeProject, type LeftOutBook } from '../../../core/project';
import { UsageError, type Command } from '../command';
import { fileOf, loadProject } from '../load';

const BOOKS: Readonly<Record<string, LeftOutBook>> = { bid: 'bid', owner: 'owner' };

export const copyCommand: Command = {
  name: 'copy',
  words:
    'A copy for someone else, without the bid book or without the owner’s book; lists what was left out.',
  usage: 'reefwright copy FILE --without bid|owner --out FILE',
  options: {
    without: {
      type: 'string',
      words: 'bid: no mark-ups, quotes, vendors, crews; owner: no estimate, funding, risk',
      sample: 'bid|owner',
    },
    out: { type: 'string', words: 'the file to write; an existing one is left alone', sample: 'FILE' },
  },
  run: call => {
    const book = BOOKS[call.option('without') ?? ''];
    if (book === undefined) throw new UsageError('--without takes one of: bid, owner.');
    const out = call.option('out');
    if (out === undefined)
      throw new UsageError('--out is needed: the file to write, such as copy.reef.json.');
    if (existsSync(out))
      throw new UsageError(`${out} is there already and was left alone. Choose another name.`);
    const { project, findings } = loadProject(fileOf(call));
    if (project === undefined) return { json: { findings }, lines: [], findings };
    const { project: copied, leftOut } = copyForOthers(project, book, shippedLibrary());
    writeFileSync(out, writeProject(copied), { flag: 'wx' });
    const lines = leftOut.map(each => `  ${each.place}: ${each.words} (${each.entries}): ${each.named}`);
    return { json: { file: out, leftOut }, lines: [`Wrote ${out}. Left out:`, ...lines], findings };
  },
};
