import { type Fault, type Place, refuse } from '../../fault/fault.ts';
import type { Path } from '../raw.ts';
import type { Derating } from '../schema/parts.ts';
import type { Board } from '../schema/study.ts';

/** Numbers that have to stand in an order: a loss curve's currents rise, a derating ends above where it begins. */
export function checkOrders(board: Board, place: (path: Path) => Place): Fault[] {
  const faults: Fault[] = [];
  const derating = (path: Path, line: Derating | undefined) => {
    if (!line || line.end.value > line.from.value) return;
    faults.push(refuse('study/derating-order', { from: line.from.text, end: line.end.text }, place([...path, 'end'])));
  };
  for (const [name, part] of Object.entries(board.parts)) {
    const path = ['parts', name];
    if (part.kind === 'conductor') derating([...path, 'derating'], part.derating);
    if (part.kind === 'sense')
      part.fitted.forEach(
        (resistor, index) => void derating([...path, 'fitted', index, 'derating'], resistor.derating),
      );
    if (part.kind !== 'regulator') continue;
    derating([...path, 'stage', 'derating'], part.stage.derating);
    if (part.losses.by !== 'curve') continue;
    const { points } = part.losses;
    for (let i = 1; i < points.length; i++) {
      if (points[i].current.value > points[i - 1].current.value) continue;
      const at = [...path, 'losses', 'points', i, 'current'];
      faults.push(
        refuse('study/curve-order', { before: points[i - 1].current.text, current: points[i].current.text }, place(at)),
      );
    }
  }
  return faults;
}
