import { type Fault, refuse } from '../../fault/fault.ts';
import { nearest } from '../../fault/nearest.ts';
import type { Lines } from '../lines.ts';
import { keysAt, textAt } from '../outline.ts';
import { type Path, type Raw, spanAt } from '../raw.ts';
import type { Step } from '../study.ts';

/** What is learnt exists: the numbers, the limiter, the instrument, the steps of the runs; a number of a step names a step that exists. */
export function checkLearning(file: Raw, steps: readonly Step[], lines: Lines): Fault[] {
  const faults: Fault[] = [];
  const addresses = [...new Set(steps.flatMap((step) => [...step.quantities.values()]))];
  const mustBe = (path: Path, to: string, names: readonly string[]) => {
    const name = textAt(file, path);
    if (name === undefined || names.includes(name)) return;
    const data = {
      name,
      to,
      field: path.join('.'),
      nearest: nearest(name, names),
      names: names.length > 30 ? [] : names,
      isPart: 0,
    };
    faults.push(refuse('study/unknown-name', data, lines.place(spanAt(file, path))));
  };
  mustBe(['learning', 'limiter'], 'limiter', keysAt(file, ['limiters']));
  mustBe(['learning', 'power-channel'], 'instrument', keysAt(file, ['instruments']));
  const stepIds = steps.map((step) => step.id);
  for (const run of keysAt(file, ['learning', 'at'])) mustBe(['learning', 'at', run], 'step', stepIds);
  for (const index of keysAt(file, ['learning', 'learn']).map(Number)) {
    const path = ['learning', 'learn', index];
    const [, id] = (textAt(file, path) ?? '').split('#');
    if (id !== undefined && !stepIds.includes(id)) {
      const place = lines.place(spanAt(file, path));
      faults.push(
        refuse(
          'study/unknown-name',
          { name: id, to: 'step', field: path.join('.'), nearest: nearest(id, stepIds), names: stepIds, isPart: 0 },
          place,
        ),
      );
    } else {
      mustBe(path, 'number', addresses);
      const name = textAt(file, path) ?? '';
      if (steps.some(({ board }) => board.correlations?.some(({ between }) => between.includes(name))))
        faults.push(refuse('study/correlated-learnt', { name }, lines.place(spanAt(file, path))));
    }
  }
  return faults;
}
