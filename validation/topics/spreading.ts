import { readFileSync } from 'node:fs';
import { coneResistance } from '../../src/physics/thermal/cone-spreading.ts';
import {
  halfSpaceCentreResistance,
  halfSpaceMeanResistance,
  isothermalDiscResistance,
} from '../../src/physics/thermal/half-space-spreading.ts';
import { discSpreading } from '../../src/physics/thermal/spreading-disc.ts';
import { rectangleSpreading, type Spreading } from '../../src/physics/thermal/spreading-rectangle.ts';
import type { Figure, Topic } from '../topic.ts';

interface Plate {
  readonly thickness: number;
  readonly conductivity: number;
  readonly film: number;
  /** Above ambient, for one watt [K/W]. */
  readonly mean: number;
  readonly centre: number;
}

interface Rectangle extends Plate {
  readonly shape: 'rectangle';
  readonly width: number;
  readonly depth: number;
  readonly source_width: number;
  readonly source_depth: number;
  readonly centre_x: number;
  readonly centre_y: number;
}

interface Disc extends Plate {
  readonly shape: 'disc';
  readonly plate_radius: number;
  readonly source_radius: number;
}

const reference: { readonly cases: readonly (Rectangle | Disc)[] } = JSON.parse(
  readFileSync(new URL('../spreading/reference.json', import.meta.url), 'utf8'),
);

function describePlate(plate: Rectangle | Disc): string {
  const mm = (...lengths: number[]) => lengths.map((length) => Number((1e3 * length).toPrecision(6))).join(' × ');
  const shape =
    plate.shape === 'disc'
      ? `disc of radius ${mm(plate.source_radius)} mm on ${mm(plate.plate_radius)} mm`
      : `${mm(plate.source_width, plate.source_depth)} mm at (${mm(plate.centre_x)}, ${mm(plate.centre_y)}) on ${mm(plate.width, plate.depth)} mm`;
  return `${shape}, ${mm(plate.thickness)} mm of ${plate.conductivity} W/(m·K), ${plate.film} W/(m²·K)`;
}

function spreadingOf(plate: Rectangle | Disc): Spreading {
  const { thickness, conductivity, film } = plate;
  if (plate.shape === 'disc')
    return discSpreading(plate.source_radius, plate.plate_radius, thickness, conductivity, film);
  return rectangleSpreading({
    width: plate.width,
    depth: plate.depth,
    thickness,
    conductivity,
    film,
    sourceWidth: plate.source_width,
    sourceDepth: plate.source_depth,
    sourceCentre: [plate.centre_x, plate.centre_y],
  });
}

function finiteVolumes(plate: Rectangle | Disc): Figure[] {
  const area = plate.shape === 'disc' ? Math.PI * plate.plate_radius ** 2 : plate.width * plate.depth;
  const plain = (plate.thickness / plate.conductivity + 1 / plate.film) / area;
  const spreading = spreadingOf(plate);
  const common = {
    why: '0.5 %: grids and the end of the series are within 0.1 %',
    source: 'finite volumes, validation/spreading/solve.py, with its values in reference.json',
    tier: 'C',
  } as const;
  return (['mean', 'centre'] as const).map((which) => ({
    what: `${which}, ${describePlate(plate)} [K/W]`,
    computed: spreading[which],
    published: plate[which] - plain,
    tolerance: 0.005 * (plate[which] - plain),
    ...common,
  }));
}

const handbook =
  'Rohsenow, Hartnett and Cho, Handbook of Heat Transfer, 3rd ed., 1998, as in the EES heat transfer library, functions 1004 and 1005';

/** √A·k·R of the centre and of the mean, by the ratio of the sides. */
const ratios: readonly [ratio: number, centre: number, mean: number][] = [
  [1, 0.5611, 0.4732],
  [2, 0.5416, 0.4598],
  [3, 0.5147, 0.4407],
  [4, 0.4909, 0.4234],
  [5, 0.4706, 0.4082],
  [10, 0.4023, 0.3552],
];

function ratioFigures([ratio, centre, mean]: readonly [number, number, number]): Figure[] {
  const [width, depth] = [Math.sqrt(ratio), 1 / Math.sqrt(ratio)];
  const common = {
    tolerance: 0.00006,
    why: 'last digit',
    source: 'integrals worked out by an independent program',
    tier: 'C',
  } as const;
  return [
    {
      what: `centre, sides 1 : ${ratio}, √A·k·R [1]`,
      computed: halfSpaceCentreResistance(width, depth, 1),
      published: centre,
      ...common,
    },
    {
      what: `mean, sides 1 : ${ratio}, √A·k·R [1]`,
      computed: halfSpaceMeanResistance(width, depth, 1),
      published: mean,
      ...common,
    },
  ];
}

export const topic: Topic = {
  title: 'Spreading by exact series and on large bodies',
  field: 'thermal',
  figures: [
    ...reference.cases.flatMap(finiteVolumes),
    {
      what: 'centre of a square of 2 m on a half-space of 1 W/(m·K) [K/W]',
      computed: halfSpaceCentreResistance(2, 2, 1),
      published: 0.2805,
      tolerance: 0.0001,
      why: 'last printed digit',
      source: handbook,
      tier: 'B',
    },
    {
      what: 'mean of a square of 2 m on a half-space of 1 W/(m·K) [K/W]',
      computed: halfSpaceMeanResistance(2, 2, 1),
      published: 0.2366,
      tolerance: 0.00005,
      why: 'last printed digit',
      source: handbook,
      tier: 'B',
    },
    ...ratios.flatMap(ratioFigures),
    {
      what: 'disc of 1 m² at one temperature on a half-space, √A·k·R [1]',
      computed: isothermalDiscResistance(Math.sqrt(1 / Math.PI), 1),
      published: 0.4431,
      tolerance: 0.00005,
      why: 'last digit of √π/4',
      source: 'Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, table 4.1, case 10',
      tier: 'C',
    },
    {
      what: '15 mm square, 2 mm of 390 W/(m·K), widening at 45° [K/W]',
      computed: coneResistance(15e-3, 2e-3, 390, Math.PI / 4),
      published: 0.01799,
      tolerance: 0.00001,
      why: 'last digit',
      source: 'Infineon, Industrial IGBT Modules, equation 4.12, worked out independently',
      tier: 'C',
    },
  ],
  unchecked: [
    'a round source on a square plate, and a source at one temperature on a finite plate: no law for them here',
  ],
};
