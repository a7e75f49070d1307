/** A fault put into a copy of the source, and the test that must see it. */
export interface PlantedBug {
  /** The promise of the program that the fault breaks. */
  readonly promise: string;
  readonly file: string;
  /** Text that stands in the file exactly once, and what takes its place. */
  readonly find: string;
  readonly put: string;
  readonly test: string;
  /** Words of the name of the test that must turn red. */
  readonly name: string;
}

/** A table of faults: promise, file, text, replacement, test file, words of its name. */
export function bugs(
  ...rows: readonly (readonly [string, string, string, string, string, string])[]
): PlantedBug[] {
  return rows.map(([promise, file, find, put, test, name]) => ({ promise, file, find, put, test, name }));
}
