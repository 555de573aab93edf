import type { Stock } from './stock.ts';

/**
 * Ends of what a new part adds to its own resistance between the taps of the sense lines [Ω]. Stacked on another, both its joints and the pad metal up
 * to the taps lie in its way. In place of another, the taps may lie inside of its joints as well: then nothing is added.
 */
export function jointOf({ joint, kelvin }: Stock, stacked: boolean): { readonly low: number; readonly high: number } {
  return { low: stacked ? joint.low + kelvin.low : 0, high: joint.high + kelvin.high };
}
