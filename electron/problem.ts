import type { Problem, Reply } from './channels';

/** A problem of files, permissions or requests that is told to the user in words; thrown and caught at the channel. */
export class HostProblem extends Error {
  override readonly name = 'HostProblem';
  readonly problem: Problem;
  constructor(problem: Problem) {
    super(problem.message);
    this.problem = problem;
  }
}

/** The error code of a failed file operation, such as `ENOSPC`, or an empty text. */
export function errorCode(cause: unknown): string {
  if (cause instanceof Error && 'code' in cause && typeof cause.code === 'string') return cause.code;
  return '';
}

const diskWords: Record<string, { message: string; remedy: string }> = {
  ENOSPC: { message: 'The disk is full.', remedy: 'Free some space, or save to another disk.' },
  EDQUOT: {
    message: 'Your share of the disk is used up.',
    remedy: 'Free some space, or save to another disk.',
  },
  EACCES: { message: 'You may not write in that folder.', remedy: 'Choose another folder.' },
  EPERM: {
    message: 'You may not write in that folder.',
    remedy: 'Choose another folder, or close the other program that holds the file.',
  },
  EROFS: { message: 'The folder is read-only.', remedy: 'Choose another folder.' },
  ENOENT: { message: 'The file or its folder is no longer there.', remedy: 'Save it under a new name.' },
  EBUSY: { message: 'Another program holds the file.', remedy: 'Close it there and try again.' },
  ENAMETOOLONG: { message: 'The name is too long.', remedy: 'Choose a shorter name.' },
};

/** A failed file operation in words. A fault that is none of the file system's is a mistake of ours and goes on as it is. */
export function diskProblem(cause: unknown, meaning: string): HostProblem {
  const code = errorCode(cause);
  if (code === '') throw cause;
  const words = diskWords[code] ?? {
    message: `The file operation failed (${code}).`,
    remedy: 'Try again, or choose another folder.',
  };
  return new HostProblem({ code: `file/${code.toLowerCase()}`, meaning, ...words });
}

/** Runs a handler and turns what it throws into a problem in words. A fault of ours says so and loses nothing. */
export async function answered<T>(work: () => Promise<T> | T): Promise<Reply<T>> {
  try {
    return { ok: true, value: await work() };
  } catch (cause) {
    if (cause instanceof HostProblem) return { ok: false, problem: cause.problem };
    const message = cause instanceof Error ? cause.message : String(cause);
    return {
      ok: false,
      problem: {
        code: 'host/fault',
        message: `The program made a mistake: ${message}`,
        meaning: 'Nothing of your work is lost; what you asked for was not done.',
        remedy: 'Save under a new name and report what you did.',
      },
    };
  }
}
