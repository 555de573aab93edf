import { bondLineThickness } from '../../physics/thermal/bond-line.ts';
import { finEfficiency } from '../../physics/thermal/fin-efficiency.ts';
import { layerResistance } from '../../physics/thermal/layer.ts';
import { peakSpreadingResistance } from '../../physics/thermal/spreading-resistance.ts';
import type { HeatElement } from '../../study/schema/heat.ts';
import type { PlateOnBoard } from '../plate/plate-on-board.ts';
import type { Slots } from '../slots.ts';

/** Thermal resistance of one element in one lane [K/W]; NaN or less than zero when the numbers can't be one. */
export type ElementResistance = (lane: number) => number;

/** One element of the way from node to node. `plate`: loaded with the same inputs before, where an element is pressed by it. */
export function elementResistance(element: HeatElement, slots: Slots, plate: PlateOnBoard | null): ElementResistance {
  if ('resistance' in element) {
    const resistance = slots.column(element.resistance);
    return (s) => resistance[s];
  }
  if ('layer' in element) {
    const { layer } = element;
    const [t, k, a] = [slots.column(layer.thickness), slots.column(layer.conductivity), slots.column(layer.area)];
    return (s) => layerResistance(t[s], k[s], a[s]);
  }
  if ('contact' in element) {
    const [r, a] = [slots.column(element.contact.resistance), slots.column(element.contact.area)];
    return (s) => r[s] / a[s];
  }
  if ('bond-line' in element) {
    const line = element['bond-line'];
    const y = slots.column(line['yield-stress']);
    const p = line.pressure ? slots.column(line.pressure) : plate!.pressureOn(line['pressed-by'] ?? '');
    const [k, a] = [slots.column(line.conductivity), slots.column(line.area)];
    return (s) => layerResistance(bondLineThickness(y[s], p[s]), k[s], a[s]);
  }
  if ('spreading' in element) {
    const { spreading } = element;
    const [source, plate] = [slots.column(spreading['source-area']), slots.column(spreading['plate-area'])];
    const [t, k] = [slots.column(spreading.thickness), slots.column(spreading.conductivity)];
    const h = slots.column(spreading.film);
    return (s) => peakSpreadingResistance(source[s], plate[s], t[s], k[s], h[s]);
  }
  if ('heat-pipes' in element) {
    const each = slots.column(element['heat-pipes'].each);
    const { count } = element['heat-pipes'];
    return (s) => each[s] / count;
  }
  if ('fins' in element) {
    const { fins } = element;
    const [h, w, t] = [slots.column(fins.height), slots.column(fins.width), slots.column(fins.thickness)];
    const [k, f] = [slots.column(fins.conductivity), slots.column(fins.film)];
    const { count } = fins;
    return (s) => 1 / (count * 2 * h[s] * w[s] * f[s] * finEfficiency(f[s], k[s], t[s], h[s]));
  }
  const [coefficient, area] = [slots.column(element.film.coefficient), slots.column(element.film.area)];
  return (s) => 1 / (coefficient[s] * area[s]);
}
