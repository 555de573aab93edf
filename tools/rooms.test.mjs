import { expect, test } from 'vitest';
import { compare } from './rooms.mjs';

const declared = {
  order: ['numeric', 'physics', 'charts', 'web'],
  never: { charts: ['physics'] },
  rooms: {
    numeric: { node: false, may: [], packages: [] },
    physics: { node: false, may: ['numeric'], packages: ['zod'] },
    charts: { node: false, may: [], packages: [] },
    web: { node: false, may: [], packages: [] },
  },
};
const asDeclared = [
  { room: 'physics', kind: 'may', target: 'numeric', where: 'a' },
  { room: 'physics', kind: 'packages', target: 'zod', where: 'b' },
];

test('imports exactly as declared have no fault', () => {
  expect(compare(declared, asDeclared)).toEqual({ faults: [], edges: 1, packages: 1 });
});

test.each([
  [
    'an edge that is not declared',
    [{ room: 'web', kind: 'may', target: 'numeric', where: 'w:1' }],
    /w:1.*isn't declared/,
  ],
  ['an edge up the order', [{ room: 'numeric', kind: 'may', target: 'physics', where: 'n:1' }], /n:1.*stands above/],
  ['an edge ruled out by name', [{ room: 'charts', kind: 'may', target: 'physics', where: 'c:1' }], /c:1.*never uses/],
  [
    'a package that is not declared',
    [{ room: 'numeric', kind: 'packages', target: 'yaml', where: 'n:2' }],
    /n:2.*isn't declared/,
  ],
  ['Node in a room without it', [{ room: 'numeric', kind: 'node', target: 'node', where: 'n:3' }], /n:3.*without Node/],
  ['a folder that is no room', [{ room: 'misc', kind: 'may', target: 'numeric', where: 'm:1' }], /"misc" is no room/],
])('%s is one fault that says where', (_, more, said) => {
  const { faults } = compare(declared, [...asDeclared, ...more]);
  expect(faults).toHaveLength(1);
  expect(faults[0]).toMatch(said);
});

test('an edge up the order stays a fault when it is declared', () => {
  const upward = {
    ...declared,
    rooms: { ...declared.rooms, numeric: { node: false, may: ['physics'], packages: [] } },
  };
  const { faults } = compare(upward, [
    ...asDeclared,
    { room: 'numeric', kind: 'may', target: 'physics', where: 'n:1' },
  ]);
  expect(faults).toEqual([expect.stringContaining('stands above')]);
});

test('a declared edge or package that nobody uses is a fault', () => {
  expect(compare(declared, []).faults).toHaveLength(2);
});
