import { at } from '../base';

/** A JSON value as parsed: only plain data. */
export type Json = string | number | boolean | null | Json[] | { [key: string]: Json };

/** A fault in the text itself, with the line and column where it stands (both from 1). */
export interface TextFault {
  readonly code: 'syntax' | 'depth' | 'duplicate-key' | 'poisoned-key' | 'number' | 'character' | 'size';
  readonly line: number;
  readonly column: number;
  readonly path: string;
  readonly saw: string;
}

/** The deepest nesting a document may have. */
export const DEEPEST = 64;
/** The longest list, or most fields of one object, and the longest text a document may have; real ones stay a hundred times below. */
export const LONGEST_LIST = 50_000;
export const LONGEST_TEXT = 1_000_000;
const POISON = new Set(['__proto__', 'constructor', 'prototype']);
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const ESCAPES: Readonly<Record<string, string>> = {
  '"': '"',
  '\\': '\\',
  '/': '/',
  b: '\b',
  f: '\f',
  n: '\n',
  r: '\r',
  t: '\t',
};

class Stop extends Error {
  readonly fault: TextFault;
  constructor(fault: TextFault) {
    super(fault.code);
    this.fault = fault;
  }
}

/**
 * Reads JSON strictly (RFC 8259) and, beyond it, refuses what a parser would swallow: keys given twice, keys that
 * reach a prototype, numbers that do not fit a double, nesting deeper than {@link DEEPEST}.
 * @returns the value, or the first fault with its place.
 */
export function parseJsonText(text: string): { readonly value: Json } | { readonly fault: TextFault } {
  try {
    return { value: new Reader(text).document() };
  } catch (stop) {
    if (stop instanceof Stop) return { fault: stop.fault };
    throw stop;
  }
}

class Reader {
  private at = 0;
  private readonly trail: (string | number)[] = [];
  private readonly text: string;
  constructor(text: string) {
    this.text = text.startsWith('\ufeff') ? text.slice(1) : text;
  }

  document(): Json {
    const value = this.value();
    this.space();
    if (this.at < this.text.length) this.stop('syntax');
    return value;
  }

  private value(): Json {
    this.space();
    const character = this.text[this.at];
    if (character === '{') return this.nested(() => this.object());
    if (character === '[') return this.nested(() => this.array());
    if (character === '"') return this.string();
    if (this.word('true')) return true;
    if (this.word('false')) return false;
    if (this.word('null')) return null;
    return this.number();
  }

  private nested(read: () => Json): Json {
    if (this.trail.length >= DEEPEST) this.stop('depth');
    return read();
  }

  private object(): Json {
    const object: { [key: string]: Json } = {};
    this.at++;
    if (this.closes('}')) return object;
    let fields = 0;
    do {
      if (fields++ >= LONGEST_LIST) this.stop('size', `an object of more than ${LONGEST_LIST} fields`);
      this.space();
      if (this.text[this.at] !== '"') this.stop('syntax');
      const name = this.string();
      if (POISON.has(name)) this.stop('poisoned-key', name);
      if (Object.hasOwn(object, name)) this.stop('duplicate-key', name);
      this.space();
      if (this.text[this.at] !== ':') this.stop('syntax');
      this.at++;
      this.trail.push(name);
      object[name] = this.value();
      this.trail.pop();
    } while (this.more('}'));
    return object;
  }

  private array(): Json {
    const array: Json[] = [];
    this.at++;
    if (this.closes(']')) return array;
    do {
      if (array.length >= LONGEST_LIST) this.stop('size', `a list of more than ${LONGEST_LIST}`);
      this.trail.push(array.length);
      array.push(this.value());
      this.trail.pop();
    } while (this.more(']'));
    return array;
  }

  private string(): string {
    let out = '';
    this.at++;
    for (;;) {
      const from = this.at;
      while (isPlain(this.text.charCodeAt(this.at))) this.at++;
      out += this.text.slice(from, this.at);
      if (out.length > LONGEST_TEXT) this.stop('size', `a text of more than ${LONGEST_TEXT} characters`);
      const character = this.text[this.at];
      if (character === '"') break;
      if (character !== '\\') this.stop(character === undefined ? 'syntax' : 'character');
      out += this.escape();
    }
    this.at++;
    return out;
  }

  private escape(): string {
    const sign = this.text[this.at + 1] ?? '';
    const simple = ESCAPES[sign];
    if (simple !== undefined) {
      this.at += 2;
      return simple;
    }
    const hex = this.text.slice(this.at + 2, this.at + 6);
    if (sign !== 'u' || !/^[0-9a-fA-F]{4}$/.test(hex)) this.stop('character');
    this.at += 6;
    return String.fromCharCode(Number.parseInt(hex, 16));
  }

  private number(): number {
    NUMBER.lastIndex = this.at;
    const found = NUMBER.exec(this.text)?.[0];
    if (found === undefined) return this.stop('syntax');
    const value = Number(found);
    if (!Number.isFinite(value) || found.replace(/[^0-9]/g, '').length > 16) this.stop('number', found);
    this.at += found.length;
    return value;
  }

  private word(word: string): boolean {
    if (!this.text.startsWith(word, this.at)) return false;
    this.at += word.length;
    return true;
  }

  private space(): void {
    while (' \t\n\r'.includes(this.text[this.at] ?? 'x')) this.at++;
  }

  private closes(sign: string): boolean {
    this.space();
    if (this.text[this.at] !== sign) return false;
    this.at++;
    return true;
  }

  private more(end: string): boolean {
    this.space();
    const sign = this.text[this.at];
    if (sign !== ',' && sign !== end) this.stop('syntax');
    this.at++;
    return sign === ',';
  }

  private stop(code: TextFault['code'], saw?: string): never {
    const before = this.text.slice(0, this.at).split('\n');
    throw new Stop({
      code,
      line: before.length,
      column: at(before, before.length - 1).length + 1,
      path: this.trail.length === 0 ? '/' : '/' + this.trail.join('/'),
      saw: saw ?? this.text.slice(this.at, this.at + 12),
    });
  }
}

/** Whether a character stands for itself in a JSON string: not a quote, a backslash, a control character or the end. */
function isPlain(code: number): boolean {
  return code >= 0x20 && code !== 0x22 && code !== 0x5c;
}
