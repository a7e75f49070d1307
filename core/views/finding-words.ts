import type { Finding } from '../base';

/** A finding as sentences: what is so, what it means, what to do. */
export function findingWords({ message, meaning, remedy }: Finding): string {
  return [message, meaning, remedy]
    .filter(part => part !== undefined)
    .map(asSentence)
    .join(' ');
}

/** Words with a capital and a full stop. */
export function asSentence(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}${/[.!?]$/.test(words) ? '' : '.'}`;
}

/** A title inside a sentence: its first letter small, unless it begins an abbreviation. */
export function lowered(title: string): string {
  return /^[A-Z][A-Z]/.test(title) ? title : title.charAt(0).toLowerCase() + title.slice(1);
}
