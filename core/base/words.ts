/** Words inside a sentence: the first letter small, but not that of an acronym such as “PCB samples”. */
export function lowerFirst(words: string): string {
  return /^\p{Lu}[\p{Lu}\d]/u.test(words) ? words : `${words.charAt(0).toLowerCase()}${words.slice(1)}`;
}

/** Words at the beginning of a sentence or of a cell: the first letter large. */
export function upperFirst(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}
