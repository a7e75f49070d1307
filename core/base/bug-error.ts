/**
 * A fault of this program, never of the user's data. It is thrown, caught at one boundary (the worker or
 * the command line), and nothing of the user's work is lost. Faults of the data are findings instead.
 */
export class BugError extends Error {
  override readonly name = 'BugError';
}
