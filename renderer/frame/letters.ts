const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';

/** The letter of a scenario by its place in the document. */
export function letterOf(place: number): string {
  return LETTERS.charAt(place);
}
