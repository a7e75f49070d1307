import { randomBytes } from 'node:crypto';
import fs from 'node:fs';
import path from 'node:path';
import type { Answer, MadePaper, Request } from './channels';
import { HostProblem } from './problem';

/** What writes the papers of a document into a folder and names them. */
export type PaperMaker = (request: Request<'make-papers'>, folder: string) => Promise<readonly string[]>;

/** Where papers are made: a folder of the host's own, from which the window fetches them by id. */
export class PaperRoom {
  readonly #maker: PaperMaker | undefined;
  readonly #folder: string;
  readonly #made = new Map<string, string>();

  constructor(folder: string, maker: PaperMaker | undefined) {
    this.#folder = folder;
    this.#maker = maker;
  }

  async make(request: Request<'make-papers'>): Promise<readonly MadePaper[]> {
    if (this.#maker === undefined) throw noMaker();
    const folder = path.join(this.#folder, randomBytes(6).toString('hex'));
    await fs.promises.mkdir(folder, { recursive: true });
    const names = await this.#maker(request, folder);
    return names.map(name => {
      const target = path.join(folder, path.basename(name));
      const id = randomBytes(12).toString('hex');
      this.#made.set(id, target);
      return { id, name: path.basename(name), bytes: fs.statSync(target).size };
    });
  }

  async read(id: string): Promise<Answer<'read-paper'>> {
    const target = this.#made.get(id);
    if (target === undefined) throw noPaper();
    return { name: path.basename(target), base64: (await fs.promises.readFile(target)).toString('base64') };
  }
}

function noMaker(): HostProblem {
  return new HostProblem({
    code: 'papers/none',
    message: 'This build makes no papers.',
    meaning: 'The estimate is complete; only the files to hand over are missing.',
    remedy: 'Use the command line: reefwright documents FILE --out FOLDER.',
  });
}

function noPaper(): HostProblem {
  return new HostProblem({
    code: 'papers/unknown',
    message: 'That paper was not made in this session.',
    meaning: 'Nothing was read.',
    remedy: 'Make the papers again.',
  });
}
