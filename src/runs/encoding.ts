/** Name of an encoding that isn't UTF-8 and shows at the beginning of a file; null where none shows. */
export function encodingOf(beginning: Uint8Array): string | null {
  const [a, b, c, d] = beginning;
  if ((a === 0xff && b === 0xfe) || (a === 0xfe && b === 0xff)) return 'UTF-16';
  // ASCII text in two bytes each: every other one is zero.
  if (a > 0 && b === 0 && c > 0 && d === 0) return 'UTF-16LE';
  if (a === 0 && b > 0 && c === 0 && d > 0) return 'UTF-16BE';
  return null;
}

/** Finds the first byte of a stream that can't be UTF-8. */
export class Utf8Check {
  readonly #decoder = new TextDecoder('utf-8', { fatal: true });
  #bytes = 0;
  /** The last bytes before the next chunk: a character of up to four may lie across. */
  #rest: Uint8Array = new Uint8Array(0);

  /** Index in the stream of the first wrong byte, or null. */
  take(chunk: Uint8Array): number | null {
    try {
      this.#decoder.decode(chunk, { stream: true });
    } catch {
      const known = new Uint8Array([...this.#rest, ...chunk]);
      return this.#bytes - this.#rest.length + wrongByte(known);
    }
    this.#rest = unfinished(chunk.length < 4 ? new Uint8Array([...this.#rest, ...chunk]) : chunk);
    this.#bytes += chunk.length;
    return null;
  }

  /** The same for a stream that ends within a character. */
  end(): number | null {
    return this.#rest.length > 0 ? this.#bytes - this.#rest.length : null;
  }
}

/** The bytes at the end that begin a character and don't end it. */
function unfinished(bytes: Uint8Array): Uint8Array {
  for (let back = 1; back <= Math.min(3, bytes.length); back++) {
    const byte = bytes[bytes.length - back];
    if ((byte & 0xc0) === 0x80) continue;
    const size = byte >= 0xf0 ? 4 : byte >= 0xe0 ? 3 : byte >= 0xc0 ? 2 : 1;
    return bytes.slice(size > back ? bytes.length - back : bytes.length);
  }
  return new Uint8Array(0);
}

/** Where the first character begins that isn't one: everything before it can be decoded, it with the bytes behind it can't. */
function wrongByte(bytes: Uint8Array): number {
  let [good, bad] = [0, bytes.length];
  while (bad - good > 1) {
    const middle = (good + bad) >>> 1;
    if (decodes(bytes.subarray(0, middle), true)) good = middle;
    else bad = middle;
  }
  while (good > 0 && !decodes(bytes.subarray(0, good), false)) good--;
  return good;
}

function decodes(bytes: Uint8Array, stream: boolean): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes, { stream });
    return true;
  } catch {
    return false;
  }
}
