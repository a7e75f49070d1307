import { BugError } from '../../base';

/** The entry of a list that must have it. @throws BugError when it has not. */
export function at<T>(list: ArrayLike<T>, index: number): T {
  const entry = list[index];
  if (entry === undefined) throw new BugError(`no entry ${index} in a list of ${list.length}`);
  return entry;
}
