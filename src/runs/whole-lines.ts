import { createWriteStream } from 'node:fs';
import { pipeline } from 'node:stream/promises';
import { openLog } from './scan.ts';

/** Copies the first bytes of a log, unpacked: the lines without the last one, which was cut off. Answers the copy's path. */
export async function copyWhole(file: string, copy: string, bytes: number): Promise<string> {
  async function* beginning(source: AsyncIterable<Buffer>) {
    let left = bytes;
    for await (const chunk of source) {
      if (left > 0) yield chunk.subarray(0, left);
      left -= chunk.length;
    }
  }
  await pipeline(openLog(file), beginning, createWriteStream(copy));
  return copy;
}
