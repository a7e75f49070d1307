import { describe, expect, test } from 'vitest';
import { checkWorkbook } from '../../electron/imports/workbook-limits';
import { HostProblem } from '../../electron/problem';
import { zipped } from '../trust/legs/workbooks';

const PARTS = ['[Content_Types].xml', 'xl/workbook.xml'].map(name => ({ name, data: Buffer.from('<a/>') }));
const xml = (text: string | Buffer) =>
  zipped([
    PARTS[0] ?? { name: '', data: Buffer.alloc(0) },
    { name: 'xl/workbook.xml', data: Buffer.from(text) },
  ]);

async function said(bytes: Uint8Array): Promise<string> {
  try {
    await checkWorkbook(bytes);
    return 'taken';
  } catch (cause) {
    if (cause instanceof HostProblem) return cause.problem.message;
    throw cause;
  }
}

describe('before a workbook is read', () => {
  test('a plain one is taken', async () => {
    expect(await said(zipped(PARTS))).toBe('taken');
  });

  test.each([
    ['a document type', xml('<!DOCTYPE x><a/>'), /document type/],
    ['an entity', xml('<!ENTITY e "x"><a/>'), /document type/],
    ['a document type in UTF-16', xml(Buffer.from('\uFEFF<!DOCTYPE x><a/>', 'utf16le')), /document type/],
    ['a part that unpacks to 60 MB of zeros', xml(Buffer.alloc(60 * 1024 * 1024)), /200 times its size/],
    [
      '2,001 parts',
      zipped([
        ...PARTS,
        ...Array.from({ length: 2000 }, (_, n) => ({ name: `xl/${n}`, data: Buffer.alloc(1) })),
      ]),
      /more than 2,000 parts/,
    ],
    ['macros', zipped([...PARTS, { name: 'xl/vbaProject.bin', data: Buffer.from('x') }]), /macros/],
    [
      'an encrypted part',
      zipped([...PARTS, { name: 'xl/x.xml', data: Buffer.from('x'), encrypted: true }]),
      /encrypted/,
    ],
    [
      'another kind of package',
      zipped([{ name: 'word/document.xml', data: Buffer.from('<a/>') }]),
      /not a workbook/,
    ],
    ['text', Buffer.from('Sample,Result'), /not a workbook/],
    [
      'a name that climbs',
      zipped([...PARTS, { name: '../../x', data: Buffer.from('x') }]),
      /not a readable workbook/,
    ],
  ])('%s is refused', async (_name, bytes, words) => {
    expect(await said(bytes)).toMatch(words);
  });
});
