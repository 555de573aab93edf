import { access, constants, readFile, realpath, rename, rm, stat, writeFile } from 'node:fs/promises';
import { Refusal, refuse } from '../fault/fault.ts';

/**
 * Puts `after` in the place of a study file that was read as `before`: whole, or not at all.
 * Throws a Refusal when the file has been changed since it was read.
 */
export async function replaceStudy(path: string, before: string, after: string): Promise<void> {
  const file = await realpath(path);
  // A file that may not be written to could still be replaced by another: that is not what its owner meant.
  await access(file, constants.W_OK);
  const { mode } = await stat(file);
  const making = `${file}.${process.pid}.new`;
  try {
    await writeFile(making, after, { mode, flag: 'wx' });
    if (!(await readFile(file)).equals(Buffer.from(before)))
      throw new Refusal(refuse('study/changed-meanwhile', { path }));
    await rename(making, file);
  } finally {
    await rm(making, { force: true });
  }
}
