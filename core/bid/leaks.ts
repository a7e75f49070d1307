import type { BidSheet, InternalSheet } from './sheets';

/** What must not be found in anything that leaves: numbers as they would be printed, and words. */
export interface Secrets {
  readonly numbers: readonly number[];
  readonly words: readonly string[];
  /** What the bid says openly: item numbers, quantities and prices. A secret that is one of them is told anyway. */
  readonly open: ReadonlySet<number>;
}

/** A secret found in what leaves. */
export interface Leak {
  readonly secret: number | string;
  /** Which of the given texts or numbers holds it. */
  readonly at: number;
}

/** A word this short stands inside many others: it counts only where it stands alone. */
const SHORTEST_PART = 4;

/**
 * Everything of the internal sheet that the bid sheet does not say: amounts in dollars, hours, rates, shares
 * (as a share and as a per cent), suppliers. Zero is no secret.
 */
export function secretsOf(internal: InternalSheet, sheet: BidSheet): Secrets {
  const open = new Set(openNumbers(sheet));
  const openWords = [...sheet.items, ...sheet.alternates].map(row => row.title.toLowerCase());
  const numbers = [...amountsOf(internal).map(cents => cents / 100), ...plainNumbers(internal)];
  const words = internal.items.flatMap(item =>
    item.lines.flatMap(line => [...line.source.split('; '), ...line.facts.map(fact => fact.value)]),
  );
  return {
    open,
    numbers: [...new Set(numbers)].filter(number => number !== 0 && !open.has(number)),
    words: [...new Set(words.filter(word => typeof word === 'string'))].filter(
      word => word.trim() !== '' && !openWords.includes(word.toLowerCase()),
    ),
  };
}

/**
 * Looks for secrets in whatever is about to leave: cells, comments, names, properties, cached values. A number tells
 * a secret when it is that secret at the decimals it is printed with, and is no number the bid says openly.
 */
export function findLeaks(contents: readonly (string | number)[], secrets: Secrets): Leak[] {
  const byPrint = printedForms(secrets.numbers);
  return contents.flatMap((content, at) => {
    const printed = typeof content === 'number' ? [String(content)] : printedNumbers(content);
    const numbers = printed.flatMap(print => secretBehind(print, byPrint, secrets.open));
    const text = String(content).toLowerCase();
    const words = secrets.words.filter(word => isSaid(word.toLowerCase(), text));
    return [...numbers, ...words].map(secret => ({ secret, at }));
  });
}

const MOST_DECIMALS = 6;

/** Each secret under its decimals and its print at them: 12,345.67 is also 12345.7 and 12346. */
function printedForms(numbers: readonly number[]): Map<string, number> {
  const forms = new Map<string, number>();
  for (const number of numbers)
    for (let decimals = 0; decimals <= MOST_DECIMALS; decimals++)
      forms.set(Math.abs(number).toFixed(decimals), number);
  return forms;
}

function secretBehind(
  print: string,
  forms: ReadonlyMap<string, number>,
  open: ReadonlySet<number>,
): number[] {
  const secret = forms.get(print);
  return secret === undefined || Number(print) === 0 || open.has(Number(print)) ? [] : [secret];
}

function isSaid(word: string, text: string): boolean {
  if (word.length >= SHORTEST_PART) return text.includes(word);
  return text.split(/[^\p{L}\p{N}]+/u).includes(word);
}

/** Every number printed in a text, thousands separators taken out. */
export function numbersIn(text: string): number[] {
  return printedNumbers(text).map(Number);
}

const DATE = /(?<!\d)\d{4}-\d{2}-\d{2}(?!\d)/g;

/** The numbers of a text as printed. A calendar date is one word and not three numbers. */
function printedNumbers(text: string): string[] {
  return [...text.replaceAll(DATE, ' ').matchAll(/\d[\d,]*(?:\.\d+)?/g)].map(([number]) =>
    number.replaceAll(',', ''),
  );
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
  const rates = internal.rates.map(rate => rate.value);
  return [...facts.filter(value => typeof value === 'number'), ...shares, ...rates];
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
    ...(row.amount === undefined ? [] : [Math.abs(row.amount) / 100]),
    ...numbersIn(row.title),
  ]);
  return [...items, ...alternates, Math.abs(sheet.baseBid) / 100];
}
