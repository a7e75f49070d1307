/** The name of a figure of the grant budget: its parts, none of which holds the mark between them. */
export function grantId(...parts: readonly string[]): string {
  return `grant:${parts.join('|')}`;
}
