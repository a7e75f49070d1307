import fs from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';

const folder = path.join(import.meta.dirname, '../../renderer');
const files = fs
  .readdirSync(folder, { recursive: true, encoding: 'utf8' })
  .filter(name => /\.tsx?$/.test(name))
  .map(name => ({ name, text: fs.readFileSync(path.join(folder, name), 'utf8') }));

test('no file of the window is over 300 lines', () => {
  const longest = files
    .map(({ name, text }) => ({ name, lines: text.split('\n').length }))
    .sort((a, b) => b.lines - a.lines);
  expect(longest.slice(0, 3).filter(file => file.lines > 300)).toEqual([]);
});

test('nothing outside the drawings multiplies, divides or rounds', () => {
  const places = files
    .filter(({ name }) => !name.startsWith('pictures/') && !name.endsWith('job-picture.tsx'))
    .flatMap(({ name, text }) =>
      text
        .split('\n')
        .map((line, at) => ({
          place: `${name}:${at + 1}`,
          line: line
            .replace(/\/\/.*|\/\*.*|^\s*\*.*/, '')
            .replace(/(['"`]).*?\1/g, '')
            .replace(/\/[^/\s].*?\/[a-z]*/g, ''),
        }))
        .filter(({ line }) =>
          /[\w)\]] [*/] [\w(]|toFixed|toPrecision|Math\.(round|floor|ceil|pow)/.test(line),
        )
        .map(({ place, line }) => `${place} ${line.trim()}`),
    );
  expect(places).toEqual(
    [
      // Where the dot stands on the line of a range, and the length of a row's bar: drawing, not figures.
      'frame/why-panel.tsx',
      'views/budget/budget.tsx',
    ].flatMap(name => places.filter(place => place.startsWith(name))),
  );
  expect(places.length).toBeLessThanOrEqual(2);
});

test('the window sets no HTML from text and asks no other machine', () => {
  for (const { name, text } of files) {
    expect(text, name).not.toMatch(/dangerouslySetInnerHTML|innerHTML|eval\(|new Function|https?:\/\//);
  }
});

/** The classes that a sheet gives a look to. */
const looked = (css: string) =>
  new Set([...css.matchAll(/\.([a-zA-Z][\w-]*)/g)].map(found => found[1] ?? ''));
const sheet = (name: string) => fs.readFileSync(path.join(folder, name), 'utf8');

test('a view takes its looks from its own sheet or from those that are always there, never from another view', () => {
  const main = sheet('start.ts');
  const always = [...main.matchAll(/'\.\/(.+\.css)'/g)].map(found => sheet(found[1] ?? ''));
  const shared = looked(always.join('\n'));
  const sheets = fs
    .readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter(name => name.endsWith('.css'));
  const anywhere = looked(sheets.map(sheet).join('\n'));
  const strangers = files
    .filter(({ name }) => /^(views|frame|parts)\//.test(name))
    .flatMap(({ name, text }) => {
      const own = sheets.filter(one => path.dirname(one) === path.dirname(name)).map(sheet);
      const near = looked(own.join('\n'));
      return [...text.matchAll(/className="([^"]+)"/g)]
        .flatMap(found => (found[1] ?? '').split(' '))
        .filter(one => anywhere.has(one) && !shared.has(one) && !near.has(one))
        .map(one => `${name}: ${one}`);
    });
  expect(strangers).toEqual([]);
});
