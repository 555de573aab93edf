// TypeScript modules run from memory, so that one can be changed and what depends on it run anew within milliseconds.
import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import ts from 'typescript';

const outside = createRequire(import.meta.url);

/** Modules by path relative to the project. `replace`: packages to give in place of installed ones. */
export class Modules {
  #replace;
  #code = new Map();
  #needs = new Map();
  #loaded = new Map();
  #changed = null;

  constructor(replace) {
    this.#replace = replace;
  }

  /** The exports of a module. `only`: which files a glob import takes. */
  load(path, only) {
    const known = this.#loaded.get(path);
    if (known) return known;
    const exports = {};
    this.#loaded.set(path, exports);
    const need = (name) => this.#need(path, name, only);
    const glob = (pattern) => {
      const folder = join(dirname(path), dirname(pattern));
      const files = listFiles(folder).filter((file) => only === undefined || only.has(file));
      return Object.fromEntries(files.map((file) => [file, this.load(file, only)]));
    };
    try {
      new Function('exports', 'require', '__glob', '__url', this.#codeOf(path))(
        exports,
        need,
        glob,
        pathToFileURL(path).href,
      );
    } catch (error) {
      this.#loaded.delete(path);
      throw error;
    }
    return exports;
  }

  /** Files that a module needs, directly or through others, itself among them. */
  needs(path) {
    const known = this.#needs.get(path);
    if (known) return known;
    const all = new Set([path]);
    this.#needs.set(path, all);
    this.#codeOf(path);
    const source = readFileSync(path, 'utf8');
    const direct = [...source.matchAll(/from '(\.[^']+\.ts)'/g)].map(([, name]) => join(dirname(path), name));
    for (const file of direct) for (const each of this.needs(file)) all.add(each);
    return all;
  }

  /** Puts other text in the place of a file; what depends on it runs anew. Null: as it is on disk. */
  change(path, text) {
    const before = this.#changed?.path;
    this.#changed = text === null ? null : { path, code: transpile(text) };
    for (const loaded of [...this.#loaded.keys()]) {
      const needs = this.needs(loaded);
      if (needs.has(path) || needs.has(before)) this.#loaded.delete(loaded);
    }
  }

  /** Forgets a module, so that it runs again when it is loaded. */
  forget(path) {
    this.#loaded.delete(path);
  }

  #codeOf(path) {
    if (this.#changed?.path === path) return this.#changed.code;
    const known = this.#code.get(path);
    if (known !== undefined) return known;
    const code = transpile(readFileSync(path, 'utf8'));
    this.#code.set(path, code);
    return code;
  }

  #need(from, name, only) {
    if (name in this.#replace) return this.#replace[name];
    if (!name.startsWith('.')) return outside(name);
    const path = join(dirname(from), name);
    return path.endsWith('.ts') ? this.load(path, only) : outside(join(process.cwd(), path));
  }
}

/** The TypeScript files of a folder. */
export function listFiles(folder) {
  return readdirSync(folder)
    .filter((name) => name.endsWith('.ts'))
    .map((name) => join(folder, name));
}

function transpile(text) {
  const plain = text
    .replace(/import\.meta\.glob<[^(]*>\(/g, '__glob(')
    .replaceAll('import.meta.glob(', '__glob(')
    .replaceAll('import.meta.url', '__url');
  return ts.transpileModule(plain, {
    compilerOptions: { target: ts.ScriptTarget.ES2022, module: ts.ModuleKind.CommonJS, esModuleInterop: true },
  }).outputText;
}
