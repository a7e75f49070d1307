import type { z } from 'zod';
import { anyBlocks, type Finding } from '../base';
import { parseJsonText, type Json, type TextFault } from './json-text';
import { migrate } from './migrations';
import { FORMAT, VERSION, projectSchema, type Project } from './schema';
import { bodyHash } from './sha256';
import { issueFinding } from './wording';

/** What reading a document gives: the project when it can be worked with, and every finding. */
export interface ReadResult {
  readonly project?: Project;
  readonly findings: readonly Finding[];
  /** A newer version, or a body whose hash does not match: shown, never overwritten without asking. */
  readonly readOnly: boolean;
}

/** The largest document that is read, in characters. */
export const LARGEST = 50_000_000;

/**
 * Reads a `*.reef.json` document. Every fault is a finding with its place and what to do; nothing is dropped.
 * @param text the whole file as text.
 */
export function readProject(text: string): ReadResult {
  if (text.length > LARGEST) return refused(tooLarge(text.length));
  const parsed = parseJsonText(text);
  if ('fault' in parsed) return refused(textFinding(parsed.fault, text));
  const value = parsed.value;
  if (value === null || typeof value !== 'object' || Array.isArray(value) || value['format'] !== FORMAT)
    return refused(notADocument());
  const version = value['version'];
  if (typeof version === 'number' && version > VERSION)
    return { ...refused(newerVersion(version)), readOnly: true };
  const migrated = migrate(value);
  if ('finding' in migrated) return refused(migrated.finding);
  const result = projectSchema.safeParse(migrated.document, { reportInput: true });
  if (!result.success) return { findings: issueFindings(result.error), readOnly: false };
  const findings = hashFindings(value);
  return { project: result.data, findings, readOnly: anyBlocks(findings) };
}

function issueFindings(error: z.ZodError): Finding[] {
  return error.issues.map(issueFinding);
}

function refused(finding: Finding): ReadResult {
  return { findings: [finding], readOnly: false };
}

function hashFindings(document: { [key: string]: Json }): Finding[] {
  const stated = document['sha256'];
  if (stated === undefined || stated === bodyHash(document)) return [];
  return [
    {
      code: 'document/changed-outside',
      weight: 'notes',
      place: '/sha256',
      message: 'The content of the file does not match the check sum written with it.',
      meaning:
        'It was edited by hand or by another program, or damaged; the figures are worked out from what it says now.',
      remedy: 'Look through the inputs, then save: the check sum is written anew.',
    },
  ];
}

const FAULTS: Readonly<
  Record<TextFault['code'], { code: string; message: (fault: TextFault) => string; remedy: string }>
> = {
  syntax: {
    code: 'document/not-json',
    message: fault => `The text stops being JSON at line ${fault.line}, column ${fault.column}.`,
    remedy: 'If the file was cut short, open a backup copy; if it was edited by hand, correct that place.',
  },
  character: {
    code: 'document/bad-character',
    message: fault =>
      `Line ${fault.line}, column ${fault.column} holds a character that a text may not contain.`,
    remedy: 'Remove the character, or open a backup copy.',
  },
  depth: {
    code: 'document/too-deep',
    message: fault => `The nesting at line ${fault.line} is deeper than any project needs.`,
    remedy: 'Open a file that this program wrote.',
  },
  size: {
    code: 'document/too-long',
    message: fault => `Line ${fault.line} holds ${fault.saw}, more than any project needs.`,
    remedy: 'Open a file that this program wrote.',
  },
  'duplicate-key': {
    code: 'document/field-twice',
    message: fault => `The field "${fault.saw}" at line ${fault.line} is given twice.`,
    remedy: 'Keep one of the two; the program does not guess which is meant.',
  },
  'poisoned-key': {
    code: 'document/forbidden-field',
    message: fault => `The field name "${fault.saw}" at line ${fault.line} is not allowed in a document.`,
    remedy: 'Remove the field, or open a file that this program wrote.',
  },
  number: {
    code: 'document/number-out-of-range',
    message: fault => `The number ${fault.saw.slice(0, 24)} at line ${fault.line} cannot be held exactly.`,
    remedy: 'Write quantities and money as text with plain decimals, such as "1250.50".',
  },
};

function textFinding(fault: TextFault, text: string): Finding {
  if (text.trim() === '') return emptyFile();
  const words = FAULTS[fault.code];
  return {
    code: words.code,
    weight: 'blocks',
    place: fault.path,
    message: words.message(fault),
    meaning: NOT_OPENED,
    remedy: words.remedy,
  };
}

const NOT_OPENED = 'The file is not opened and not changed.';

function emptyFile(): Finding {
  return {
    code: 'document/empty',
    weight: 'blocks',
    place: '/',
    message: 'The file is empty.',
    meaning: NOT_OPENED,
    remedy: 'Open a backup copy, or start a new project.',
  };
}

function notADocument(): Finding {
  return {
    code: 'document/other-format',
    weight: 'blocks',
    place: '/format',
    message: 'This is not a Reefwright project: the field "format" does not say so.',
    meaning: NOT_OPENED,
    remedy: 'Choose a file ending in .reef.json that this program wrote.',
  };
}

function newerVersion(version: number): Finding {
  return {
    code: 'document/newer-version',
    weight: 'blocks',
    place: '/version',
    message: `The file is of version ${version}; this program knows versions up to ${VERSION}.`,
    meaning: 'It is not changed, and no figure is worked out from it.',
    remedy: 'Open it with the newer program it was written with, or ask for a copy of the older version.',
  };
}

function tooLarge(length: number): Finding {
  return {
    code: 'document/too-large',
    weight: 'blocks',
    place: '/',
    message: `The file holds ${length} characters; projects are far smaller than ${LARGEST}.`,
    meaning: NOT_OPENED,
    remedy: 'Check that it is the right file.',
  };
}
