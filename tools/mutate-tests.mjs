// Vitest's describe, test and expect, as little of them as it takes to ask whether any test fails.
import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';

const ofVitest = createRequire(createRequire(import.meta.url).resolve('vitest/package.json'));
const expecting = await import(pathToFileURL(ofVitest.resolve('@vitest/expect')));
const { chai, ASYMMETRIC_MATCHERS_OBJECT: _, JestExtend, JestChaiExpect, JestAsymmetricMatchers } = expecting;
for (const plugin of [JestExtend, JestChaiExpect, JestAsymmetricMatchers]) chai.use(plugin);

/** Collects the tests of the modules that are loaded while it is used. */
export class Tests {
  #found = [];

  /** What a test file imports as 'vitest'. */
  get vitest() {
    const add = (name, run) => this.#found.push({ name, run });
    const test = Object.assign(add, {
      each: (cases) => (name, run) => {
        for (const each of cases) add(name, () => (Array.isArray(each) ? run(...each) : run(each)));
      },
    });
    const describe = Object.assign((_name, body) => body(), {
      each: (cases) => (_name, body) => {
        for (const each of cases) Array.isArray(each) ? body(...each) : body(each);
      },
    });
    const expect = Object.assign((value, message) => chai.expect(value, message), chai.expect);
    return { describe, test, it: test, expect };
  }

  take() {
    return this.#found.splice(0);
  }
}
