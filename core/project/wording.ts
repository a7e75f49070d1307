import type { z } from 'zod';
import type { Finding } from '../base';

type Issue = z.core.$ZodIssue;

/** A fault the schema found, as a finding in plain words with its place and remedy. */
export function issueFinding(issue: Issue): Finding {
  const place = '/' + issue.path.map(String).join('/');
  const saw =
    issue.input === undefined || typeof issue.input === 'object'
      ? ''
      : ` (it says ${JSON.stringify(issue.input).slice(0, 60)})`;
  const [code, message, remedy] = describe(issue, place);
  return {
    code,
    weight: 'blocks',
    place,
    message: `${message}${saw}.`,
    meaning: 'The project is not estimated until this is put right.',
    remedy,
  };
}

function describe(issue: Issue, place: string): [string, string, string] {
  switch (issue.code) {
    case 'unrecognized_keys':
      return [
        'document/unknown-field',
        `${place} has a field this version does not know: ${issue.keys.map(k => `"${k}"`).join(', ')}`,
        'Remove the field, or open the file with the program version that wrote it.',
      ];
    case 'invalid_type':
      if (issue.input === undefined) return missing(place);
      return [
        'document/wrong-kind',
        `${place} should be ${article(issue.expected)}`,
        `Write ${article(issue.expected)} there.`,
      ];
    case 'invalid_value':
      if (issue.input === undefined) return missing(place);
      return [
        'document/not-a-choice',
        `${place} should be one of ${issue.values.map(String).join(', ')}`,
        'Choose one of these words.',
      ];
    case 'invalid_format':
      return ['document/wrong-form', `${place}: ${issue.message}`, 'Write it in that form.'];
    case 'too_small':
      return beyond('document/too-small', place, issue.origin, Number(issue.minimum), BELOW);
    case 'too_big':
      return beyond('document/too-big', place, issue.origin, Number(issue.maximum), ABOVE);
    default:
      return [
        'document/does-not-fit',
        `${place}: ${issue.message}`,
        'Compare the place with a file this program wrote.',
      ];
  }
}

interface BeyondWords {
  readonly number: string;
  readonly entries: string;
  readonly text: string;
  readonly toNumber: string;
  readonly toEntries: string;
  readonly toText: string;
}

const BELOW: BeyondWords = {
  number: 'is less than',
  entries: 'has fewer entries than',
  text: 'is shorter than',
  toNumber: 'or more',
  toEntries: 'Add entries.',
  toText: 'Write more.',
};
const ABOVE: BeyondWords = {
  number: 'is more than',
  entries: 'has more entries than',
  text: 'is longer than',
  toNumber: 'or less',
  toEntries: 'Take entries out.',
  toText: 'Write less.',
};

/** A number, a text or a list beyond its limit. */
function beyond(
  code: string,
  place: string,
  origin: string,
  limit: number,
  words: BeyondWords,
): [string, string, string] {
  if (origin === 'string') {
    const letters = limit === 1 ? 'one letter' : `${limit} letters`;
    return [code, `${place} ${words.text} ${letters}`, words.toText];
  }
  if (origin === 'array' || origin === 'set' || origin === 'map')
    return [code, `${place} ${words.entries} ${limit}`, words.toEntries];
  return [code, `${place} ${words.number} ${limit}`, `Enter ${limit} ${words.toNumber}.`];
}

function missing(place: string): [string, string, string] {
  return ['document/missing-field', `${place} is missing`, howToAdd(place)];
}

function howToAdd(place: string): string {
  if (place.endsWith('/unit'))
    return 'State the unit, such as "ft", "m", "long-ton" or "t": a number without a unit is not used.';
  if (place.endsWith('/basis'))
    return 'State where the number comes from, such as "surveyed", "quoted" or "judgement".';
  return 'Add it.';
}

function article(expected: string): string {
  return /^[aeiou]/.test(expected) ? `an ${expected}` : `a ${expected}`;
}
