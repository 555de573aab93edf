import { type Fault, type Place, refuse } from '../../fault/fault.ts';
import { nearest } from '../../fault/nearest.ts';
import { correlatedGroups, correlationFactor } from '../../metrology/ties.ts';
import { kinds } from '../../quantity/kind.ts';
import type { Quantity } from '../../quantity/quantity.ts';
import type { Path } from '../raw.ts';
import type { Board } from '../schema/study.ts';

/**
 * What is said to be shared or correlated exists at some step and fits: an offset is of the kind of the numbers it is added to, correlated numbers
 * have uncertainties, and no coefficients contradict each other. `numbers`: those of all steps, by path.
 */
export function checkCommonCauses(
  { shared = {}, correlations = [] }: Board,
  numbers: ReadonlyMap<string, Quantity>,
  place: (path: Path) => Place,
): Fault[] {
  const known = [...numbers.keys()].filter((path) => !path.startsWith('shared.'));
  const unknown = (name: string, path: Path): Fault[] => {
    if (known.includes(name)) return [];
    const data = { name, to: 'number', field: path.join('.'), nearest: nearest(name, known), names: [], isPart: 0 };
    return [refuse('study/unknown-name', data, place(path))];
  };
  const twice = (names: readonly string[], path: Path): Fault[] =>
    names.flatMap((name, index) =>
      names.indexOf(name) === index
        ? []
        : [refuse('study/named-twice', { name, field: path.join('.') }, place([...path, index]))],
    );

  const ofShared = Object.entries(shared).flatMap(([id, entry]) => {
    const path = ['shared', id, 'of'];
    const kind = 'offset' in entry ? entry.offset.kind : null;
    const misfits = entry.of.flatMap((name, index) => {
      const target = numbers.get(name);
      if (!kind || !target || String(kinds[target.kind].dimension) === String(kinds[kind].dimension)) return [];
      const data = { name, kind: kinds[target.kind].title, shared: id, offset: kinds[kind].title };
      return [refuse('study/offset-kind', data, place([...path, index]))];
    });
    return [
      ...entry.of.flatMap((name, index) => unknown(name, [...path, index])),
      ...twice(entry.of, path),
      ...misfits,
    ];
  });

  const ofCorrelations = correlations.flatMap(({ between }, index) => {
    const path = ['correlations', index, 'between'];
    const again = correlations.findIndex((other) => between.every((name) => other.between.includes(name)));
    return between.flatMap((name, k) => [
      ...unknown(name, [...path, k]),
      ...(numbers.get(name)?.spread === null ? [refuse('study/exact-correlated', { name }, place([...path, k]))] : []),
      ...(k === 1 && between[0] === between[1] ? twice(between, path) : []),
      ...(k === 1 && again < index ? [refuse('study/correlated-twice', { names: between }, place(path))] : []),
    ]);
  });
  const faults = [...ofShared, ...ofCorrelations];
  if (faults.length > 0) return faults;
  return correlatedGroups(correlations).flatMap((names) => {
    if (correlationFactor(names, correlations)) return [];
    const index = correlations.findLastIndex(({ between }) => names.includes(between[0]));
    return [refuse('study/impossible-correlations', { names }, place(['correlations', index, 'coefficient']))];
  });
}
