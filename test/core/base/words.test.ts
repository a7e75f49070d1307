import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { lowerFirst } from '../../../core/base';

describe('words inside a sentence', () => {
  test('begin small, except an acronym', () => {
    expect(['Oil taken off', 'PCB samples', 'P80 of the cost', 'A tow', '', 'Ökö'].map(lowerFirst)).toEqual([
      'oil taken off',
      'PCB samples',
      'P80 of the cost',
      'a tow',
      '',
      'ökö',
    ]);
  });

  test('of the sources in the library keep their acronyms', () => {
    const files = readdirSync('templates/work').map(name => readFileSync(`templates/work/${name}`, 'utf8'));
    expect(
      files.filter(text => /\b[a-z][A-Z]{2,}\b/.test(text.replaceAll(/"(id|item|driver)": "[^"]*"/g, ''))),
    ).toEqual([]);
  });
});
