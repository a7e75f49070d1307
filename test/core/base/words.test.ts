import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { lowerFirst } from '../../../core/base';

describe('words inside a sentence', () => {
  test.each([
    ['Oil taken off', 'oil taken off'],
    ['PCB survey', 'PCB survey'],
    ['ACM removal', 'ACM removal'],
    ['US flag', 'US flag'],
    ['OSHA notice', 'OSHA notice'],
    ['SF-424C Budget', 'SF-424C Budget'],
    ['P80 of the cost', 'P80 of the cost'],
    ['Liquid PCB hauled', 'liquid PCB hauled'],
    ['Coast Guard order for the tow', 'Coast Guard order for the tow'],
    ['Local Notice to Mariners', 'Local Notice to Mariners'],
    ['Notice to the State reef programme', 'notice to the State reef programme'],
    ['The State pays', 'the State pays'],
    ['A tow', 'a tow'],
    ['', ''],
    ['Ökö', 'ökö'],
  ])('begin small, except an acronym and a name: %s', (title, inside) => {
    expect(lowerFirst(title)).toBe(inside);
  });

  test('are made from titles in one way, which keeps their acronyms', () => {
    const views = readdirSync('core', { recursive: true, encoding: 'utf8' }).filter(name =>
      name.endsWith('.ts'),
    );
    const whole = /(title|TITLES\[\w+\]|title\))\.toLowerCase\(\)/;
    // Titles that are compared or made into names, and not read.
    const compared = ['evaluation/books/bid-view.ts', 'project/imports/cells.ts', 'bid/leaks.ts'];
    expect(
      views.filter(name => !compared.includes(name) && whole.test(readFileSync(`core/${name}`, 'utf8'))),
    ).toEqual([]);
  });

  test('of the sources in the library keep their acronyms', () => {
    const files = readdirSync('templates/work').map(name => readFileSync(`templates/work/${name}`, 'utf8'));
    expect(
      files.filter(text => /\b[a-z][A-Z]{2,}\b/.test(text.replaceAll(/"(id|item|driver)": "[^"]*"/g, ''))),
    ).toEqual([]);
  });
});
