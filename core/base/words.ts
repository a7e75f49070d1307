/** How words begin that keep their capital: with an acronym, as “PCB samples”, or with a name of several words, as “Coast Guard”. */
const KEPT = /^(\p{Lu}[\p{Lu}\d]|(?!(An?|The|No)\s)\p{Lu}\S*\s\p{Lu}\p{Ll})/u;

/** Words inside a sentence: the first letter small, but not that of an acronym or a name. No other letter changes. */
export function lowerFirst(words: string): string {
  return KEPT.test(words) ? words : `${words.charAt(0).toLowerCase()}${words.slice(1)}`;
}

/** Words at the beginning of a sentence or of a cell: the first letter large. */
export function upperFirst(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}
