import { readFileSync } from 'node:fs';
import ts from 'typescript';
import review from '../../../templates/review.json';
import { sourceFiles } from '../files';

/** A code of a finding and the file that makes it. */
export interface FoundCode {
  readonly code: string;
  readonly file: string;
}

/** First halves of codes: the module, or the part of the document, that a finding is about. */
export const SUBJECTS: ReadonlySet<string> = new Set([
  'benefit',
  'bid',
  'books',
  'calendar',
  'cash',
  'document',
  'estimate',
  'file',
  'funding',
  'given',
  'goals',
  'host',
  'imports',
  'items',
  'money',
  'network',
  'papers',
  'quotes',
  'rates',
  'review',
  'risk',
  'rules',
  'scenario',
  'schedule',
  'sheet',
  'survey',
  'take-back',
  'templates',
  'towing',
  'units',
  'upright',
  'verify',
]);

/** Texts of the same form that are places and headings, no codes. */
const NOT_CODES: ReadonlySet<string> = new Set([
  'bid/alternates',
  'bid/lines',
  'bid/offer',
  'items/fields',
  'rates/overrides',
  'rates/wages',
  'templates/materials',
]);

/** Functions that put a subject before the code they are given: file, function, place of the code, what goes before. */
const MAKERS: readonly (readonly [string, string, number, string])[] = [
  ['core/scheduling/check/', 'fault', 0, 'schedule/'],
  ['core/scheduling/check/', 'unknown', 0, 'schedule/unknown-'],
  ['core/scheduling/verify/', 'wrong', 0, 'verify/'],
  ['core/scheduling/verify/', 'say', 0, 'verify/'],
  ['core/project/check-funding.ts', 'blocked', 0, 'funding/'],
  ['core/project/check.ts', 'unknown', 3, 'document/unknown-'],
];

/** Codes put together from parts elsewhere, each with the words of the template and the codes it can give. */
const COMPOSED: readonly (readonly [string, string, readonly string[]])[] = [
  ['core/materials/laboratory.ts', 'survey/', ['survey/reporting-limit-too-high', 'survey/no-result']],
  ['core/review/review.ts', 'review/', review.practices.map(({ id }) => `review/${id}`)],
  [
    'electron/problem.ts',
    'file/',
    ['enospc', 'edquot', 'eacces', 'eperm', 'erofs', 'enoent', 'ebusy', 'enametoolong', 'eio'].map(
      code => `file/${code}`,
    ),
  ],
];
/** The templates of the makers above, which the calls of those functions fill. */
const FILLED = new Set(['schedule/', 'verify/', 'funding/', 'document/unknown-', 'unknown-']);

const CODE = /^([a-z-]+)\/[a-z][a-z0-9-]*$/;

/** Every code of a finding in the source, and what looks like one and is not understood. */
export function codesInSource(): { codes: FoundCode[]; notUnderstood: string[] } {
  const codes = new Map<string, string>();
  const notUnderstood: string[] = [];
  const add = (code: string, file: string) => {
    if (!codes.has(code)) codes.set(code, file);
  };
  for (const { path, text } of [...sourceFiles('core'), ...sourceFiles('electron')]) {
    if (path.startsWith('core/views/')) continue;
    const source = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
    const visit = (node: ts.Node): void => {
      if (ts.isStringLiteralLike(node)) {
        const subject = CODE.exec(node.text)?.[1];
        if (subject !== undefined && SUBJECTS.has(subject) && !NOT_CODES.has(node.text)) add(node.text, path);
        else if (subject !== undefined && isCodeProperty(node)) notUnderstood.push(`${path}: ${node.text}`);
      }
      if (ts.isTemplateExpression(node) && isCodeProperty(node)) {
        const composed = COMPOSED.find(([file, head]) => file === path && head === node.head.text);
        for (const code of composed?.[2] ?? []) add(code, path);
        if (composed === undefined && !FILLED.has(node.head.text))
          notUnderstood.push(`${path}: ${node.getText()}`);
      }
      if (ts.isCallExpression(node) && ts.isIdentifier(node.expression)) {
        const called = node.expression.text;
        const maker = MAKERS.find(([file, name]) => path.startsWith(file) && name === called);
        const given = maker && node.arguments[maker[2]];
        if (maker !== undefined && given !== undefined && ts.isStringLiteralLike(given))
          add(`${maker[3]}${given.text.replaceAll(' ', '-')}`, path);
      }
      ts.forEachChild(node, visit);
    };
    visit(source);
  }
  return {
    codes: [...codes].map(([code, file]) => ({ code, file })).sort((a, b) => (a.code < b.code ? -1 : 1)),
    notUnderstood,
  };
}

function isCodeProperty(node: ts.Node): boolean {
  const { parent } = node;
  return ts.isPropertyAssignment(parent) && parent.name.getText() === 'code' && parent.initializer === node;
}

/** The file in which examples of a subject stand, for the page. */
export function fileOfExamples(
  code: string,
  files: readonly (readonly [string, readonly string[]])[],
): string {
  return files.find(([, codes]) => codes.includes(code))?.[0] ?? '';
}

/** A text file of the project. */
export const textOf = (path: string): string => readFileSync(path, 'utf8');
