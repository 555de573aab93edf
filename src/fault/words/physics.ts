import type { FaultData, Sentences } from '../fault.ts';

type Words = Record<string, (data: FaultData) => Sentences>;

export const physicsWords = {
  'physics/no-usb-level': (d) => ({
    found: `${d.voltage} V is no fixed voltage of USB Power Delivery`,
    expected: `one of ${list(d.known)}`,
    remedy: 'take the voltage that the source and the device agreed on; adjustable supplies state their own current',
  }),
  'physics/usb-cable': (d) => ({
    found: `a cable rated "${d.cable}" doesn't carry ${d.voltage} V`,
    expected: 'above 20 V a cable marked for the extended power range (5 A, 240 W)',
    remedy: 'use such a cable, or plan with 20 V',
  }),
  'physics/unknown-interface-metal': (d) => ({
    found: `"${d.name}" is not an interface metal in the table`,
    expected: `one of ${list(d.known)}`,
    remedy: d.near ? `did you mean "${d.near}"?` : 'ask its maker what it may touch; until then it is open',
  }),
  'physics/unknown-surface': (d) => ({
    found: `"${d.name}" is not a surface in the table`,
    expected: `one of ${list(d.known)}`,
    remedy: d.near ? `did you mean "${d.near}"?` : 'find out what the surface is made of; until then it is open',
  }),
  'physics/unknown-bath': (d) => ({
    found: `"${d.name}" is not a plating bath in the table`,
    expected: `one of ${list(d.known)}`,
    remedy: d.near ? `did you mean "${d.near}"?` : 'ask a commercial plater',
  }),
  'physics/bath-outside-range': (d) => ({
    found: `${d.condition} of ${d.value} ${d.unit} is outside the published range of ${d.bath}`,
    expected: `${d.low} to ${d.high} ${d.unit}`,
    remedy: 'thickness and adhesion are not what the law gives there; leave it to a commercial plater',
  }),
  'physics/bath-range-open': (d) => ({
    found: `no range of ${d.condition} was found for ${d.bath}`,
    remedy: 'ask the maker of the bath, or leave it to a commercial plater',
  }),
} satisfies Words;

function list(value: FaultData[string]): string {
  return Array.isArray(value) ? value.join(', ') : String(value);
}
