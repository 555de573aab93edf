import { describe, expect, test } from 'vitest';
import { airDensity, airHeatCapacityRate } from '../src/physics/thermal/air-heating.ts';
import { bondLineThickness } from '../src/physics/thermal/bond-line.ts';
import { channelFilm, channelNusselt } from '../src/physics/thermal/channel-film.ts';
import { contactConductance } from '../src/physics/thermal/contact.ts';
import { settledTemperature } from '../src/physics/thermal/electrothermal-fixed-point.ts';
import { finEfficiency } from '../src/physics/thermal/fin-efficiency.ts';
import { heatPipeResistance } from '../src/physics/thermal/heat-pipe.ts';
import { layerResistance } from '../src/physics/thermal/layer.ts';
import { peakSpreadingResistance, spreadingResistance } from '../src/physics/thermal/spreading-resistance.ts';
import { type Published, testPublished } from './published.test-data.ts';

describe('layers', () => {
  const padNote =
    'gap pad tolerance example, DigiKey TechForum 61355: 10 W over 900 mm², 5 W/(m·K), 30 °C on the hot side';
  const pads: [thickness: number, cold: number][] = [
    [2.032e-3, 25.484],
    [1.829e-3, 25.936],
    [2.235e-3, 25.033],
  ];
  testPublished([
    ...pads.map(([thickness, cold]): Published => {
      return {
        what: `drop across ${thickness * 1e3} mm of pad [K]`,
        computed: 10 * layerResistance(thickness, 5, 900e-6),
        published: 30 - cold,
        tolerance: 0.001,
        why: 'last printed digit',
        source: padNote,
      };
    }),
    {
      what: '100 µm of 5 W/(m·K) over 100 mm² [K/W]',
      computed: layerResistance(100e-6, 5, 100e-6),
      published: 0.2,
      tolerance: 0.001,
      why: 'the figure is exact',
      source: 'thermal interface materials, rfessentials.com',
    },
  ]);

  // Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, example 3.2: 1e4 W/m² from a chip, air at 25 °C and 100 W/(m²·K) on both
  // sides, on one side behind an epoxy joint of 0.9e-4 m²K/W and 8 mm of aluminium (239 W/(m·K)): 75.3 °C.
  test('layers in series and ways in parallel give a published chip temperature', () => {
    const behind = 0.9e-4 + layerResistance(8e-3, 239, 1) + 1 / 100;
    expect(25 + 1e4 / (100 + 1 / behind)).toBeCloseTo(75.31, 2);
  });
});

describe('straight fins', () => {
  const table: [mH: number, percent: number, tolerance: number][] = [
    [0.2, 99, 0.35],
    [0.5, 92, 0.45],
    [1, 76, 0.45],
    [2, 48, 0.25],
  ];
  testPublished(
    table.map(([mH, published, tolerance]): Published => {
      const [conductivity, thickness, height] = [200, 0.4e-3, 25e-3];
      const film = ((mH / height) ** 2 * conductivity * thickness) / 2;
      return {
        what: `efficiency at m·H = ${mH} [%]`,
        computed: 100 * finEfficiency(film, conductivity, thickness, height),
        published,
        tolerance,
        why: 'up to half of the last printed digit, less where one per cent would not show',
        source: 'fin efficiency table, fluidspad.com',
      };
    }),
  );

  // Incropera and DeWitt, section 3.6: a short fin is all at the root's temperature, a long one carries √(2hkt) per width.
  test('limits: a short fin has all of its area, a long one carries what a very long one does', () => {
    expect(finEfficiency(40, 200, 0.4e-3, 1e-5)).toBeCloseTo(1, 5);
    expect(finEfficiency(0, 200, 0.4e-3, 25e-3)).toBe(1);
    const [film, conductivity, thickness, height] = [200, 15, 0.2e-3, 0.1];
    const carried = 2 * film * height * finEfficiency(film, conductivity, thickness, height);
    expect(carried / Math.sqrt(2 * film * conductivity * thickness)).toBeCloseTo(1, 6);
  });
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

  const plates: [
    plate: number,
    source: number,
    thickness: number,
    conductivity: number,
    film: number,
    mean: number,
    peak: number,
  ][] = [
    [60e-3, 15e-3, 2e-3, 390, 2000, 0.164555, 0.214405],
    [60e-3, 15e-3, 5e-3, 390, 2000, 0.081612, 0.106336],
    [60e-3, 30e-3, 2e-3, 390, 2000, 0.053042, 0.084643],
    [40e-3, 12e-3, 3e-3, 200, 1000, 0.20402, 0.275156],
    [100e-3, 10e-3, 1e-3, 390, 500, 0.673762, 0.801384],
  ];

  testPublished(
    plates.flatMap(([plate, source, thickness, conductivity, film, mean, peak]): Published[] => {
      const what = `${source * 1e3} mm on ${plate * 1e3} mm, ${thickness * 1e3} mm thick`;
      const inputs = [source ** 2, plate ** 2, thickness, conductivity, film] as const;
      const common = {
        tolerance: 2e-6,
        why: 'last digit',
        source: 'equations of Song, Lee and Au, 1994 (from memory), evaluated by a separate program',
      };
      return [
        { what: `mean, ${what} [K/W]`, computed: spreadingResistance(...inputs), published: mean, ...common },
        { what: `peak, ${what} [K/W]`, computed: peakSpreadingResistance(...inputs), published: peak, ...common },
      ];
    }),
  );

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

  // S. Lee, Electronics Cooling 4 (1998) 30–33 (from memory): 0.66 K/W; one per cent doesn't show in two digits, so it stands beside the table.
  test('a published heat sink: 25 mm on 100 mm of aluminium, 1.3 mm thick, 1.0 K/W behind', () => {
    const peak = peakSpreadingResistance(0.025 ** 2, 0.1 ** 2, 1.3e-3, 200, 1 / (1.0 * 0.1 ** 2));
    expect(Math.abs(peak - 0.66)).toBeLessThan(0.005);
  });
});

describe('air', () => {
  const table: [celsius: number, density: number, specificHeat: number][] = [
    [20, 1.204, 1007],
    [25, 1.184, 1007],
    [40, 1.127, 1007],
    [60, 1.059, 1007],
    [80, 0.9994, 1008],
  ];
  const cengel = 'Heat and Mass Transfer, Y. A. Çengel, table A-15, air at 1 atm';
  testPublished(
    table.flatMap(([celsius, density, specificHeat]): Published[] => [
      {
        what: `density at ${celsius} °C [kg/m³]`,
        computed: airDensity(celsius + 273.15),
        published: density,
        tolerance: 0.001,
        why: 'last printed digit',
        source: cengel,
      },
      {
        what: `heat taken up by 1 m³/s at ${celsius} °C [W/K]`,
        computed: airHeatCapacityRate(1, celsius + 273.15),
        published: density * specificHeat,
        tolerance: 0.002 * density * specificHeat,
        why: 'specific heat is taken as constant',
        source: cengel,
      },
    ]),
  );
});

describe('film between plate fins', () => {
  const teertstra =
    'model of Teertstra, Yovanovich, Culham and Lemczyk, 1999, as quoted from Culham and Muzychka, 2001, evaluated by a separate program at Pr = 0.71';
  const values: [reynolds: number, nusselt: number][] = [
    [0.1, 0.0355],
    [1, 0.3525],
    [10, 2.42103],
    [100, 6.90375],
  ];
  testPublished(
    values.map(([reynolds, published]): Published => {
      const computed = channelNusselt(reynolds, 0.71);
      return {
        what: `Nu at Re* = ${reynolds} [1]`,
        computed,
        published,
        tolerance: 1e-5,
        why: 'last digit',
        source: teertstra,
      };
    }),
  );

  // Energy balance: at a crawl the air leaves at the fins' temperature, h·(2·L·H) = ρ·c·v·b·H, so h = ρ·c·v·b/(2·L), with k = ρ·c·ν/Pr.
  test('slow air leaves as hot as the fins', () => {
    const [velocity, gap, length] = [0.001, 1e-3, 0.1];
    const [density, specificHeat, viscosity, prandtl] = [1.184, 1007, 1.562e-5, 0.7296];
    const film = channelFilm(velocity, gap, length, (density * specificHeat * viscosity) / prandtl, viscosity, prandtl);
    expect(film / ((density * specificHeat * velocity * gap) / (2 * length))).toBeCloseTo(1, 4);
  });
});

describe('heat pipe, interface and contact', () => {
  testPublished([
    {
      what: 'heat pipe, 6 cm, two layers of #500 mesh [K/W]',
      computed: heatPipeResistance(3.618e-3, 1.474),
      published: 2.95,
      tolerance: 0.006,
      why: 'last printed digit, cut',
      source: 'Qpedia Thermal eMagazine, heat pipe example',
    },
  ]);

  const prasher =
    'scaling law of Prasher et al., IMECE2002-32118, constants from memory, evaluated by a separate program';
  const lines: [yieldStress: number, pressure: number, micrometres: number][] = [
    [100, 100e3, 41.62],
    [100, 200e3, 37.09],
    [100, 500e3, 31.86],
    [100, 1000e3, 28.4],
    [500, 100e3, 54.36],
  ];
  testPublished(
    lines.map(([yieldStress, pressure, published]): Published => {
      return {
        what: `bond line, ${yieldStress} Pa at ${pressure / 1e3} kPa [µm]`,
        computed: 1e6 * bondLineThickness(yieldStress, pressure),
        published,
        tolerance: 0.006,
        why: 'last digit',
        source: prasher,
      };
    }),
  );
  testPublished([
    {
      what: 'copper on aluminium, 0.8 µm and 0.1 each, 0.5 MPa against 1.1 GPa [W/(m²·K)]',
      computed: contactConductance(390, 180, 0.8e-6 * Math.SQRT2, 0.1 * Math.SQRT2, 0.5e6, 1.1e9),
      published: 25_705,
      tolerance: 1,
      why: 'last digit',
      source: 'Yovanovich, 2005 (coefficient from memory), evaluated by a separate program',
    },
  ]);

  // The exponent alone: twice the pressure multiplies contact conductance by 2^0.95 = 1.9319 and a bond line by 2^−0.166 = 0.8913.
  test('twice the pressure', () => {
    const contact = (pressure: number) => contactConductance(390, 180, 1e-6, 0.1, pressure, 1.1e9);
    expect(contact(1e6) / contact(5e5)).toBeCloseTo(1.9319, 4);
    expect(bondLineThickness(100, 2e5) / bondLineThickness(100, 1e5)).toBeCloseTo(0.8913, 4);
  });
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

  testPublished([
    {
      what: 'junction, 1.94 W over 40 K/W above 70 °C [°C]',
      computed: settledTemperature(70, 40, 1.94, 0, 0, 25),
      published: 147.6,
      tolerance: 0.05,
      why: 'half of the last printed digit',
      source: 'LTC3780 data sheet, Linear Technology, page 23',
    },
  ]);
});
