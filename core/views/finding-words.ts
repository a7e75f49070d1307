import type { Finding } from '../base';

/** A finding as sentences: what is so, what it means, what to do. */
export function findingWords({ message, meaning, remedy }: Finding): string {
  return [message, meaning, remedy]
    .filter(part => part !== undefined)
    .map(part => `${part.charAt(0).toUpperCase()}${part.slice(1)}${/[.!?]$/.test(part) ? '' : '.'}`)
    .join(' ');
}
