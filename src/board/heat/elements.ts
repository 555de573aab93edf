import { bondLineThickness } from '../../physics/thermal/bond-line.ts';
import { finEfficiency } from '../../physics/thermal/fin-efficiency.ts';
import { layerResistance } from '../../physics/thermal/layer.ts';
import { peakSpreadingResistance } from '../../physics/thermal/spreading-resistance.ts';
import type { HeatElement } from '../../study/schema/heat.ts';
import type { PlateOnBoard } from '../plate/plate-on-board.ts';
import type { Slots } from '../slots.ts';

/** Thermal resistance of one element from the input vector [K/W]; NaN or less than zero when the numbers can't be one. */
export type ElementResistance = (x: Float64Array) => number;

/** One element of the way from node to node. `plate`: loaded with the same inputs before, where an element is pressed by it. */
export function elementResistance(element: HeatElement, slots: Slots, plate: PlateOnBoard | null): ElementResistance {
  if ('resistance' in element) {
    const resistance = slots.of(element.resistance);
    return (x) => x[resistance];
  }
  if ('layer' in element) {
    const { layer } = element;
    const [t, k, a] = [slots.of(layer.thickness), slots.of(layer.conductivity), slots.of(layer.area)];
    return (x) => layerResistance(x[t], x[k], x[a]);
  }
  if ('contact' in element) {
    const [r, a] = [slots.of(element.contact.resistance), slots.of(element.contact.area)];
    return (x) => x[r] / x[a];
  }
  if ('bond-line' in element) {
    const line = element['bond-line'];
    const [y, p] = [slots.of(line['yield-stress']), slots.maybe(line.pressure)];
    const [k, a] = [slots.of(line.conductivity), slots.of(line.area)];
    const die = line['pressed-by'] ?? '';
    const pressure = p < 0 ? () => plate!.pressureOn(die) : (x: Float64Array) => x[p];
    return (x) => layerResistance(bondLineThickness(x[y], pressure(x)), x[k], x[a]);
  }
  if ('spreading' in element) {
    const { spreading } = element;
    const [source, plate] = [slots.of(spreading['source-area']), slots.of(spreading['plate-area'])];
    const [t, k, h] = [slots.of(spreading.thickness), slots.of(spreading.conductivity), slots.of(spreading.film)];
    return (x) => peakSpreadingResistance(x[source], x[plate], x[t], x[k], x[h]);
  }
  if ('heat-pipes' in element) {
    const each = slots.of(element['heat-pipes'].each);
    const { count } = element['heat-pipes'];
    return (x) => x[each] / count;
  }
  if ('fins' in element) {
    const { fins } = element;
    const [h, w, t] = [slots.of(fins.height), slots.of(fins.width), slots.of(fins.thickness)];
    const [k, f] = [slots.of(fins.conductivity), slots.of(fins.film)];
    const { count } = fins;
    return (x) => 1 / (count * 2 * x[h] * x[w] * x[f] * finEfficiency(x[f], x[k], x[t], x[h]));
  }
  const [coefficient, area] = [slots.of(element.film.coefficient), slots.of(element.film.area)];
  return (x) => 1 / (x[coefficient] * x[area]);
}
