// Everything that has to hold before a change goes in, one line a check. Exit code 1 when anything fails.
// `--tested FILE` takes the test results from a run that has just been instead of running the tests again.
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { checkDocs } from './checks/docs.mjs';
import { checkBuild, checkFormat, checkRooms, checkSize, checkTypes, checkUnused } from './checks/source.mjs';
import { checkTests } from './checks/tests.mjs';

process.chdir(fileURLToPath(new URL('..', import.meta.url)));
const { values } = parseArgs({ options: { tested: { type: 'string' } } });

let passed = 0;
let failed = 0;

async function report(name, check) {
  const began = performance.now();
  let result;
  try {
    result = await check();
  } catch (error) {
    result = { said: 'could not be checked', faults: [error.stack] };
  }
  const seconds = ((performance.now() - began) / 1000).toFixed(1);
  const verdict = result.faults.length === 0 ? 'ok    ' : 'FAILED';
  console.log(`${verdict}  ${name.padEnd(8)}  ${result.said}  (${seconds} s)`);
  for (const fault of result.faults) console.log(`    ${fault.replaceAll('\n', '\n    ')}`);
  passed += result.passed ?? (result.faults.length === 0 ? 1 : 0);
  failed += result.failed ?? (result.faults.length === 0 ? 0 : 1);
  return result;
}

await report('build', checkBuild);
await report('types', checkTypes);
await report('format', checkFormat);
await report('rooms', checkRooms);
await report('unused', checkUnused);
await report('size', checkSize);
await report('docs', checkDocs);
const tests = await report('tests', () => checkTests(values.tested ?? null));
await report('package', async () => ({
  said: tests.packaged ? 'the packed tarball installs and runs' : 'the packed tarball is not shown to install and run',
  faults: tests.packaged ? [] : ['test/package.test.ts did not pass'],
}));

console.log(`${passed} passed, ${failed} failed`);
if (failed > 0) process.exitCode = 1;
