/** The most octets a line of a calendar file may have before its line break. @source RFC 5545, section 3.1. */
const LONGEST = 75;

/**
 * Folds one content line so that no line has more than 75 octets, never inside a character.
 * @returns the line with its breaks, ended by CR and LF.
 * @source RFC 5545, section 3.1: a long line goes on after CR, LF and one space.
 */
export function folded(line: string): string {
  const lines: string[] = [];
  let current = '';
  let octets = 0;
  for (const character of line) {
    const size = octetsOf(character);
    if (octets + size > LONGEST) {
      lines.push(current);
      current = ' ';
      octets = 1;
    }
    current += character;
    octets += size;
  }
  return [...lines, current].join('\r\n') + '\r\n';
}

/** Octets of one character in UTF-8. @source RFC 3629, section 3. */
function octetsOf(character: string): number {
  const point = Number(character.codePointAt(0));
  if (point < 0x80) return 1;
  if (point < 0x800) return 2;
  return point < 0x10000 ? 3 : 4;
}

/**
 * Text as a value: backslash first, then semicolon, comma and line break; other control characters are left out.
 * @source RFC 5545, section 3.3.11.
 */
export function escapedText(words: string): string {
  return wellFormed(words)
    .replaceAll('\\', '\\\\')
    .replaceAll(';', '\\;')
    .replaceAll(',', '\\,')
    .replace(/\r\n|\r|\n/g, '\\n')
    .replace(/\p{Cc}/gu, character => (character === '\t' ? character : ''));
}

/** Halves of a character that lost its other half are replaced: UTF-8 has no form for them. */
function wellFormed(words: string): string {
  return words.replace(/[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g, '\ufffd');
}
