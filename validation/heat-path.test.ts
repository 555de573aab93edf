import { describe, expect, test } from 'vitest';
import { bondLineThickness } from '../src/physics/thermal/bond-line.ts';
import { channelFilm } from '../src/physics/thermal/channel-film.ts';
import { contactConductance } from '../src/physics/thermal/contact.ts';
import { settledTemperature } from '../src/physics/thermal/electrothermal-fixed-point.ts';
import { finEfficiency } from '../src/physics/thermal/fin-efficiency.ts';
import { peakSpreadingResistance, spreadingResistance } from '../src/physics/thermal/spreading-resistance.ts';

// Incropera and DeWitt, section 3.6: a short fin is all at the root's temperature, a long one carries √(2hkt) per width.
test('limits: a short fin has all of its area, a long one carries what a very long one does', () => {
  expect(finEfficiency(40, 200, 0.4e-3, 1e-5)).toBeCloseTo(1, 5);
  expect(finEfficiency(0, 200, 0.4e-3, 25e-3)).toBe(1);
  const [film, conductivity, thickness, height] = [200, 15, 0.2e-3, 0.1];
  const carried = 2 * film * height * finEfficiency(film, conductivity, thickness, height);
  expect(carried / Math.sqrt(2 * film * conductivity * thickness)).toBeCloseTo(1, 6);
});

describe('spreading', () => {
  /** Mean temperature of a centred square source on a square plate, film on the far side, all of it but the plain layer and film [K/W]. */
  function exactSpreading(
    plate: number,
    source: number,
    thickness: number,
    conductivity: number,
    film: number,
  ): number {
    const terms = 300;
    const wave = (m: number) => (m * 2 * Math.PI) / plate;
    const share = (m: number) => Math.sin((wave(m) * source) / 2) / ((wave(m) * source) / 2);
    const depth = (z: number) => {
      const tanh = Math.tanh(z * thickness);
      return (z + (film / conductivity) * tanh) / (conductivity * z * (z * tanh + film / conductivity));
    };
    let sum = 0;
    for (let m = 1; m <= terms; m++) {
      sum += 4 * share(m) ** 2 * depth(wave(m));
      for (let n = 1; n <= terms; n++) sum += 4 * (share(m) * share(n)) ** 2 * depth(Math.hypot(wave(m), wave(n)));
    }
    return sum / plate ** 2;
  }

  const plates: [plate: number, source: number, thickness: number, conductivity: number, film: number][] = [
    [60e-3, 15e-3, 2e-3, 390, 2000],
    [60e-3, 15e-3, 5e-3, 390, 2000],
    [60e-3, 30e-3, 2e-3, 390, 2000],
    [40e-3, 12e-3, 3e-3, 200, 1000],
    [100e-3, 10e-3, 1e-3, 390, 500],
  ];

  // Y. S. Muzychka, J. R. Culham, M. M. Yovanovich, J. Electronic Packaging 125 (2003): Fourier series of the rectangular plate.
  test.each(plates)('plate %f m, source %f m, %f m thick: within 6 % of the exact series', (plate, source, t, k, h) => {
    const ratio = spreadingResistance(source ** 2, plate ** 2, t, k, h) / exactSpreading(plate, source, t, k, h);
    expect(Math.abs(ratio - 1)).toBeLessThan(0.06);
  });

  // H. S. Carslaw, J. C. Jaeger, Conduction of Heat in Solids, 1959, 8.2: the centre of a uniform disc on a half-space stands 1/(π·k·a) above it.
  test('a small source on a thick plate is a disc on a half-space', () => {
    const [radius, conductivity] = [1e-4, 390];
    const peak = peakSpreadingResistance(Math.PI * radius ** 2, 1, 1, conductivity, 1000);
    expect(peak * Math.PI * conductivity * radius).toBeCloseTo(1, 3);
  });

  test('a source as large as its plate has nothing to spread', () => {
    expect(spreadingResistance(1e-4, 1e-4, 1e-3, 390, 1000)).toBe(0);
    expect(peakSpreadingResistance(1e-4, 1e-4, 1e-3, 390, 1000)).toBe(0);
  });
});

// Energy balance: at a crawl the air leaves at the fins' temperature, h·(2·L·H) = ρ·c·v·b·H, so h = ρ·c·v·b/(2·L), with k = ρ·c·ν/Pr.
test('slow air leaves as hot as the fins', () => {
  const [velocity, gap, length] = [0.001, 1e-3, 0.1];
  const [density, specificHeat, viscosity, prandtl] = [1.184, 1007, 1.562e-5, 0.7296];
  const film = channelFilm(velocity, gap, length, (density * specificHeat * viscosity) / prandtl, viscosity, prandtl);
  expect(film / ((density * specificHeat * velocity * gap) / (2 * length))).toBeCloseTo(1, 4);
});

// The exponent alone: twice the pressure multiplies contact conductance by 2^0.95 = 1.9319 and a bond line by 2^−0.166 = 0.8913.
test('twice the pressure', () => {
  const contact = (pressure: number) => contactConductance(390, 180, 1e-6, 0.1, pressure, 1.1e9);
  expect(contact(1e6) / contact(5e5)).toBeCloseTo(1.9319, 4);
  expect(bondLineThickness(100, 2e5) / bondLineThickness(100, 1e5)).toBeCloseTo(0.8913, 4);
});

describe('loss that grows with temperature', () => {
  // Maxim Integrated, tutorial 1832: assume a temperature, compute loss and temperature, repeat.
  test.each([
    [333.15, 20, 0.8, 0.8, 0.005, 298.15],
    [298.15, 5, 3, 10, 0.004, 298.15],
    [343.15, 40, 0, 2, 0.0099, 373.15],
  ])(
    'the closed form is where the published iteration ends: %f K, %f K/W',
    (ambient, resistance, fixed, growing, a, reference) => {
      let temperature = ambient;
      for (let i = 0; i < 500; i++)
        temperature = ambient + resistance * (fixed + growing * (1 + a * (temperature - reference)));
      expect(settledTemperature(ambient, resistance, fixed, growing, a, reference)).toBeCloseTo(temperature, 6);
    },
  );

  test('from a loop gain of 1 on the iteration has no end and the closed form no temperature', () => {
    expect(settledTemperature(333.15, 100, 0.8, 2, 0.005, 298.15)).toBe(Number.POSITIVE_INFINITY);
    expect(settledTemperature(333.15, 150, 0.8, 2, 0.005, 298.15)).toBe(Number.POSITIVE_INFINITY);
  });
});
