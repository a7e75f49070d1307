import type { PaperMaker } from './paper-room';

/**
 * Makes papers from the text of a document: the host evaluates it again, the same document and seed as the window.
 * The engine is loaded when the first paper is asked for, so that the window does not wait for it.
 */
export function paperMaker(today: () => string): PaperMaker {
  return async (request, folder) => {
    const { makePapers } = await import('./papers/make-papers');
    return makePapers(request, folder, today());
  };
}
