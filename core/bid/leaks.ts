import type { BidSheet, InternalSheet } from './sheets';

/** What must not be found in anything that leaves: numbers as they would be printed, and words. */
export interface Secrets {
  readonly numbers: readonly number[];
  readonly words: readonly string[];
}

/** A secret found in what leaves. */
export interface Leak {
  readonly secret: number | string;
  /** Which of the given texts or numbers holds it. */
  readonly at: number;
}

/** A word this short is found everywhere and says nothing. */
const SHORTEST_WORD = 4;

/**
 * Everything of the internal sheet that the bid sheet does not say: amounts in dollars, hours, rates, shares
 * (as a share and as a per cent), suppliers. Zero is no secret.
 */
export function secretsOf(internal: InternalSheet, sheet: BidSheet): Secrets {
  const open = new Set(openNumbers(sheet));
  const openWords = [...sheet.items, ...sheet.alternates].map(row => row.title.toLowerCase());
  const numbers = [...amountsOf(internal).map(cents => cents / 100), ...plainNumbers(internal)];
  const words = internal.items.flatMap(item =>
    item.lines.flatMap(line => [line.source, ...line.facts.map(fact => fact.value)]),
  );
  return {
    numbers: [...new Set(numbers)].filter(number => number !== 0 && !open.has(number)),
    words: [...new Set(words)]
      .filter(word => typeof word === 'string' && word.length >= SHORTEST_WORD)
      .map(String)
      .filter(word => !openWords.includes(word.toLowerCase())),
  };
}

/** Looks for secrets in whatever is about to leave: cells, comments, names, properties, cached values. */
export function findLeaks(contents: readonly (string | number)[], secrets: Secrets): Leak[] {
  const numbers = new Set(secrets.numbers);
  return contents.flatMap((content, at) => {
    const found = typeof content === 'number' ? [content] : numbersIn(content);
    const told = found.filter(number => numbers.has(number)).map(secret => ({ secret, at }));
    const text = String(content).toLowerCase();
    const words = secrets.words
      .filter(word => text.includes(word.toLowerCase()))
      .map(secret => ({ secret, at }));
    return [...told, ...words];
  });
}

/** Every number printed in a text, thousands separators taken out. */
export function numbersIn(text: string): number[] {
  return [...text.matchAll(/\d[\d,]*(?:\.\d+)?/g)].map(([number]) => Number(number.replaceAll(',', '')));
}

function amountsOf(internal: InternalSheet): number[] {
  const items = internal.items.flatMap(item => [
    item.cost,
    ...Object.values(item.elements),
    ...item.lines.flatMap(line => [line.total, ...Object.values(line.amounts)]),
  ]);
  const { buildUp } = internal;
  const built = buildUp
    ? [buildUp.direct, buildUp.price, ...buildUp.markUps.map(markUp => markUp.amount)]
    : [];
  return [...items, ...built].map(Math.abs);
}

function plainNumbers(internal: InternalSheet): number[] {
  const facts = internal.items.flatMap(item =>
    item.lines.flatMap(line => line.facts.map(fact => fact.value)),
  );
  const shares = internal.markUpShares.flatMap(({ share }) => [share, Number((share * 100).toFixed(6))]);
  return [...facts.filter(value => typeof value === 'number'), ...shares];
}

function openNumbers(sheet: BidSheet): number[] {
  const items = sheet.items.flatMap(row => [
    row.number,
    row.quantity,
    Math.abs(row.amount) / 100,
    ...(row.unitPrice === undefined ? [] : [row.unitPrice / 100]),
    ...numbersIn(row.title),
  ]);
  const alternates = sheet.alternates.flatMap(row => [
    row.number,
    Math.abs(row.amount) / 100,
    ...numbersIn(row.title),
  ]);
  return [...items, ...alternates, Math.abs(sheet.baseBid) / 100];
}
