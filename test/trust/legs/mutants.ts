import { sequence } from '../leg';

const TOKENS = [
  'null',
  '-1',
  '1e999',
  '""',
  '[]',
  '{}',
  'true',
  '"\\ud800"',
  '99999999999999999999',
  '"__proto__"',
];

/** Byte, structure and token mutants of one text, the same in every run. */
export function* mutants(text: string, count: number, seed: number): Generator<Buffer> {
  const random = sequence(seed);
  const whole = Buffer.from(text);
  const at = (length: number) => Math.floor(random() * length);
  const lines = text.split('\n');
  const ways: readonly (() => Buffer)[] = [
    () => {
      const bytes = Buffer.from(whole);
      const place = at(bytes.length);
      bytes[place] = (bytes[place] ?? 0) ^ (1 << at(8));
      return bytes;
    },
    () =>
      Buffer.concat([
        whole.subarray(0, at(whole.length)),
        Buffer.of(at(256)),
        whole.subarray(at(whole.length)),
      ]),
    () => whole.subarray(0, at(whole.length)),
    () => {
      const place = at(lines.length);
      return Buffer.from(lines.toSpliced(place, 1).join('\n'));
    },
    () => {
      const place = at(lines.length);
      return Buffer.from(lines.toSpliced(place, 0, lines[at(lines.length)] ?? '').join('\n'));
    },
    () => {
      const place = at(lines.length);
      const token = TOKENS[at(TOKENS.length)] ?? 'null';
      const line = (lines[place] ?? '').replace(/: .*?(,?)$/, `: ${token}$1`);
      return Buffer.from(lines.with(place, line).join('\n'));
    },
    () => {
      const digits = [...text.matchAll(/\d/g)];
      const place = digits[at(digits.length)]?.index ?? 0;
      return Buffer.from(`${text.slice(0, place)}${at(10)}${text.slice(place + 1)}`);
    },
  ];
  for (let n = 0; n < count; n++) yield (ways[n % ways.length] ?? (() => whole))();
}
