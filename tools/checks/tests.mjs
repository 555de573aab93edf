// Runs the tests, or reads the results of a run that has just been, and counts them.
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { relative } from 'node:path';
import { runTool } from './run.mjs';

const PACKAGE_TEST = 'test/package.test.ts';

/** `ready`: a file of results in Vitest's JSON; null runs the tests now. */
export async function checkTests(ready) {
  let file = ready;
  if (file === null) {
    file = 'tmp/tests.json';
    rmSync(file, { force: true });
    const { code, output } = await runTool('vitest', ['run', '--reporter=json', `--outputFile=${file}`]);
    if (!existsSync(file))
      return { said: `no results, exit ${code}`, faults: output.trim().split('\n'), passed: 0, failed: 1 };
  }
  const results = JSON.parse(readFileSync(file, 'utf8'));
  const faults = results.testResults.flatMap(describeFailures);
  const { numPassedTests: passed, numPendingTests: skipped, numTodoTests: todo } = results;
  // A file that fails before its first test has no failed tests of its own, but counts as one.
  const failed = Math.max(faults.length, results.success ? 0 : 1);
  const packaged = results.testResults.find(({ name }) => relative('.', name) === PACKAGE_TEST);
  return {
    said: `${passed} passed, ${failed} failed, ${skipped + todo} skipped in ${results.testResults.length} files`,
    faults: failed > 0 && faults.length === 0 ? ['the run as a whole failed'] : faults,
    passed,
    failed,
    packaged: packaged?.status === 'passed',
  };
}

function describeFailures({ name, status, message, assertionResults }) {
  const failures = assertionResults.filter((result) => result.status === 'failed');
  if (failures.length === 0)
    return status === 'failed' ? [`${relative('.', name)}: ${message || 'failed before its first test'}`] : [];
  return failures.map(
    ({ fullName, failureMessages }) => `${relative('.', name)}: ${fullName}\n    ${failureMessages.join('\n    ')}`,
  );
}
