import { createHash, randomBytes } from 'node:crypto';
import fs from 'node:fs';
import path from 'node:path';
import type { ListedDocument } from '../channels';
import { HostProblem } from '../problem';

interface Place {
  readonly path: string;
  /** Hash of the content as last read or written here; a different one on disk means someone else wrote. */
  readonly hash: string;
}

/** The places of documents, known to the window by opaque ids only. */
export class Shelf {
  readonly #places = new Map<string, Place>();

  /** The id of a place, made at first mention. */
  put(target: string, hash = ''): string {
    const full = path.resolve(target);
    for (const [id, place] of this.#places) {
      if (place.path !== full) continue;
      this.#places.set(id, { path: full, hash: hash === '' ? place.hash : hash });
      return id;
    }
    const id = randomBytes(12).toString('hex');
    this.#places.set(id, { path: full, hash });
    return id;
  }

  /** @throws HostProblem when the id was never handed out. */
  get(id: string): Place {
    const place = this.#places.get(id);
    if (place !== undefined) return place;
    throw new HostProblem({
      code: 'file/unknown',
      message: 'This window was never given that document.',
      meaning: 'Nothing was read or written.',
      remedy: 'Open the document again.',
    });
  }
}

/** Whether the file on disk is still the one this session read or wrote. A file that is gone counts as unchanged. */
export async function isUnchanged(place: Place): Promise<boolean> {
  if (place.hash === '') return true;
  try {
    const bytes = await fs.promises.readFile(place.path);
    return createHash('sha256').update(bytes).digest('hex') === place.hash;
  } catch {
    return true;
  }
}

/** A document as the window may see it: name and last folder, no path. */
export function listed(shelf: Shelf, target: string): ListedDocument {
  const base = {
    id: shelf.put(target),
    name: path.basename(target),
    folder: path.basename(path.dirname(target)),
  };
  try {
    return { ...base, modified: fs.statSync(target).mtime.toISOString(), missing: false };
  } catch {
    return { ...base, modified: '', missing: true };
  }
}
