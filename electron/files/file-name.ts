const RESERVED = /^(con|prn|aux|nul|com[0-9]|lpt[0-9])$/i;

/**
 * A safe file name from a name a person gave: no separators, control or direction characters, no reserved
 * names, no dots at the ends, at most 120 characters, ending in `.reef.json`.
 */
export function documentFileName(name: string): string {
  const bare = name
    .replace(/\.reef\.json$/i, '')
    .normalize('NFC')
    .replace(/[\p{Cc}\p{Bidi_Control}<>:"/\\|?*]/gu, ' ')
    .replace(/\s+/g, ' ')
    .replace(/^[. ]+|[. ]+$/g, '')
    .slice(0, 100)
    .trim();
  const kept = bare === '' || RESERVED.test(bare) ? `project ${bare}`.trim() : bare;
  return `${kept}.reef.json`;
}
