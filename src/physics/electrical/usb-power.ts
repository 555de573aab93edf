import { type Fault, refuse } from '../../fault/fault.ts';

/** What a cable carries: plain 3 A; marked 5 A up to 20 V; marked for the extended range, 5 A up to 48 V. */
export type UsbCable = '3 A' | '5 A' | 'extended';

/** One fixed voltage of USB Power Delivery. */
export interface UsbLevel {
  /** [V] */
  readonly voltage: number;
  readonly range: 'standard' | 'extended';
  /** Current that the power rules provide for, by cable [A]; a cable that isn't named can't be used. */
  readonly current: Readonly<Partial<Record<UsbCable, number>>>;
  /** A source rated above this power has to offer the level [W]; extended levels follow the source's rating. */
  readonly offeredAbove: number;
}

/**
 * Fixed voltages of USB Power Delivery revision 3.1. A source may offer more than 3 A below 20 V
 * through a marked cable; it counts only when that source says so.
 * Source: IEC 62680-1-2 (USB Power Delivery revision 3.1, 2021), through published summaries of its tables, not read in the original.
 */
export const usbLevels: readonly UsbLevel[] = [
  { voltage: 5, range: 'standard', current: { '3 A': 3, '5 A': 3, extended: 3 }, offeredAbove: 0 },
  { voltage: 9, range: 'standard', current: { '3 A': 3, '5 A': 3, extended: 3 }, offeredAbove: 15 },
  { voltage: 15, range: 'standard', current: { '3 A': 3, '5 A': 3, extended: 3 }, offeredAbove: 27 },
  { voltage: 20, range: 'standard', current: { '3 A': 3, '5 A': 5, extended: 5 }, offeredAbove: 45 },
  { voltage: 28, range: 'extended', current: { extended: 5 }, offeredAbove: 100 },
  { voltage: 36, range: 'extended', current: { extended: 5 }, offeredAbove: 140 },
  { voltage: 48, range: 'extended', current: { extended: 5 }, offeredAbove: 180 },
];

/** Current [A] and power [W] at a level, or why there are none. */
export type UsbPower =
  | { readonly ok: true; readonly level: UsbLevel; readonly current: number; readonly power: number }
  | { readonly ok: false; readonly fault: Fault };

/**
 * Current and power that may be counted on at a fixed voltage through a cable [A, W].
 *
 * Refuses `physics/no-usb-level` for a voltage that is no fixed level, `physics/usb-cable` for a cable that doesn't carry the level.
 * Source: IEC 62680-1-2 (USB Power Delivery revision 3.1, 2021).
 */
export function usbPower(voltage: number, cable: UsbCable): UsbPower {
  const level = usbLevels.find((one) => one.voltage === voltage);
  if (!level) {
    const known = usbLevels.map((one) => `${one.voltage} V`);
    return { ok: false, fault: refuse('physics/no-usb-level', { voltage, known }) };
  }
  const current = level.current[cable];
  if (current === undefined) return { ok: false, fault: refuse('physics/usb-cable', { voltage, cable }) };
  return { ok: true, level, current, power: voltage * current };
}

/**
 * Fixed voltages that a source of a rated power has to offer [V].
 *
 * above 15 W also 9 V, above 27 W also 15 V, above 45 W also 20 V; extended range above 100 W 28 V, above 140 W 36 V, above 180 W 48 V
 *
 * Source: IEC 62680-1-2 (USB Power Delivery revision 3.1, 2021), power rules.
 */
export function usbVoltages(power: number): readonly number[] {
  return usbLevels.filter(({ offeredAbove }) => power > offeredAbove).map(({ voltage }) => voltage);
}
