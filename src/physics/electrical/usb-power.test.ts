import { expect, test } from 'vitest';
import { usbLevels, usbPower, usbVoltages } from './usb-power.ts';

test('a voltage that is no fixed level is refused', () => {
  for (const voltage of [0, 12, 19, 19.999, 50]) {
    const found = usbPower(voltage, '3 A');
    expect(found.ok ? 'accepted' : found.fault.code).toBe('physics/no-usb-level');
  }
});

// USB Power Delivery revision 3.1: above 20 V only through a cable marked for the extended range.
test('a cable that does not carry the level is refused', () => {
  for (const voltage of [28, 36, 48]) {
    for (const cable of ['3 A', '5 A'] as const) {
      const found = usbPower(voltage, cable);
      expect(found.ok ? 'accepted' : found.fault.code).toBe('physics/usb-cable');
    }
  }
});

// Power rules of USB Power Delivery: above 15 W also 9 V, above 27 W 15 V, above 45 W 20 V; 140, 180, 240 W in the extended range.
test.each([
  [0.5, [5]],
  [15, [5]],
  [15.1, [5, 9]],
  [27.1, [5, 9, 15]],
  [45.1, [5, 9, 15, 20]],
  [100.1, [5, 9, 15, 20, 28]],
  [140.1, [5, 9, 15, 20, 28, 36]],
  [180.1, [5, 9, 15, 20, 28, 36, 48]],
  [27, [5, 9]],
  [45, [5, 9, 15]],
  [60, [5, 9, 15, 20]],
  [100, [5, 9, 15, 20]],
  [140, [5, 9, 15, 20, 28]],
  [180, [5, 9, 15, 20, 28, 36]],
  [240, [5, 9, 15, 20, 28, 36, 48]],
])('a source of %d W offers %j V', (power, voltages) => {
  expect(usbVoltages(power)).toEqual(voltages);
});

test('just above a rule the next voltage has to be there', () => {
  for (const { voltage, offeredAbove } of usbLevels) {
    expect(usbVoltages(offeredAbove)).not.toContain(voltage);
    expect(usbVoltages(offeredAbove + 0.1)).toContain(voltage);
  }
});

test('the extended range starts above 20 V', () => {
  for (const { voltage, range } of usbLevels) expect(range).toBe(voltage > 20 ? 'extended' : 'standard');
});
