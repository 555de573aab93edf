import { type Fault, type Place, refuse } from '../../fault/fault.ts';
import { compatibility, interfaceMetals } from '../../physics/chemistry/compatibility.ts';
import type { Path } from '../raw.ts';
import type { HeatElement } from '../schema/heat.ts';
import type { Board } from '../schema/study.ts';

/**
 * Interface metals beside the surfaces that they touch: refused where the surface is destroyed or short-circuited, warned of where the pair works with
 * conditions or nothing is known about it.
 */
export function checkJoints({ heat }: Board, place: (path: Path) => Place): Fault[] {
  return Object.entries(heat.links).flatMap(([name, link]) =>
    link.through.flatMap((element, index) => {
      const joint = jointOf(element);
      if (!joint?.material || !Object.hasOwn(interfaceMetals, joint.material)) return [];
      const { kind, material, surfaces } = joint;
      const at = ['heat', 'links', name, 'through', index, kind];
      if (!surfaces)
        return [
          warn(
            'study/surfaces-not-named',
            { material, field: [...at, 'surfaces'].join('.') },
            place([...at, 'material']),
          ),
        ];
      return surfaces.flatMap((surface, k) => {
        const told = compatibility(material, surface);
        if (!told.ok) throw new Error(`the schema lets "${material}" on "${surface}" pass, the table knows it not`);
        const { verdict, reason, timeScale, source } = told.entry;
        if (verdict === 'fine') return [];
        const data = { material, surface, reason, timeScale, source };
        const here = place([...at, 'surfaces', k]);
        if (verdict === 'never') return [refuse('study/destroys-surface', data, here)];
        return [warn(verdict === 'warned' ? 'study/attacks-surface' : 'study/unknown-pair', data, here)];
      });
    }),
  );
}

function warn(code: Fault['code'], data: Fault['data'], place: Place): Fault {
  return { code, severity: 'warning', data, place };
}

function jointOf(element: HeatElement) {
  if ('bond-line' in element) return { kind: 'bond-line', ...element['bond-line'] };
  if ('contact' in element) return { kind: 'contact', ...element.contact };
  return 'layer' in element ? { kind: 'layer', ...element.layer } : null;
}
