import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import type { Readable } from 'node:stream';
import { createGunzip } from 'node:zlib';
import { type Fault, type Place, Refusal, refuse } from '../fault/fault.ts';

/** Longest line a log may have [bytes]; a longer one is no table of readings. */
export const longestLine = 1_000_000;
const headBytes = 65_536;

/** What one pass over a log has found. */
export interface Scan {
  /** SHA-256 of the file as it lies there, compressed or not. */
  readonly sha256: string;
  readonly bytes: number;
  /** Lines with text in them, the header counted. */
  readonly lines: number;
  /** The first whole lines, for finding out how the log is written. */
  readonly head: readonly string[];
  /** Line number of the header, where comment or empty lines stand before it. */
  readonly headerLine: number;
  /** True when the last line has no line end: it may have been cut off. */
  readonly openEnd: boolean;
}

/** The log's bytes, unpacked where its name ends in .gz. */
export function openLog(file: string): Readable {
  const source = createReadStream(file);
  if (!file.endsWith('.gz')) return source;
  const unpacked = createGunzip();
  source.on('error', (error) => unpacked.destroy(error));
  return source.pipe(unpacked);
}

/** One pass over a log at the speed of the disk: hash, encoding, line lengths. Throws a Refusal for what is no text log. `name` is shown in places. */
export async function scanLog(file: string, name: string, progress?: (bytes: number) => void): Promise<Scan> {
  const sha256 = await hashFile(file);
  const decoder = new TextDecoder('utf-8', { fatal: true });
  let bytes = 0;
  let lines = 0;
  let lineBytes = 0;
  let lineHasText = false;
  let head = '';
  let lastByte = 10;
  try {
    for await (const chunk of openLog(file) as AsyncIterable<Buffer>) {
      if (bytes === 0) checkBeginning(chunk, name);
      const nul = chunk.indexOf(0);
      if (nul >= 0) throw refusal('run/binary', { byte: bytes + nul }, place(name, lines + 1, ''));
      checkUtf8(decoder, chunk, name, lines + 1, bytes);
      if (head.length < headBytes) head += chunk.toString('utf8', 0, headBytes);
      for (let from = 0; from < chunk.length; ) {
        const end = chunk.indexOf(10, from);
        const stop = end < 0 ? chunk.length : end;
        lineBytes += stop - from;
        if (stop > from + (chunk[stop - 1] === 13 ? 1 : 0)) lineHasText = true;
        if (lineBytes > longestLine)
          throw refusal('run/long-line', { bytes: longestLine }, place(name, lines + 1, chunk.toString('utf8', 0, 200)));
        if (end >= 0) {
          if (lineHasText) lines++;
          lineBytes = 0;
          lineHasText = false;
        }
        from = stop + 1;
      }
      bytes += chunk.length;
      lastByte = chunk[chunk.length - 1];
      progress?.(bytes);
    }
  } catch (error) {
    throw error instanceof Refusal ? error : readError(error, name);
  }
  if (bytes === 0) throw refusal('run/empty', {}, place(name, 1, ''));
  const openEnd = lastByte !== 10;
  if (openEnd && lineHasText) lines++;
  const all = head.replace(/^\uFEFF/, '').split(/\r?\n/);
  // The last piece may be the beginning of a line only.
  const whole = head.length >= headBytes ? all.slice(0, -1) : all;
  const headerLine = 1 + whole.findIndex((line) => line.trim() !== '' && !line.startsWith('#'));
  if (headerLine === 0) throw refusal('run/empty', {}, place(name, 1, ''));
  return { sha256, bytes, lines, head: whole.slice(headerLine - 1).filter((line) => line !== ''), headerLine, openEnd };
}

/** A place in a log. */
export function place(file: string, line: number, text: string, column = 1, length = 1): Place {
  return { file, line, column, length, text };
}

function refusal(code: Fault['code'], data: Fault['data'], at: Place): Refusal {
  return new Refusal(refuse(code, data, at));
}

async function hashFile(file: string): Promise<string> {
  const hash = createHash('sha256');
  for await (const chunk of createReadStream(file)) hash.update(chunk);
  return hash.digest('hex');
}

function checkBeginning(chunk: Buffer, name: string): void {
  const [a, b] = chunk;
  if ((a === 0xff && b === 0xfe) || (a === 0xfe && b === 0xff))
    throw refusal('run/encoding', { found: 'UTF-16' }, place(name, 1, ''));
}

function checkUtf8(decoder: TextDecoder, chunk: Buffer, name: string, line: number, before: number): void {
  try {
    decoder.decode(chunk, { stream: true });
  } catch {
    throw refusal('run/encoding', { found: `something else, near byte ${before}` }, place(name, line, ''));
  }
}

function readError(error: unknown, name: string): unknown {
  const { code, message } = error as NodeJS.ErrnoException;
  if (code?.startsWith('Z_') || /incorrect header|unexpected end/.test(message))
    return refusal('run/packed', { file: name }, place(name, 1, ''));
  return error;
}
