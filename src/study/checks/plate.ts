import { type Fault, type Place, refuse } from '../../fault/fault.ts';
import { nearest } from '../../fault/nearest.ts';
import type { Path } from '../raw.ts';
import type { Board } from '../schema/study.ts';

/** The plate has something that pulls and something that carries it, and its pads' curves rise; what is pressed by a die names one. */
export function checkPlate({ plate, heat }: Board, place: (path: Path, part?: 'key') => Place): Fault[] {
  const { screws = {}, pads = {}, dies = {}, stops = {} } = plate ?? {};
  const faults: Fault[] = [];
  if (plate && Object.keys(screws).length === 0)
    faults.push(refuse('study/nothing-pulls', {}, place(['plate', 'screws'], 'key')));
  if (plate && [pads, dies, stops].every((parts) => Object.keys(parts).length === 0))
    faults.push(refuse('study/nothing-carries', {}, place(['plate'], 'key')));
  for (const [name, { curve }] of Object.entries(pads)) {
    curve.forEach((point, index) => {
      const before = curve[index - 1];
      const rises =
        !before || (point.strain.value > before.strain.value && point.pressure.value > before.pressure.value);
      const at = ['plate', 'pads', name, 'curve', index];
      if (!(point.strain.value < 1))
        faults.push(refuse('study/pad-crushed', { strain: point.strain.text }, place([...at, 'strain'])));
      else if (!rises) {
        const say = ({ strain, pressure }: typeof point) => `${strain.text}, ${pressure.text}`;
        const data = { before: say(before), point: say(point) };
        faults.push(refuse('study/pad-curve-order', data, place([...at, 'pressure'])));
      }
    });
  }
  for (const [name, link] of Object.entries(heat.links)) {
    link.through.forEach((element, index) => {
      if (!('bond-line' in element)) return;
      const at = ['heat', 'links', name, 'through', index, 'bond-line'];
      const { pressure, 'pressed-by': die } = element['bond-line'];
      const field = at.join('.');
      if (pressure && die !== undefined)
        faults.push(refuse('study/pressure-and-plate', { field }, place([...at, 'pressed-by'], 'key')));
      if (!pressure && die === undefined) faults.push(refuse('study/no-pressure', { field }, place(at, 'key')));
      if (die === undefined || Object.hasOwn(dies, die)) return;
      const names = Object.keys(dies);
      const data = {
        name: die,
        to: 'die',
        field: `${field}.pressed-by`,
        nearest: nearest(die, names),
        names,
        isPart: 0,
      };
      faults.push(refuse('study/unknown-name', data, place([...at, 'pressed-by'])));
    });
  }
  return faults;
}
