import { readProject, writeProject } from '../core/project';
import { takeBackPreview } from '../core/papers';
import type { Answer, Request } from './channels';
import { HostProblem } from './problem';
import { takeBackFile } from './papers/take-back-file';

/**
 * Looks through a paper that came back and tells what it would change in the document of the window. Nothing is changed
 * here: the window shows the preview and takes the new text as one step when the person agrees.
 * @param reader where the built reader of papers lies; where there is none, as in a run from source, it is read here.
 * @throws HostProblem when the document of the window cannot be read.
 */
export async function returnedPaper(
  { name, base64, text }: Request<'take-back'>,
  reader: string | undefined,
): Promise<Answer<'take-back'>> {
  const { project } = readProject(text);
  if (project === undefined) throw unread();
  const { scenario, taken, findings } = await takeBackFile(
    project,
    { name, bytes: Buffer.from(base64, 'base64') },
    reader,
  );
  if (taken === undefined) return { findings };
  const title = project.scenarios.find(({ id }) => id === scenario)?.title ?? '';
  return {
    findings,
    preview: takeBackPreview(taken, { id: scenario ?? '', title }),
    ...(taken.edits.length > 0 && { text: writeProject(taken.project) }),
  };
}

function unread(): HostProblem {
  return new HostProblem({
    code: 'take-back/no-document',
    message: 'The document of the window cannot be read, so nothing can be taken back into it.',
    meaning: 'Nothing was changed.',
    remedy: 'Put right what Review lists first, then choose the paper again.',
  });
}
