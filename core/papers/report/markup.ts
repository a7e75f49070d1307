/** A piece of markup that is safe as it stands; everything else is escaped. */
export interface Markup {
  readonly markup: string;
}

/** What may stand inside a piece of markup. */
export type Child = Markup | string | readonly Child[] | undefined;

/** An element with its attributes and children; text is escaped, so that no title can become markup. */
export function element(
  name: string,
  attributes: Readonly<Record<string, string>>,
  ...children: Child[]
): Markup {
  const given = Object.entries(attributes).map(([key, value]) => ` ${key}="${escaped(value)}"`);
  return { markup: `<${name}${given.join('')}>${children.map(inside).join('')}</${name}>` };
}

/** Markup of children one after the other. */
export function inside(child: Child): string {
  if (child === undefined) return '';
  if (typeof child === 'string') return escaped(child);
  return 'markup' in child ? child.markup : child.map(inside).join('');
}

/** Text as markup shows it; control characters are left out. */
export function escaped(words: string): string {
  return words
    .replace(/\p{Cc}/gu, character => (/[\t\n]/.test(character) ? character : ''))
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll("'", '&#39;');
}

/** A paragraph. */
export function paragraph(...children: Child[]): Markup {
  return element('p', {}, ...children);
}

/** A heading of the second or third rank. */
export function heading(rank: 2 | 3, words: string): Markup {
  return element(`h${rank}`, {}, words);
}

/** A list of points. */
export function points(rows: readonly Child[]): Markup {
  return element('ul', {}, ...rows.map(row => element('li', {}, row)));
}

/** A column of a table: its title and whether it holds figures. */
export interface Column {
  readonly title: string;
  readonly figures?: boolean;
}

/** A table with its caption, column heads that repeat on each page, and a head for each row. */
export function table(
  caption: string,
  columns: readonly Column[],
  rows: readonly (readonly Child[])[],
  last?: readonly Child[],
  look: 'usual' | 'compact' | 'compared' | 'lines' = 'usual',
): Markup {
  const side = (i: number) => (columns[i]?.figures === true ? { class: 'figures' } : {});
  const cells = (row: readonly Child[]) =>
    row.map((cell, i) =>
      i === 0 ? element('th', { scope: 'row' }, cell) : element('td', { ...side(i) }, cell),
    );
  const head = columns.map((column, i) => element('th', { scope: 'col', ...side(i) }, column.title));
  return element(
    'table',
    look === 'usual' ? {} : { class: look },
    element('caption', {}, caption),
    element('thead', {}, element('tr', {}, ...head)),
    element('tbody', {}, ...rows.map(row => element('tr', {}, ...cells(row)))),
    last && element('tfoot', {}, element('tr', {}, ...cells(last))),
  );
}
