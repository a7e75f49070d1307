import { describe, expect, test } from 'vitest';
import { parseJsonText } from '../../../core/project';

/** What a text is read as. */
function read(text: string) {
  const result = parseJsonText(text);
  if ('fault' in result) throw new Error(JSON.stringify(result.fault));
  return result.value;
}

function faultOf(text: string) {
  const result = parseJsonText(text);
  if ('value' in result) throw new Error('the text was read');
  return result.fault;
}

describe('the text of a document', () => {
  test('may begin with a byte order mark, as editors of other systems write it', () => {
    expect(read('\ufeff{"a": [1, null]}')).toEqual({ a: [1, null] });
  });

  test('may hold every escape of RFC 8259, section 7', () => {
    expect(read(String.raw`"\" \\ \/ \b \f \n \r \t \u00e9 \uD834\uDD1E"`)).toBe(
      '" \\ / \b \f \n \r \t é \ud834\udd1e',
    );
  });

  test.each([
    [String.raw`{"a": "\x41"}`, 'character', 1, 8],
    [String.raw`{"a": "\u12g4"}`, 'character', 1, 8],
    ['{"a":\n"b\tc"}', 'character', 2, 3],
    ['{"a": "\\', 'character', 1, 8],
    ['{"a": "b', 'syntax', 1, 9],
  ])('%j is refused with the line and the column of its fault', (text, code, line, column) => {
    expect(faultOf(text)).toMatchObject({ code, line, column });
  });

  test('an object may have no more fields than a list entries', () => {
    const fields = (count: number) => `{${Array.from({ length: count }, (_, i) => `"f${i}":0`).join(',')}}`;
    expect(Object.keys(read(fields(50_000)) ?? {})).toHaveLength(50_000);
    expect(faultOf(fields(50_001))).toMatchObject({ code: 'size', path: '/' });
  });

  test('a list may have 50,000 entries and a text a million characters, and not one more', () => {
    const list = (count: number) => `[${Array.from({ length: count }, () => '0').join(',')}]`;
    expect(read(list(50_000))).toHaveLength(50_000);
    expect(faultOf(list(50_001))).toMatchObject({ code: 'size' });
    const text = (count: number) => `"${'x'.repeat(count)}"`;
    expect(read(text(1_000_000))).toHaveLength(1_000_000);
    expect(faultOf(text(1_000_001))).toMatchObject({ code: 'size' });
  });

  test('a number of more digits than a double can hold is refused, not rounded', () => {
    expect(read('1234567890.123456')).toBe(1234567890.123456);
    expect(faultOf('{"a": 1234567890.1234567}')).toMatchObject({ code: 'number', path: '/a' });
    expect(faultOf('1e999')).toMatchObject({ code: 'number' });
  });

  test.each(['[1 2]', '{"a": 1 "b": 2}', '[1}', '{"a": 1]'])(
    '%s lacks what parts or ends its entries',
    text => {
      expect(faultOf(text)).toMatchObject({ code: 'syntax' });
    },
  );
});
