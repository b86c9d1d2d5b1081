import { fieldPath, sentence } from '../field-path.ts';

/** Where something stands in a text, both from 1. */
interface Place {
  readonly line: number;
  readonly column: number;
}

export interface JsonText {
  readonly value: unknown;
  /** where the value of a path ("orders[2].lines[0].cut") begins; undefined where there is none */
  readonly placeOf: (path: string) => Place | undefined;
}

export interface JsonFault extends Place {
  /** what stands there, shortened */
  readonly found: string;
  readonly says: string;
}

export interface JsonLimits {
  /** characters of the text */
  readonly length: number;
  /** lists and objects inside each other */
  readonly depth: number;
}

function placeAt(text: string, offset: number): Place {
  const before = text.slice(0, offset);
  const lineStart = before.lastIndexOf('\n') + 1;
  let line = 1;
  for (let at = before.indexOf('\n'); at !== -1; at = before.indexOf('\n', at + 1)) line++;
  return { line, column: offset - lineStart + 1 };
}

class Broken extends Error {
  readonly offset: number;

  constructor(offset: number, says: string) {
    super(says);
    this.offset = offset;
  }
}

const escapes: Readonly<Record<string, string>> = {
  '"': '"',
  '\\': '\\',
  '/': '/',
  b: '\b',
  f: '\f',
  n: '\n',
  r: '\r',
  t: '\t',
};

const words: readonly (readonly [string, unknown])[] = [
  ['true', true],
  ['false', false],
  ['null', null],
];

// biome-ignore lint/suspicious/noControlCharactersInRegex: these are what a JSON string must not hold (RFC 8259, 7)
const plainRun = /[^"\\\u0000-\u001f]*/y;
const number = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const fourHex = /^[0-9a-fA-F]{4}$/;
const loneSurrogate = /\p{Cs}/u;

/** Reads RFC 8259 and refuses what it leaves open: keys given twice, broken letters, numbers that are not finite. */
class Reader {
  readonly offsets = new Map<string, number>();
  readonly #text: string;
  readonly #depthMax: number;
  #at = 0;

  constructor(text: string, depthMax: number) {
    this.#text = text;
    this.#depthMax = depthMax;
  }

  readAll(): unknown {
    if (this.#text.startsWith('\ufeff')) this.#at = 1;
    const value = this.#value('', 0);
    this.#space();
    if (this.#at < this.#text.length)
      throw new Broken(this.#at, 'nothing may follow the end of the file’s object');
    return value;
  }

  #space(): void {
    while (' \t\n\r'.includes(this.#text[this.#at] ?? 'x')) this.#at++;
  }

  #value(path: string, depth: number): unknown {
    this.#space();
    this.offsets.set(path, this.#at);
    const first = this.#text[this.#at];
    if (first === '{' || first === '[') {
      if (depth >= this.#depthMax)
        throw new Broken(this.#at, `is nested deeper than ${this.#depthMax} levels`);
      return first === '{' ? this.#object(path, depth + 1) : this.#list(path, depth + 1);
    }
    if (first === '"') return this.#string();
    for (const [word, value] of words) {
      if (!this.#text.startsWith(word, this.#at)) continue;
      this.#at += word.length;
      return value;
    }
    return this.#number();
  }

  #number(): number {
    number.lastIndex = this.#at;
    const [digits] = number.exec(this.#text) ?? [];
    if (digits === undefined) throw new Broken(this.#at, 'is not a value: text stands in "quotes"');
    const value = Number(digits);
    if (!Number.isFinite(value)) throw new Broken(this.#at, 'is too large a number');
    this.#at += digits.length;
    return value;
  }

  #string(): string {
    const start = this.#at;
    this.#at++;
    let text = '';
    for (;;) {
      plainRun.lastIndex = this.#at;
      const [run = ''] = plainRun.exec(this.#text) ?? [];
      text += run;
      this.#at += run.length;
      const stop = this.#text[this.#at];
      if (stop === undefined) throw new Broken(start, 'is text without its closing quote');
      if (stop !== '"' && stop !== '\\')
        throw new Broken(this.#at, 'is a control character inside text: close the quote on the same line');
      this.#at++;
      if (stop === '"') break;
      text += this.#escape();
    }
    if (loneSurrogate.test(text)) throw new Broken(start, 'holds half of a letter (a lone surrogate)');
    if (text.includes('\0')) throw new Broken(start, 'holds a NUL');
    return text;
  }

  #escape(): string {
    const letter = this.#text[this.#at] ?? '';
    if (letter === 'u') {
      const hex = this.#text.slice(this.#at + 1, this.#at + 5);
      if (!fourHex.test(hex))
        throw new Broken(this.#at - 1, 'is not an escape: \\u takes four hexadecimal digits');
      this.#at += 5;
      return String.fromCharCode(Number.parseInt(hex, 16));
    }
    const meant = escapes[letter];
    if (meant === undefined) throw new Broken(this.#at - 1, 'is not an escape that JSON knows');
    this.#at++;
    return meant;
  }

  #list(path: string, depth: number): unknown[] {
    const values: unknown[] = [];
    this.#at++;
    this.#space();
    if (this.#take(']')) return values;
    do values.push(this.#value(`${path}[${values.length}]`, depth));
    while (this.#more(']'));
    return values;
  }

  #object(path: string, depth: number): Record<string, unknown> {
    const fields = new Map<string, unknown>();
    this.#at++;
    this.#space();
    if (this.#take('}')) return {};
    do {
      this.#space();
      const start = this.#at;
      if (this.#text[start] !== '"') throw new Broken(start, 'is not a field: its name stands in "quotes"');
      const key = this.#string();
      if (fields.has(key)) throw new Broken(start, 'is given twice in one object');
      this.#space();
      if (!this.#take(':')) throw new Broken(this.#at, `must be a colon after "${key}"`);
      fields.set(key, this.#value(fieldPath(path, key), depth));
    } while (this.#more('}'));
    // Defines fields of its own: a field called __proto__ is a field like any other.
    return Object.fromEntries(fields);
  }

  #take(sign: string): boolean {
    if (this.#text[this.#at] !== sign) return false;
    this.#at++;
    return true;
  }

  /** Whether another entry follows; the end of the list or object is taken. */
  #more(close: string): boolean {
    this.#space();
    if (this.#take(close)) return false;
    if (!this.#take(',')) throw new Broken(this.#at, `must be a comma or ${close}`);
    this.#space();
    if (this.#text[this.#at] === close) throw new Broken(this.#at, 'follows a comma too many');
    return true;
  }
}

function found(text: string, offset: number): string {
  if (offset >= text.length) return 'the end of the file';
  const [line = ''] = text.slice(offset, offset + 40).split('\n');
  return line === '' ? 'the end of the line' : line;
}

/** Reads JSON strictly and remembers where everything stands. Never throws. */
export function readJson(text: string, limits: JsonLimits): JsonText | { readonly fault: JsonFault } {
  if (text.length > limits.length) {
    const says = `Is longer than ${limits.length} characters.`;
    return { fault: { line: 1, column: 1, found: `${text.length} characters`, says } };
  }
  const reader = new Reader(text, limits.depth);
  try {
    const value = reader.readAll();
    const placeOf = (path: string): Place | undefined => {
      const offset = reader.offsets.get(path);
      return offset === undefined ? undefined : placeAt(text, offset);
    };
    return { value, placeOf };
  } catch (error) {
    if (!(error instanceof Broken)) throw error;
    return {
      fault: {
        ...placeAt(text, error.offset),
        found: found(text, error.offset),
        says: sentence(error.message),
      },
    };
  }
}
