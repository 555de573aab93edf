import { expect, test } from 'vitest';
import { rtdResistance, rtdTemperature } from './rtd.ts';

test('temperature to resistance and back gives the temperature to 1e-9 K', () => {
  for (let celsius = -200; celsius <= 850; celsius += 0.5) {
    const back = rtdTemperature(1000, rtdResistance(1000, 273.15 + celsius)!)!;
    expect(Math.abs(back - 273.15 - celsius), `${celsius} °C`).toBeLessThan(1e-9);
  }
});

// IEC 60751:2008, table 1: it begins at 18.52 Ω and ends at 390.48 Ω.
test('outside −200 °C to 850 °C there is neither resistance nor temperature', () => {
  for (const celsius of [-200, 850]) expect(rtdResistance(100, 273.15 + celsius)).not.toBeNull();
  for (const celsius of [-200.001, 850.001, Number.NaN]) expect(rtdResistance(100, 273.15 + celsius)).toBeNull();
  for (const ohms of [18.52, 390.48]) expect(rtdTemperature(100, ohms)).not.toBeNull();
  // The exact ends are 18.52008 Ω and 390.48113 Ω; half of the last printed digit, 0.005 Ω, may be missing or left over.
  for (const ohms of [18.5151, 390.4861]) expect(rtdTemperature(100, ohms)).not.toBeNull();
  for (const ohms of [18.51505, 390.48615]) expect(rtdTemperature(100, ohms)).toBeNull();
  for (const ohms of [18.51, 390.49, 0, Number.NaN]) expect(rtdTemperature(100, ohms)).toBeNull();
});
