import ExcelJS from 'exceljs';
import JSZip from 'jszip';
import { beforeAll, describe, expect, test } from 'vitest';
import { findLeaks, secretsOf, type BidSheet } from '../../core/bid';
import { bidView } from '../../core/evaluation';
import { bidPaper, bidWorkbook, internalWorkbook } from '../../core/papers';
import { offerLines } from '../../core/papers/bid/offer';
import { writeWorkbook } from '../../electron/papers/write-workbook';
import { demoProject, evaluated } from '../core/evaluation/demo';
import { everythingSaid, saidOfProject, type Said } from './workbook-parts';

const demo = demoProject();
/** The demo with suppliers behind its prices, one of them chosen. */
const EVALUATION = evaluated({ ...demo, quotes: quotesFor(['cable-pulled', 'ocean-tow']) });
const VIEW = bidView(EVALUATION);
const SHEET = present(VIEW.sheet);
const INTERNAL = present(VIEW.internal);
const SECRETS = secretsOf(INTERNAL, SHEET);

/** An offer of the same shape, of others. */
const OTHER_OFFER = offerLines(EVALUATION).map(({ title, words }) => ({
  title,
  ...(words !== undefined && { words: `Other words of ${title}` }),
}));

let file: Buffer;
let control: Said[];

beforeAll(async () => {
  file = await writeWorkbook(present(bidWorkbook(EVALUATION)));
  const frame = {
    title: 'Another ship of another place',
    date: EVALUATION.today,
    sample: true,
    offer: OTHER_OFFER,
  };
  control = await everythingSaid(await writeWorkbook(bidPaper(replaced(SHEET), frame)));
});

test('a line that a quote covers whole has the quote as its source, and no rate that it no longer rests on', () => {
  const lines = INTERNAL.items.flatMap(item => item.lines);
  const chosen = EVALUATION.project.quotes.find(quote => quote.chosen);
  const covered = (chosen?.covers ?? []).filter(({ share }) => share === '1');
  expect(covered.length).toBeGreaterThan(0);
  for (const { item } of covered)
    expect(lines.find(line => line.lineId === item)?.source).toBe(
      `Quote of ${chosen?.vendor}, ${chosen?.dated}`,
    );
});

describe('what leaves with the bid file', () => {
  test('there is enough to hide: every line with its elements, hours, rates, mark-ups, wages and suppliers', () => {
    const lines = INTERNAL.items.flatMap(item => item.lines);
    expect(lines.length).toBeGreaterThan(100);
    expect(SECRETS.numbers.length).toBeGreaterThan(800);
    expect(INTERNAL.rates.length).toBeGreaterThan(20);
    expect(SECRETS.words).toEqual(expect.arrayContaining(['Brae Marine Works', 'Quayside Yard']));
    for (const { share } of INTERNAL.markUpShares)
      expect([...SECRETS.numbers, ...SECRETS.open, 0]).toContain(Number((share * 100).toFixed(6)));
  });

  test('no part of the file holds a number, word or supplier of the internal sheet but the bid prices', async () => {
    const said = saidOfProject(await everythingSaid(file), control);
    // Every price is there, so the search reads the file and not an empty one.
    const texts = said.map(one => one.text);
    const prices = SHEET.items.flatMap(item => [item.amount, item.unitPrice ?? item.amount]);
    for (const price of [...prices, ...SHEET.alternates.flatMap(one => one.amount ?? []), SHEET.baseBid])
      expect(texts).toContain(String(price / 100));
    const leaks = findLeaks(texts, SECRETS).map(leak => ({ ...leak, ...said[leak.at] }));
    expect(leaks).toEqual([]);
  });

  test('the file is the same byte for byte whatever stands behind the prices', async () => {
    const again = await writeWorkbook(
      bidPaper(SHEET, {
        ...{ title: demo.title, date: EVALUATION.today, sample: demo.sample },
        offer: offerLines(EVALUATION),
      }),
    );
    expect(again.equals(file)).toBe(true);
  });

  test('the internal sheet, searched the same way, is full of them', async () => {
    const said = await everythingSaid(await writeWorkbook(present(internalWorkbook(EVALUATION))));
    const found = new Set(
      findLeaks(
        said.map(one => one.text),
        SECRETS,
      ).map(leak => leak.secret),
    );
    const shown = [...INTERNAL.items.flatMap(item => item.lines).map(line => line.total / 100)].filter(
      amount => SECRETS.numbers.includes(amount),
    );
    expect(shown.filter(amount => !found.has(amount))).toEqual([]);
    expect(found).toContain('Brae Marine Works');
  });
});

describe('a secret planted in the bid file is found', () => {
  const hours = fact('Hours');
  const amount = (INTERNAL.items.flatMap(item => item.lines)[0]?.amounts.markUp ?? 0) / 100;

  test.each<[string, (book: ExcelJS.Workbook, sheet: ExcelJS.Worksheet) => void]>([
    ['in a cell', (_book, sheet) => void (sheet.getCell('H40').value = hours)],
    [
      'in a cell as text, with separators',
      (_b, sheet) => void (sheet.getCell('H40').value = `${money(amount)} in all`),
    ],
    ['in a comment', (_book, sheet) => void (sheet.getCell('A1').note = `wage ${fact('Crew rate')}`)],
    [
      'in a name',
      book => {
        book.definedNames.add("'Schedule of values'!$A$1", `h_${supplierName()}`);
      },
    ],
    ['in the creator', book => void (book.creator = 'Brae Marine Works')],
    ['in the keywords', book => void (book.keywords = `mark-up ${shareOf('profit')} per cent`)],
    ['in the company', book => void (book.company = 'Quayside Yard')],
    [
      'in a hidden sheet',
      book => void (book.addWorksheet('x', { state: 'veryHidden' }).getCell('A1').value = amount),
    ],
    [
      'in a hidden row',
      (_b, sheet) => {
        sheet.getRow(60).hidden = true;
        sheet.getCell('A60').value = amount;
      },
    ],
    [
      'in a cached value',
      (_b, sheet) => void (sheet.getCell('H41').value = { formula: 'A1+1', result: amount }),
    ],
    [
      'in a formula',
      (_b, sheet) => void (sheet.getCell('H42').value = { formula: `F5-${amount}`, result: 0 }),
    ],
    ['in a header', (_b, sheet) => void (sheet.headerFooter.firstHeader = `cost ${money(amount)}`)],
    ['in a number format', (_b, sheet) => void (sheet.getCell('F5').numFmt = `0.00" of ${money(amount)}"`)],
    ['in the name of a sheet', book => void book.addWorksheet('Quayside Yard')],
    [
      'in a validation message',
      (_b, sheet) =>
        void (sheet.getCell('A5').dataValidation = {
          type: 'list',
          formulae: ['"a,b"'],
          prompt: `${hours} h`,
          showInputMessage: true,
        }),
    ],
    ['rounded to the dollar', (_b, sheet) => void (sheet.getCell('H43').value = Math.round(amount))],
  ])('%s', async (_where, plant) => {
    const book = new ExcelJS.Workbook();
    await book.xlsx.load(asArrayBuffer(file));
    const sheet = present(book.getWorksheet('Schedule of values'));
    plant(book, sheet);
    expect(await leaksIn(Buffer.from(await book.xlsx.writeBuffer()))).not.toEqual([]);
  });

  test.each([
    ['in the cache of a chart', 'xl/charts/chart9.xml', `<c:chart><c:v>${amount}</c:v></c:chart>`],
    ['in a part nobody refers to', 'xl/media/note.txt', `paid to Brae Marine Works`],
    ['in custom properties', 'docProps/custom.xml', `<Properties><p name="h">${hours}</p></Properties>`],
    ['in the name of a part', 'xl/media/quayside yard.png', ''],
  ])('%s', async (_where, part, content) => {
    const zip = await JSZip.loadAsync(file);
    zip.file(part, content);
    expect(await leaksIn(await zip.generateAsync({ type: 'nodebuffer' }))).not.toEqual([]);
  });
});

async function leaksIn(bytes: Buffer) {
  const said = saidOfProject(await everythingSaid(bytes), control);
  return findLeaks(
    said.map(one => one.text),
    SECRETS,
  );
}

/** A unit of another project; a lump sum is no word of a project, and stands elsewhere in the file too. */
const otherUnit = (unit: string, index: number): string =>
  unit === 'lump sum' ? unit : `unit ${'abcdefghijklmnopqrstuvwxyz'.charAt(index)}`;

/** The same shape with everything of the project replaced: other titles, other prices. */
function replaced(sheet: BidSheet): BidSheet {
  const price = (index: number) => 700_000_01 + 1_000_003 * index;
  const units = [...new Set(sheet.items.map(item => item.unit))];
  return {
    items: sheet.items.map((item, i) => ({
      ...item,
      title: `Other work ${'abcdefghijklmnopqrstuvwxyz'.charAt(i)}`,
      unit: otherUnit(item.unit, units.indexOf(item.unit)),
      quantity: item.unitPrice === undefined ? item.quantity : item.quantity + 1,
      ...(item.unitPrice !== undefined && { unitPrice: price(i) }),
      amount: price(i),
    })),
    baseBid: price(99),
    alternates: sheet.alternates.map((one, i) => ({
      ...one,
      title: `Other alternate ${'abcdefgh'.charAt(i)}`,
      amount: (one.amount ?? 0) < 0 ? -price(40 + i) : price(40 + i),
    })),
  };
}

function quotesFor(wanted: readonly string[]) {
  const items = evaluated(demo).estimate?.items ?? [];
  const contract = items.filter(item => item.contract).map(item => item.id);
  const [first = '', second = ''] = [...wanted.filter(id => contract.includes(id)), ...contract];
  const quote = (id: string, vendor: string, item: string, chosen: boolean) => ({
    id,
    vendor,
    dated: '2026-11-01',
    validUntil: '2029-01-01',
    covers: [{ item, share: '1' }],
    exclusions: [],
    amount: {
      value: '98765.43',
      unit: 'USD',
      basis: 'quoted' as const,
      source: 'made up for the test',
    },
    chosen,
  });
  return [quote('a', 'Brae Marine Works', first, true), quote('b', 'Quayside Yard', second, false)];
}

function fact(title: string): number {
  const facts = INTERNAL.items.flatMap(item => item.lines.flatMap(line => line.facts));
  const value = facts.find(
    one => one.title === title && typeof one.value === 'number' && SECRETS.numbers.includes(one.value),
  )?.value;
  if (typeof value !== 'number') throw new Error(`no secret fact ${title}`);
  return value;
}

function shareOf(title: string): number {
  const share = INTERNAL.markUpShares.find(one => one.title.toLowerCase().includes(title))?.share;
  return Number((100 * present(share)).toFixed(6));
}

function supplierName(): string {
  return `_${fact('Crew rate')}`;
}

function money(amount: number): string {
  return amount.toLocaleString('en-US', { minimumFractionDigits: 2, maximumFractionDigits: 2 });
}

function asArrayBuffer(bytes: Buffer): ArrayBuffer {
  const copy = new ArrayBuffer(bytes.length);
  new Uint8Array(copy).set(bytes);
  return copy;
}

function present<T>(value: T | undefined): T {
  if (value === undefined) throw new Error('the demo has a bid');
  return value;
}
