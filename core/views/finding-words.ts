import { upperFirst, type Finding } from '../base';

/** A finding as sentences: what is so, what it means, what to do. */
export function findingWords({ message, meaning, remedy }: Finding): string {
  return [message, meaning, remedy]
    .filter(part => part !== undefined)
    .map(asSentence)
    .join(' ');
}

/** Words with a capital and a full stop. */
export function asSentence(words: string): string {
  return `${upperFirst(words)}${/[.!?]$/.test(words) ? '' : '.'}`;
}
