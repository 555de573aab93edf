import { deratedRating } from '../physics/electrical/derating.ts';
import type {
  ConductorPart,
  Derating,
  LoadPart,
  Part,
  RegulatorPart,
  SensePart,
  SupplyPart,
} from '../study/schema/parts.ts';
import type { LimitRequest, Limits } from './limits.ts';
import type { Slots } from './slots.ts';

/** Rating that falls on a straight line with a temperature output; undefined when the part states no line. */
function line(derating: Derating | undefined, temperature: string, slots: Slots): LimitRequest['derated'] {
  if (!derating) return undefined;
  const [from, end] = [slots.column(derating.from), slots.column(derating.end)];
  return { temperature, rule: (rating, t, lane) => deratedRating(rating, t, from[lane], end[lane]) };
}

function supplyLimits(id: string, part: SupplyPart, limits: Limits): void {
  const title = part.title ?? id;
  const power = { kind: 'power', unit: 'W' } as const;
  const current = { kind: 'current', unit: 'A' } as const;
  limits.add({
    ...power,
    id: `parts.${id}.rated-power`,
    title: `${title}: rated power`,
    rating: part['rated-power'],
    of: `parts.${id}.power`,
    consequence: 'the supply runs beyond its rating and overheats',
  });
  limits.add({
    ...current,
    id: `parts.${id}.rated-current`,
    title: `${title}: rated current`,
    rating: part['rated-current'],
    of: `parts.${id}.current`,
    consequence: 'the supply runs beyond its rating and overheats',
  });
  limits.add({
    ...current,
    id: `parts.${id}.over-current`,
    title: `${title}: switch-off at peak current`,
    rating: part['over-current'],
    of: `parts.${id}.peak-current`,
    consequence: 'the supply switches off and the machine stops',
  });
}

function conductorLimits(id: string, part: ConductorPart, limits: Limits): void {
  limits.add({
    id: `parts.${id}.rated-current`,
    title: `${part.title ?? id}: rated current`,
    rating: part['rated-current'],
    kind: 'current',
    unit: 'A',
    of: `parts.${id}.current`,
    consequence: 'it overheats or opens',
    derated: line(part.derating, `heat.nodes.${part.heats}.temperature`, limits.slots),
  });
}

function senseLimits(id: string, part: SensePart, limits: Limits): void {
  part.fitted.forEach((resistor, i) => {
    limits.add({
      id: `parts.${id}.fitted.${i}.rated-power`,
      title: `${part.title ?? id}: dissipation of ${resistor.title ?? `resistor ${i + 1}`}`,
      rating: resistor['rated-power'],
      kind: 'power',
      unit: 'mW',
      of: `parts.${id}.fitted.${i}.dissipation`,
      consequence: 'the resistor drifts or opens',
      derated: line(resistor.derating, `heat.nodes.${part.heats}.temperature`, limits.slots),
    });
  });
}

function regulatorLimits(id: string, part: RegulatorPart, limits: Limits): void {
  const title = part.title ?? id;
  const current = { kind: 'current', unit: 'A' } as const;
  const { stage, inductor } = part;
  limits.add({
    ...current,
    id: `parts.${id}.stage.rated-current`,
    title: `${title}: current of one stage`,
    rating: stage['rated-current'],
    of: `parts.${id}.phase-current`,
    consequence: 'the power stage fails',
    derated: line(stage.derating, `parts.${id}.junction-temperature`, limits.slots),
  });
  limits.add({
    id: `parts.${id}.stage.junction-limit`,
    title: `${title}: junction of a stage`,
    rating: stage['junction-limit'],
    kind: 'temperature',
    unit: '°C',
    of: `parts.${id}.junction-temperature`,
    consequence: 'the power stage fails',
  });
  limits.add({
    ...current,
    id: `parts.${id}.inductor.saturation-current`,
    title: `${title}: peak current of an inductor`,
    rating: inductor['saturation-current'],
    of: `parts.${id}.inductor-peak`,
    consequence: 'the inductance falls and ripple and peak current run up',
  });
  limits.add({
    ...current,
    id: `parts.${id}.inductor.heating-current`,
    title: `${title}: rms current of an inductor`,
    rating: inductor['heating-current'],
    of: `parts.${id}.inductor-rms`,
    consequence: 'the inductor overheats',
  });
  limits.add({
    ...current,
    id: `parts.${id}.input-capacitors.rated-ripple`,
    title: `${title}: ripple current of an input capacitor`,
    rating: part['input-capacitors']['rated-ripple'],
    of: `parts.${id}.capacitor-ripple`,
    consequence: 'the capacitor heats and ages early',
  });
}

function loadLimits(id: string, part: LoadPart, limits: Limits): void {
  limits.add({
    id: `parts.${id}.rated-current`,
    title: `${part.title ?? id}: current of its rail`,
    rating: part['rated-current'],
    kind: 'current',
    unit: 'A',
    of: `parts.${id}.current`,
    consequence: 'the rail’s copper or the package’s contacts overheat',
  });
}

/** The limits a part brings. */
export function addPartLimits(id: string, part: Part, limits: Limits): void {
  if (part.kind === 'supply') supplyLimits(id, part, limits);
  else if (part.kind === 'conductor') conductorLimits(id, part, limits);
  else if (part.kind === 'sense') senseLimits(id, part, limits);
  else if (part.kind === 'regulator') regulatorLimits(id, part, limits);
  else loadLimits(id, part, limits);
}
