// The same draws solved by NumPy in a process of its own, asked for one round at a time.
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';

const program = fileURLToPath(new URL('board_numpy.py', import.meta.url));
const oneCore = { OPENBLAS_NUM_THREADS: '1', OMP_NUM_THREADS: '1', MKL_NUM_THREADS: '1' };

/** Starts Python with NumPy on the exported board; null where there is none. */
export async function startNumpy(files, columns) {
  const child = spawn('python3', [program, files.board, files.rows, String(columns), files.start], {
    env: { ...process.env, ...oneCore },
    stdio: ['pipe', 'pipe', 'pipe'],
  });
  let complaint = '';
  child.stderr.on('data', (text) => {
    complaint += text;
  });
  const missing = new Promise((resolve) => child.on('error', () => resolve({ done: true })));
  const lines = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
  const answer = async () => {
    const { value, done } = await Promise.race([lines.next(), missing]);
    if (!done) return JSON.parse(value);
    const noNumpy = complaint === '' || complaint.includes("No module named 'numpy'");
    if (noNumpy) return null;
    throw new Error(complaint);
  };
  const versions = await answer();
  if (!versions) return null;
  const ask = (question) => {
    child.stdin.write(`${question}\n`);
    return answer();
  };
  return {
    versions,
    solve: () => ask('run'),
    async results(folder) {
      const file = join(folder, 'results.f64');
      await ask(`write ${file}`);
      const bytes = readFileSync(file);
      return new Float64Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength));
    },
    stop: () => child.stdin.end(),
  };
}
