import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  anyBlocks,
  decimalText,
  hashText,
  isoDate,
  key,
  randomStream,
  recordOf,
  topologicalOrder,
  weakerBasis,
  type Finding,
} from '../../../core/base';

const WORD = 2n ** 32n;
const MASK = WORD - 1n;

/** FNV-1a as its authors write it, on whole numbers without a limit. */
function fnv1a(text: string, basis: bigint): bigint {
  let hash = basis;
  for (let i = 0; i < text.length; i++) hash = ((hash ^ BigInt(text.charCodeAt(i))) * 16777619n) % WORD;
  return hash;
}

/** The finishing of MurmurHash3 for 32 bits. Source: A. Appleby, MurmurHash3.cpp, fmix32, public domain. */
function finished(hash: bigint): bigint {
  const first = ((hash ^ (hash >> 16n)) * 0x85ebca6bn) % WORD;
  const second = ((first ^ (first >> 13n)) * 0xc2b2ae35n) % WORD;
  return second ^ (second >> 16n);
}

/** The small fast counter generator. Source: C. Doty-Humphrey, PractRand, sfc32. */
function* sfc32(a: bigint, b: bigint, c: bigint): Generator<bigint> {
  for (let [x, y, z, counter] = [a, b, c, 1n]; ; counter = (counter + 1n) & MASK) {
    const t = (x + y + counter) & MASK;
    x = y ^ (y >> 9n);
    y = (z + (z << 3n)) & MASK;
    z = ((((z << 21n) | (z >> 11n)) & MASK) + t) & MASK;
    yield t;
  }
}

describe('random numbers of a seed and an id', () => {
  it('the hash under the finishing is FNV-1a: its published values', () => {
    // Source: G. Fowler, L. C. Noll, K.-P. Vo, D. Eastlake, The FNV Non-Cryptographic Hash Algorithm, test vectors.
    for (const [text, value] of [
      ['', 0x811c9dc5n],
      ['a', 0xe40c292cn],
      ['foobar', 0xbf9cf968n],
    ] as const) {
      expect(fnv1a(text, 0x811c9dc5n)).toBe(value);
      expect(hashText(text, 0)).toBe(Number(finished(value)));
    }
  });

  it('the hash of any text and seed is that of whole numbers without a limit', () => {
    fc.assert(
      fc.property(fc.string(), fc.integer({ min: 0, max: 0xffffffff }), (text, seed) => {
        expect(hashText(text, seed)).toBe(Number(finished(fnv1a(text, 0x811c9dc5n ^ BigInt(seed)))));
      }),
    );
  });

  it('the stream is that of the small fast counter generator after fifteen steps', () => {
    fc.assert(
      fc.property(fc.string(), fc.integer({ min: 0, max: 1_000_000 }), (id, seed) => {
        const seeds = [seed, (seed ^ 0x9e3779b9) >>> 0, (seed * 2654435761) >>> 0];
        const [a = 0n, b = 0n, c = 0n] = seeds.map(each => BigInt(hashText(id, each)));
        const bits = sfc32(a, b, c);
        for (let i = 0; i < 15; i++) bits.next();
        const stream = randomStream(seed, id);
        for (let i = 0; i < 40; i++) expect(stream() * 2 ** 32).toBe(Number(bits.next().value));
      }),
      { numRuns: 30 },
    );
  });
});

describe('the order of what depends on what', () => {
  const pairs = fc
    .integer({ min: 1, max: 9 })
    .chain(count =>
      fc.tuple(
        fc.constant(count),
        fc.array(fc.tuple(fc.nat(count - 1), fc.nat(count - 1)), { maxLength: 14 }),
      ),
    );

  it('every item follows all that it depends on, or a loop is named in which each does', () => {
    fc.assert(
      fc.property(pairs, ([count, before]) => {
        const found = topologicalOrder(count, before);
        if ('order' in found) {
          expect(found.order.toSorted((a, b) => a - b)).toEqual(Array.from({ length: count }, (_, i) => i));
          for (const [from, to] of before)
            expect(found.order.indexOf(from)).toBeLessThan(found.order.indexOf(to));
        } else {
          expect(found.loop.length).toBeGreaterThan(0);
          expect(new Set(found.loop).size).toBe(found.loop.length);
          found.loop.forEach((item, i) => {
            const next = found.loop[(i + 1) % found.loop.length];
            expect(before.some(([from, to]) => from === item && to === next)).toBe(true);
          });
        }
      }),
      { numRuns: 1000 },
    );
  });

  it('what depends on nothing comes first, in its own order', () => {
    expect(topologicalOrder(4, [[2, 0]])).toEqual({ order: [1, 2, 3, 0] });
    expect(topologicalOrder(3, [])).toEqual({ order: [0, 1, 2] });
    expect(topologicalOrder(0, [])).toEqual({ order: [] });
  });

  it('a loop is told without what leads into it and out of it', () => {
    const found = topologicalOrder(5, [
      [0, 1],
      [1, 2],
      [2, 3],
      [3, 1],
      [3, 4],
    ]);
    expect('loop' in found ? found.loop.toSorted() : []).toEqual([1, 2, 3]);
    expect(topologicalOrder(1, [[0, 0]])).toEqual({ loop: [0] });
  });
});

describe('small things', () => {
  it('the weaker of two bases is the later of the list', () => {
    expect(weakerBasis('quoted', 'judgement')).toBe('judgement');
    expect(weakerBasis('judgement', 'quoted')).toBe('judgement');
    expect(weakerBasis('published', 'published')).toBe('published');
  });

  it('a finding that blocks is one among others', () => {
    const of = (weight: Finding['weight']): Finding => ({
      code: 'a/b',
      weight,
      place: '/',
      message: '',
      remedy: '',
    });
    expect(anyBlocks([])).toBe(false);
    expect(anyBlocks([of('notes'), of('warns')])).toBe(false);
    expect(anyBlocks([of('notes'), of('blocks')])).toBe(true);
  });

  it('a record has a value for every key', () => {
    expect(recordOf(['a', 'b'], each => `${each}!`)).toEqual({ a: 'a!', b: 'b!' });
  });

  it.each([
    [
      decimalText,
      ['0', '-12.5', '123456789012345', '0.123456789012'],
      ['1e5', '.5', '5.', '1234567890123456', '0.1234567890123', '+1', ' 1', '1 ', ''],
    ],
    [isoDate, ['2027-01-31'], ['27-01-31', '2027-1-31', '2027-01-31 ', ' 2027-01-31', '2027-01-1']],
    [key, ['a', 'tank-washing', 'a1-2b'], ['A', 'a_b', '-a', 'a-', 'a--b', '']],
  ])('texts of a kind are taken and others refused', (schema, good, bad) => {
    for (const text of good) expect(schema.safeParse(text).success, text).toBe(true);
    for (const text of bad) {
      const found = schema.safeParse(text);
      expect(found.success, text).toBe(false);
      expect(found.error?.issues[0]?.message).toMatch(/^write (a|the) /);
    }
  });
});
