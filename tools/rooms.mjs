// Compares the imports between rooms, and from npm packages, with what rooms.json declares: neither more nor less.
// `--write` declares what is there, as far as the order of the rooms allows it.
import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { cruise } from 'dependency-cruiser';

const root = fileURLToPath(new URL('..', import.meta.url));
const declarations = new URL('rooms.json', import.meta.url);
const TEST = /\.test(-data)?\.tsx?$/;
const TEST_PACKAGES = ['vitest', 'fast-check'];

/**
 * Every import that leaves its room: { room, kind: 'may' | 'packages' | 'node', target, where }.
 * Tests may read files and use the test packages in every room; for the rest they obey the same rules.
 */
export async function findImports() {
  process.chdir(root);
  const { output } = await cruise(['src'], { tsPreCompilationDeps: true, doNotFollow: { path: 'node_modules' } });
  return output.modules
    .filter((module) => module.source.startsWith('src/'))
    .flatMap(({ source, dependencies }) => dependencies.map((dependency) => describeImport(source, dependency)))
    .filter((found) => found && found.target !== found.room);
}

function describeImport(source, { module, resolved, coreModule, couldNotResolve }) {
  const room = source.split('/')[1];
  const where = `${source}:${lineOf(source, module)} imports '${module}'`;
  const isTest = TEST.test(source);
  if (coreModule) return isTest ? null : { room, kind: 'node', target: 'node', where };
  if (resolved.startsWith('src/')) return { room, kind: 'may', target: resolved.split('/')[1], where };
  if (module.startsWith('.')) return couldNotResolve ? { room, kind: 'missing', target: module, where } : null;
  const target = module.startsWith('@') ? module.split('/').slice(0, 2).join('/') : module.split('/')[0];
  return isTest && TEST_PACKAGES.includes(target) ? null : { room, kind: 'packages', target, where };
}

function lineOf(source, module) {
  const lines = readFileSync(source, 'utf8').split('\n');
  return lines.findIndex((line) => line.includes(`'${module}'`)) + 1;
}

/** The reason why a room may never import another, whatever is declared; null when it may. */
function forbidden({ order, never }, from, to) {
  if (!order.includes(to)) return `"${to}" is no room`;
  if (order.indexOf(to) > order.indexOf(from)) return `"${to}" stands above "${from}"`;
  if (never[from]?.includes(to)) return `"${from}" never uses "${to}"`;
  return null;
}

/** What differs, one line a fault, and how many edges there are. */
export function compare(declared, imports) {
  const faults = new Set();
  const { order, rooms } = declared;
  const used = new Set();
  for (const { room, kind, target, where } of imports) {
    if (!order.includes(room)) faults.add(`${where}: "${room}" is no room`);
    else if (kind === 'missing') faults.add(`${where}, which isn't there`);
    else if (kind === 'node') {
      if (!rooms[room].node) faults.add(`${where}: "${room}" is a room without Node`);
    } else {
      used.add(`${room} ${kind} ${target}`);
      const reason = kind === 'may' ? forbidden(declared, room, target) : null;
      if (reason) faults.add(`${where}: ${reason}`);
      else if (!rooms[room][kind].includes(target)) faults.add(`${where}: "${room}" to "${target}" isn't declared`);
    }
  }
  for (const [room, { may, packages }] of Object.entries(rooms)) {
    for (const target of may) {
      if (!used.has(`${room} may ${target}`))
        faults.add(`rooms.json: "${room}" to "${target}" is declared, nobody uses it`);
    }
    for (const target of packages) {
      if (!used.has(`${room} packages ${target}`))
        faults.add(`rooms.json: "${room}" to package "${target}" is declared, nobody uses it`);
    }
  }
  const edges = [...used].filter((edge) => edge.includes(' may ')).length;
  return { faults: [...faults].sort(), edges, packages: used.size - edges };
}

function declareUsed(declared, imports) {
  const targets = (room, kind) =>
    [
      ...new Set(imports.filter((found) => found.room === room && found.kind === kind).map((found) => found.target)),
    ].sort();
  const rooms = {};
  for (const room of declared.order) {
    const may = targets(room, 'may').filter((target) => !forbidden(declared, room, target));
    may.sort((one, other) => declared.order.indexOf(one) - declared.order.indexOf(other));
    rooms[room] = { node: declared.rooms[room]?.node ?? false, may, packages: targets(room, 'packages') };
  }
  return { ...declared, rooms };
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  let declared = JSON.parse(readFileSync(declarations, 'utf8'));
  const imports = await findImports();
  if (process.argv.includes('--write')) {
    declared = declareUsed(declared, imports);
    writeFileSync(declarations, JSON.stringify(declared, null, 2));
    execFileSync('node_modules/.bin/biome', ['format', '--write', fileURLToPath(declarations)], { stdio: 'ignore' });
  }
  const { faults, edges, packages } = compare(declared, imports);
  for (const fault of faults) console.error(fault);
  console.log(
    `rooms: ${edges} edges and ${packages} packages, ${faults.length === 0 ? 'as declared' : `${faults.length} faults`}`,
  );
  if (faults.length > 0) process.exitCode = 1;
}
