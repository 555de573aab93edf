import { preloadFromTorque, torqueForPreload } from '../../src/physics/mechanics/nut-factor.ts';
import { pitchDiameter, stressArea } from '../../src/physics/mechanics/thread.ts';
import { looseningArm, tighteningArm } from '../../src/physics/mechanics/tightening-torque.ts';
import type { Figure, Topic } from '../topic.ts';

const inch = 0.0254;
const poundForce = 4.4482216152605;
const inchPound = inch * poundForce;
const footPound = 12 * inchPound;
const metricFlank = Math.PI / 6;

const iso898 = 'ISO 898-1, nominal stress area, as reprinted by a fastener supplier';
const stressAreas = (
  [
    ['M3', 3, 0.5, 5.03, 0.005],
    ['M3.5', 3.5, 0.6, 6.78, 0.005],
    ['M4', 4, 0.7, 8.78, 0.005],
    ['M5', 5, 0.8, 14.2, 0.05],
    ['M6', 6, 1, 20.1, 0.05],
    ['M8', 8, 1.25, 36.6, 0.05],
    ['M10', 10, 1.5, 58, 0.05],
    ['M12', 12, 1.75, 84.3, 0.05],
    ['M16', 16, 2, 157, 0.5],
    ['M24', 24, 3, 353, 0.5],
  ] as const
).map(
  ([name, diameter, pitch, published, tolerance]): Figure => ({
    what: `stress area of ${name} [mm²]`,
    computed: 1e6 * stressArea(1e-3 * diameter, 1e-3 * pitch),
    published,
    tolerance,
    why: 'half of the last printed digit',
    source: iso898,
    tier: 'A',
  }),
);

const smallAreas = (
  [
    ['M1.6', 1.6, 0.35, 1.27],
    ['M2', 2, 0.4, 2.07],
    ['M2.5', 2.5, 0.45, 3.39],
  ] as const
).map(
  ([name, diameter, pitch, published]): Figure => ({
    what: `stress area of ${name} [mm²]`,
    computed: 1e6 * stressArea(1e-3 * diameter, 1e-3 * pitch),
    published,
    tolerance: 0.005,
    why: 'half of the last printed digit',
    source: "Shigley's Mechanical Engineering Design, table 8-1, coarse series (from memory)",
    tier: 'A',
  }),
);

// The standard multiplies the printed, rounded area and rounds once more.
const ultimateLoads = (
  [
    ['M3, class 8.8', 3, 0.5, 800, 4020],
    ['M3, class 12.9', 3, 0.5, 1220, 6140],
    ['M4, class 8.8', 4, 0.7, 800, 7020],
    ['M5, class 10.9', 5, 0.8, 1040, 14800],
    ['M6, class 8.8', 6, 1, 800, 16100],
  ] as const
).map(
  ([name, diameter, pitch, strength, published]): Figure => ({
    what: `least ultimate load of ${name} [N]`,
    computed: 1e6 * strength * stressArea(1e-3 * diameter, 1e-3 * pitch),
    published,
    tolerance: 0.004 * published,
    why: 'area and load are rounded to three digits',
    source: 'ISO 898-1, minimum ultimate tensile loads, as reprinted by a fastener supplier',
    tier: 'A',
  }),
);

const pitchDiameters = (
  [
    ['M3', 3, 0.5, 2.675],
    ['M8×1', 8, 1, 7.35],
    ['M10', 10, 1.5, 9.026],
    ['M12', 12, 1.75, 10.863],
  ] as const
).map(
  ([name, diameter, pitch, published]): Figure => ({
    what: `pitch diameter of ${name} [mm]`,
    computed: 1e3 * pitchDiameter(1e-3 * diameter, 1e-3 * pitch),
    published,
    tolerance: 0.0005,
    why: 'half of the last printed digit',
    source: 'ISO 724 (from memory)',
    tier: 'A',
  }),
);

const torqueTable = 'torque-tension table for SAE J429 bolts, T = K·D·P, as reprinted in a machine manual';
const inchTable = (
  [
    ['1/4-20, grade 5, K 0.15', 0.25, 2029, 0.15, 76],
    ['1/4-20, grade 5, K 0.17', 0.25, 2029, 0.17, 86],
    ['1/4-20, grade 5, K 0.20', 0.25, 2029, 0.2, 101],
    ['1/4-20, grade 8, K 0.15', 0.25, 2864, 0.15, 107],
    ['1/4-20, grade 8, K 0.17', 0.25, 2864, 0.17, 122],
    ['1/4-20, grade 8, K 0.20', 0.25, 2864, 0.2, 143],
    ['5/16-18, grade 5, K 0.15', 0.3125, 3342, 0.15, 157],
    ['5/16-18, grade 5, K 0.17', 0.3125, 3342, 0.17, 178],
    ['5/16-18, grade 5, K 0.20', 0.3125, 3342, 0.2, 209],
    ['5/16-24, grade 5, K 0.15', 0.3125, 3702, 0.15, 174],
    ['5/16-24, grade 5, K 0.17', 0.3125, 3702, 0.17, 197],
  ] as const
).map(
  ([name, diameter, preload, factor, published]): Figure => ({
    what: `torque of ${name}, at ${preload} lbf [lbf·in]`,
    computed: torqueForPreload(preload * poundForce, factor, diameter * inch) / inchPound,
    published,
    tolerance: Math.min(0.5, 0.0095 * published),
    why: 'half of the last printed digit, or so that one per cent shows',
    source: torqueTable,
    tier: 'B',
  }),
);

const yieldTable = (
  [
    ['grade 2, plain', 43000, 0.2, 200],
    ['grade 2, zinc', 43000, 0.22, 221],
    ['grade 5, plain', 69000, 0.2, 322],
    ['grade 5, zinc', 69000, 0.22, 354],
    ['grade 8, plain', 98000, 0.2, 457],
    ['grade 8, zinc', 98000, 0.22, 503],
  ] as const
).map(
  ([name, stress, factor, published]): Figure => ({
    what: `torque of 3/4-16, ${name}, at ${stress} psi [lbf·ft]`,
    computed: torqueForPreload(stress * 0.373 * poundForce, factor, 0.75 * inch) / footPound,
    published,
    tolerance: 0.6,
    why: 'half of the last printed digit; stress area as printed beside it, 0.3730 in²',
    source: 'general bolt tightening torque, T = K·D·P, in a machine manual',
    tier: 'B',
  }),
);

const headOfM8 = 1e-3 * ((11.63 + 9) / 2);
const headOfM12 = 1e-3 * ((16.63 + 13.5) / 2);
const vdi =
  'VDI 2230, 2001, preloads and torques of fine threads, as reprinted by a screw supplier; heads of ISO 4014 on holes of ISO 273 (from memory)';
const vdiTable = (
  [
    ['M8×1', 8, 1, headOfM8, 0.1, 20.7, 22.8],
    ['M8×1', 8, 1, headOfM8, 0.1, 30.4, 33.5],
    ['M8×1', 8, 1, headOfM8, 0.1, 35.6, 39.2],
    ['M8×1', 8, 1, headOfM8, 0.12, 20.2, 26.1],
    ['M8×1', 8, 1, headOfM8, 0.12, 29.7, 38.3],
    ['M8×1', 8, 1, headOfM8, 0.12, 34.7, 44.9],
    ['M8×1', 8, 1, headOfM8, 0.14, 19.7, 29.2],
    ['M8×1', 8, 1, headOfM8, 0.14, 28.9, 42.8],
    ['M8×1', 8, 1, headOfM8, 0.14, 33.9, 50.1],
    ['M12×1.25', 12, 1.25, headOfM12, 0.1, 72.1, 116],
    ['M12×1.25', 12, 1.25, headOfM12, 0.1, 84.4, 135],
    ['M12×1.25', 12, 1.25, headOfM12, 0.12, 70.5, 133],
    ['M12×1.25', 12, 1.25, headOfM12, 0.12, 82.5, 155],
    ['M12×1.25', 12, 1.25, headOfM12, 0.14, 46.8, 101],
    ['M12×1.25', 12, 1.25, headOfM12, 0.14, 68.7, 149],
    ['M12×1.25', 12, 1.25, headOfM12, 0.14, 80.4, 174],
  ] as const
).map(
  ([name, diameter, pitch, head, friction, preload, published]): Figure => ({
    what: `torque of ${name}, friction ${friction}, at ${preload} kN [N·m]`,
    computed:
      1e3 *
      preload *
      tighteningArm(1e-3 * pitch, pitchDiameter(1e-3 * diameter, 1e-3 * pitch), friction, metricFlank, friction, head),
    published,
    tolerance: 0.005 * published,
    why: 'half of the last printed digit, and the preload is printed to three digits',
    source: vdi,
    tier: 'A',
  }),
);

const bhandari = (number: string) =>
  `V. B. Bhandari, Design of Machine Elements, example ${number}, as worked in its public Scilab companion`;
const shigleyScrew = "Shigley's Mechanical Engineering Design, example 8-1 (from memory)";
const shigleyBolt = "Shigley's Mechanical Engineering Design, example 8-3 (from memory)";
const boltMean = ((0.75 + Math.sqrt((4 * 0.351) / Math.PI)) / 2) * inch;

/** Six digits are printed; the tolerance is one in the last. */
const screwJacks: readonly Figure[] = [
  {
    what: 'raising 15 kN by a screw of 50 mm, three starts of 8 mm, collar 65 to 100 mm, friction 0.15 [N·m]',
    computed: 15e3 * tighteningArm(24e-3, 46e-3, 0.15, 0, 0.15, 82.5e-3),
    published: 204.644,
    tolerance: 0.001,
    why: 'last digit',
    source: bhandari('6.1'),
    tier: 'B',
  },
  {
    what: 'lowering 15 kN by the same screw [N·m]',
    computed: 15e3 * looseningArm(24e-3, 46e-3, 0.15, 0, 0.15, 82.5e-3),
    published: 87.4015,
    tolerance: 0.0001,
    why: 'last digit',
    source: bhandari('6.1'),
    tier: 'B',
  },
  {
    what: 'force at the rim of a hand wheel of 500 mm, 10 kN on a screw of 80 mm × 10 mm, friction 0.12 [N]',
    computed: (10e3 * tighteningArm(10e-3, 75e-3, 0.12, 0, 0.12, 60e-3)) / 0.25,
    published: 388.909,
    tolerance: 0.001,
    why: 'last digit',
    source: bhandari('6.5'),
    tier: 'B',
  },
  {
    what: 'power of a trapezoidal screw of 52 mm × 8 mm, 2 kN, 30 rpm, friction 0.15 and 0.12 [kW]',
    computed: 2 * tighteningArm(8e-3, 48e-3, 0.15, Math.PI / 12, 0.12, 80e-3) * Math.PI,
    published: 0.061838,
    tolerance: 1e-6,
    why: 'last digit',
    source: bhandari('6.6'),
    tier: 'B',
  },
  {
    what: 'torque that tightens a clamp of 750 N, 22 mm × 5 mm, friction 0.15 [N·mm]',
    computed: 750e3 * tighteningArm(5e-3, 19.5e-3, 0.15, 0, 0.15, 30e-3),
    published: 3402.2,
    tolerance: 0.1,
    why: 'last digit',
    source: bhandari('6.9'),
    tier: 'B',
  },
  {
    what: 'raising 6.4 kN, 32 mm × 4 mm, two starts, friction 0.08, collar 40 mm [N·m]',
    computed: 6400 * tighteningArm(8e-3, 30e-3, 0.08, 0, 0.08, 40e-3),
    published: 26.18,
    tolerance: 0.01,
    why: 'last digit',
    source: shigleyScrew,
    tier: 'B',
  },
  {
    what: 'lowering 6.4 kN by the same screw [N·m]',
    computed: 6400 * looseningArm(8e-3, 30e-3, 0.08, 0, 0.08, 40e-3),
    published: 9.77,
    tolerance: 0.01,
    why: 'last digit',
    source: shigleyScrew,
    tier: 'B',
  },
  {
    what: '3/4-16 at 25 000 lbf, friction 0.15, head 1¼ of the diameter [lbf·in]',
    computed: (25e3 * tighteningArm(inch / 16, boltMean, 0.15, metricFlank, 0.15, 1.25 * 0.75 * inch)) / inch,
    published: 3551,
    tolerance: 1,
    why: 'last digit',
    source: shigleyBolt,
    tier: 'B',
  },
  {
    what: '3/4-16 at 25 000 lbf by the nut factor 0.2 [lbf·in]',
    computed: torqueForPreload(25e3 * poundForce, 0.2, 0.75 * inch) / inchPound,
    published: 3750,
    tolerance: 1,
    why: 'exact',
    source: shigleyBolt,
    tier: 'B',
  },
];

const preloads: readonly Figure[] = [
  {
    what: 'preload of M10 at 50 N·m, K 0.20 [kN]',
    computed: 1e-3 * preloadFromTorque(50, 0.2, 10e-3),
    published: 25,
    tolerance: 0.05,
    why: 'exact',
    source: 'worked example, M10 class 8.8 dry, engitoolbox.org',
    tier: 'B',
  },
  {
    what: 'preload of #4-40 at 5 lbf·in, K 0.20 [lbf]',
    computed: preloadFromTorque(5 * inchPound, 0.2, 0.112 * inch) / poundForce,
    published: 223,
    tolerance: 0.5,
    why: 'last digit',
    source: 'calculating pressure from axial force, heat sink on two #4-40 screws, engineering forum 205944',
    tier: 'B',
  },
  {
    what: 'preload of M12 at 82 N·m, K 0.20 [kN]',
    computed: 1e-3 * preloadFromTorque(82, 0.2, 12e-3),
    published: 34.2,
    tolerance: 0.1,
    why: 'printed as about 34 for 70 % of 580 MPa on 84.3 mm², which is 34.2',
    source: 'worked example, M12 class 8.8 flange bolt, aionlinecalculator.com, 2026',
    tier: 'B',
  },
];

export const topic: Topic = {
  title: 'Screws: torque, preload, stress',
  field: 'mechanics',
  figures: [
    ...stressAreas,
    ...smallAreas,
    ...ultimateLoads,
    ...pitchDiameters,
    ...inchTable,
    ...yieldTable,
    ...vdiTable,
    ...screwJacks,
    ...preloads,
  ],
  traps: [
    {
      what: 'least ultimate load of M4, class 10.9 [N]',
      computed: 1040e6 * stressArea(4e-3, 0.7e-3),
      published: 91130,
      tolerance: 5,
      why: 'printed to the nearest ten',
      source: 'minimum ultimate loads of ISO 898-1, as reprinted by a fastener supplier',
      reason: 'a digit too many: 8.78 mm² at 1040 MPa carry 9130 N',
    },
    {
      what: 'stress area of M3 from 0.8 of its diameter [mm²]',
      computed: 1e6 * stressArea(3e-3, 0.5e-3),
      published: 4.52,
      tolerance: 0.005,
      why: 'half of the last printed digit',
      source: 'bolt torque calculator of an actuator maker: effective diameter about 0.8 of the nominal one',
      reason: 'a rule of thumb; the stress area of ISO 898-1 is 5.03 mm²',
    },
  ],
  unchecked: [
    'Preload of M2 and M2.5 screws in soft threads and standoffs: no published measurement was read. The scatter of ±25 to ±30 % is common practice, no source.',
  ],
};
