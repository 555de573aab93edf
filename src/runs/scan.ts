import { createReadStream } from 'node:fs';
import type { Readable } from 'node:stream';
import { createGunzip } from 'node:zlib';
import { type Fault, type Place, Refusal, refuse } from '../fault/fault.ts';
import { encodingOf, Utf8Check } from './encoding.ts';

/** Longest line a log may have [bytes]; a longer one is no table of readings. */
export const longestLine = 1_000_000;
const headBytes = 65_536;

/** What one pass over a log has found. */
export interface Scan {
  /** Unpacked size [bytes]. */
  readonly bytes: number;
  /** Unpacked bytes up to the end of the last line that has a line end. */
  readonly wholeBytes: number;
  /** Lines with text in them from the header on, the header counted. */
  readonly lines: number;
  /** The first whole lines from the header on, for finding out how the log is written. */
  readonly head: readonly string[];
  /** Line number of the header, where comment or empty lines stand before it. */
  readonly headerLine: number;
  /** What stands behind the last line end: a line that may have been cut off. '' when the log ends with a line end. */
  readonly openEnd: string;
  /** Number of the last line with text in it. */
  readonly lastLine: number;
}

/** The log's bytes, unpacked where its name ends in .gz. */
export function openLog(file: string): Readable {
  const source = createReadStream(file);
  if (!file.endsWith('.gz')) return source;
  const unpacked = createGunzip();
  source.on('error', (error) => unpacked.destroy(error));
  return source.pipe(unpacked);
}

/**
 * One pass over a log at the speed of the disk, a line at most in memory: encoding, line lengths, line ends, the head.
 * Throws a Refusal for what is no text log. `name` is shown in places.
 */
export async function scanLog(file: string, name: string, progress?: (bytes: number) => void): Promise<Scan> {
  const scanner = new Scanner(name);
  try {
    for await (const chunk of openLog(file) as AsyncIterable<Buffer>) {
      scanner.take(chunk);
      progress?.(scanner.bytes);
    }
  } catch (error) {
    throw error instanceof Refusal ? error : readError(error, name);
  }
  return scanner.end();
}

class Scanner {
  bytes = 0;
  readonly #name: string;
  readonly #utf8 = new Utf8Check();
  /** Pieces of the line that has no end yet. */
  #open: Buffer[] = [];
  #openBytes = 0;
  #number = 1;
  #withText = 0;
  #lastWithText = 0;
  #wholeBytes = 0;
  #returns: boolean | null = null;
  #head: string[] = [];
  #headSize = 0;
  #headerLine = 0;

  constructor(name: string) {
    this.#name = name;
  }

  take(chunk: Buffer): void {
    if (this.bytes === 0) {
      const encoding = encodingOf(chunk);
      if (encoding) this.#refuse('run/encoding', { encoding }, '');
    }
    const zero = chunk.indexOf(0);
    if (zero >= 0) this.#refuse('run/binary', { byte: this.bytes + zero + 1 }, '');
    const wrong = this.#utf8.take(chunk);
    for (let from = 0; from < chunk.length; ) {
      const end = chunk.indexOf(10, from);
      const piece = chunk.subarray(from, end < 0 ? chunk.length : end);
      this.#openBytes += piece.length;
      if (this.#openBytes > longestLine) this.#refuse('run/long-line', { bytes: longestLine }, this.#text(piece));
      this.#open.push(piece);
      const reached = this.bytes + (end < 0 ? chunk.length : end + 1);
      if (wrong !== null && wrong < reached) this.#refuseByte(wrong);
      if (end < 0) break;
      this.#wholeBytes = reached;
      this.#endLine();
      from = end + 1;
    }
    this.bytes += chunk.length;
    // A piece of the chunk's memory is kept no longer than its line.
    this.#open = this.#open.map((piece) => Buffer.from(piece));
  }

  end(): Scan {
    const name = this.#name;
    const wrong = this.#utf8.end();
    if (wrong !== null) this.#refuseByte(wrong);
    const openEnd = this.#text();
    if (openEnd !== '') this.#take(openEnd);
    if (this.#headerLine === 0) throw new Refusal(refuse('run/empty', {}, place(name, 1, '')));
    return {
      bytes: this.bytes,
      wholeBytes: this.#wholeBytes,
      lines: this.#withText,
      head: this.#head,
      headerLine: this.#headerLine,
      openEnd,
      lastLine: this.#lastWithText,
    };
  }

  #endLine(): void {
    const line = this.#open.length === 1 ? this.#open[0] : Buffer.concat(this.#open);
    const returns = line[line.length - 1] === 13;
    const text = returns ? line.subarray(0, -1) : line;
    this.#returns ??= returns;
    if (returns !== this.#returns) this.#refuse('run/line-ends', {}, text.toString('utf8'));
    if (text.length > 0) this.#take(text);
    this.#number++;
    this.#open = [];
    this.#openBytes = 0;
  }

  #take(line: Buffer | string): void {
    if (this.#headerLine === 0) {
      const text = withoutMark(String(line)).trim();
      if (text === '' || text.startsWith('#')) return;
      this.#headerLine = this.#number;
    }
    this.#withText++;
    this.#lastWithText = this.#number;
    if (this.#headSize >= headBytes) return;
    this.#headSize += line.length;
    this.#head.push(withoutMark(String(line)));
  }

  #text(last?: Buffer): string {
    return Buffer.concat(last ? [...this.#open, last] : this.#open)
      .subarray(0, longestLine)
      .toString('utf8');
  }

  #refuseByte(byte: number): never {
    // Read as Latin-1 every byte is a character, so the place can be shown.
    const text = Buffer.concat(this.#open).toString('latin1').replace(/\r$/, '');
    const column = byte - this.#wholeBytes + 1;
    const code = text
      .charCodeAt(column - 1)
      .toString(16)
      .toUpperCase()
      .padStart(2, '0');
    throw new Refusal(refuse('run/not-utf8', { byte: byte + 1, code }, place(this.#name, this.#number, text, column)));
  }

  #refuse(code: Fault['code'], data: Fault['data'], text: string): never {
    throw new Refusal(refuse(code, data, place(this.#name, this.#number, text)));
  }
}

/** A place in a log. */
export function place(file: string, line: number, text: string, column = 1, length = 1): Place {
  return { file, line, column, length, text };
}

function withoutMark(text: string): string {
  return text.startsWith('\uFEFF') ? text.slice(1) : text;
}

function readError(error: unknown, name: string): unknown {
  const { code, message } = error as NodeJS.ErrnoException;
  if (code?.startsWith('Z_') || /incorrect header|unexpected end/.test(message))
    return new Refusal(refuse('run/packed', { file: name }));
  return error;
}
