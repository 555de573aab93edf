import { contactShare, highestPressure, lowestPressure } from '../../src/physics/mechanics/edge-pressure.ts';
import { planPadCurve } from '../../src/physics/mechanics/pad-curve.ts';
import type { Pad, Plate, PlateAtRest, Screw, Stop } from '../../src/physics/mechanics/plate.ts';
import { solvePlate } from '../../src/physics/mechanics/solve-plate.ts';
import { forceOnSecond, tiltOnTwo } from '../../src/physics/mechanics/two-supports.ts';
import type { Figure, Topic } from '../topic.ts';

const straight = planPadCurve([0.4], [800e3])!;
const byHand = 'closed form, worked out by hand';
const pull = (x: number, y: number, force: number): Screw => ({ x, y, force, stiffness: 0, height: 0 });

function atRest(parts: Partial<Plate>): PlateAtRest {
  const result = solvePlate({ screws: [], pads: [], dies: [], stops: [], ...parts });
  if (result.ending !== 'solved') throw new Error(result.ending);
  return result;
}

/** A die of 20 mm × 10 mm, 2 mm high, pressed with 100 N at an offset from its centre. */
function pressed(offsetX: number, offsetY: number) {
  const die = { x: 0, y: 0, width: 0.02, depth: 0.01, height: 2e-3, bedding: 1e10 };
  return atRest({ screws: [pull(offsetX, offsetY, 100)], dies: [die] }).dies[0];
}

function figure(what: string, computed: number, published: number, source: string): Figure {
  return { what, computed, published, tolerance: 1e-6 * Math.abs(published), why: 'closed form', source, tier: 'C' };
}

const pad = (x: number, thickness = 1e-3): Pad => ({
  x,
  y: 0,
  width: 0.01,
  depth: 0.01,
  height: 1e-3,
  thickness,
  curve: straight,
});
const twoPads = atRest({ screws: [pull(0, 0, 40)], pads: [pad(-0.03), pad(0.03)] });
const onePad = atRest({ screws: [pull(0, 0, 40)], pads: [pad(0)] });
// The softer of two pads of the same curve is the thicker one; its sides tilt with the plate, which is why they are small here.
const unequal = atRest({
  screws: [pull(0, 0, 20)],
  pads: [pad(-0.03), pad(0.03, 2e-3)].map((each) => ({
    ...each,
    width: 1e-3,
    depth: 0.1,
    height: 2e-3 - each.thickness,
  })),
});

const fourStops = (height: number, stiffness: number, reach: number): Stop[] =>
  [-reach, reach].flatMap((x) => [-reach, reach].map((y) => ({ x, y, height, stiffness })));
const die = { x: 0, y: 0, width: 0.012, depth: 0.015, height: 1.9e-3, bedding: 1e12 };
const held = atRest({ screws: [pull(0, 0, 40)], dies: [die], stops: fourStops(2e-3, 1e6, 0.02) });
const sprung = atRest({
  screws: fourStops(2e-3, 3000, 0.02).map((place) => ({ ...place, force: 12 })),
  stops: fourStops(2e-3, 9000, 0.02),
});

// Two springs one in the other, the inner shorter by 15 mm: a quarter of both at each of four corners.
const composite = atRest({
  screws: [pull(0, 0, 1000)],
  stops: [...fourStops(0.1, 28253.47 / 4, 0.5), ...fourStops(0.085, 29430.7 / 4, 0.5)],
});
const compositeSource =
  'V. B. Bhandari, Design of Machine Elements, example 10.19, as worked in its public Scilab companion';
const innerForce = composite.stopForces.slice(4).reduce((sum, force) => sum + force);

// A beam of 3 m on two springs of 5 kN/m, 800 N at 1 m; each spring split in two along y, or the beam could roll over.
const beam = atRest({
  screws: [pull(1, 0, 800)],
  stops: [0, 3].flatMap((x) => [-1, 1].map((y) => ({ x, y, height: 1, stiffness: 2500 }))),
});
const beamSource = 'R. C. Hibbeler, Engineering Mechanics: Statics, chapter 5, beam on two springs (from memory)';
const degrees = (slope: number) => (Math.atan(slope) * 180) / Math.PI;

const craneSource = 'tower crane foundation, worked example: 2687.5 kN on 7 m × 7 m, 1.563 m off its centre';
const crane = atRest({
  screws: [pull(1.563, 0, 2687.5e3)],
  dies: [{ x: 0, y: 0, width: 7, depth: 7, height: 1, bedding: 2e7 }],
}).dies[0];

const tetrahedron = pressed(0.006, 0.003);
const lifted = pressed(0.005, 0);
const inKern = pressed(0.002, 0);
const kernBoth = pressed(0.001, 0.0005);

export const topic: Topic = {
  title: 'Rigid plate on die, pads and stops',
  field: 'mechanics',
  figures: [
    {
      what: 'crane foundation, highest pressure by the law [kPa]',
      computed: 1e-3 * highestPressure(2687.5e3, 7, 7, 1.563),
      published: 132.2,
      tolerance: 0.1,
      why: 'last digit',
      source: craneSource,
      tier: 'B',
    },
    {
      what: 'crane foundation, highest pressure by the solver [kPa]',
      computed: 1e-3 * crane.highestPressure,
      published: 132.2,
      tolerance: 0.1,
      why: 'last digit',
      source: craneSource,
      tier: 'B',
    },
    {
      what: 'crane foundation, length that touches, by the law [m]',
      computed: 7 * contactShare(7, 1.563),
      published: 5.811,
      tolerance: 0.0005,
      why: 'half of the last printed digit',
      source: craneSource,
      tier: 'B',
    },
    {
      what: 'crane foundation, length that touches, by the solver [m]',
      computed: 7 * crane.contact,
      published: 5.811,
      tolerance: 0.0005,
      why: 'half of the last printed digit',
      source: craneSource,
      tier: 'B',
    },
    {
      what: 'tilt of a beam on two springs, by the law [°]',
      computed: degrees(-tiltOnTwo(800, 1, 0, 3, 5000, 5000)),
      published: 1.02,
      tolerance: 0.005,
      why: 'half of the last printed digit',
      source: beamSource,
      tier: 'B',
    },
    {
      what: 'tilt of a beam on two springs, by the solver [°]',
      computed: degrees(beam.tiltX),
      published: 1.02,
      tolerance: 0.005,
      why: 'half of the last printed digit',
      source: beamSource,
      tier: 'B',
    },
    {
      what: 'force on the inner of two springs [N]',
      computed: innerForce,
      published: 293.978529,
      tolerance: 0.001,
      why: 'the rates are given to seven digits',
      source: compositeSource,
      tier: 'B',
    },
    {
      what: 'compression of the outer spring [mm]',
      computed: 1e3 * (0.1 - composite.height),
      published: 24.988839,
      tolerance: 0.0001,
      why: 'the rates are given to seven digits',
      source: compositeSource,
      tier: 'B',
    },
    figure('force on the far support, 90 N at 2 of 6 cm [N]', forceOnSecond(90, 0.02, 0, 0.06), 30, byHand),
    figure(
      'tilt on springs of 10 and 20 N/mm, 90 N at 3 of 6 cm [1]',
      tiltOnTwo(90, 0.04, 0.01, 0.07, 10e3, 20e3),
      -0.0375,
      `${byHand}: (45/20 − 45/10) mm over 60 mm`,
    ),
    figure(
      'two equal pads under 40 N, strain of each [1]',
      twoPads.pads[0].strain,
      0.1,
      `${byHand}: 20 N on 1 cm² is 200 kPa, at 2 MPa · strain`,
    ),
    figure('two equal pads under 40 N, force of the other [N]', twoPads.pads[1].force, 20, byHand),
    figure('one pad under 40 N, pressure [kPa]', 1e-3 * onePad.pads[0].meanPressure, 400, byHand),
    figure('one pad under 40 N, compression [mm]', 1e3 * onePad.pads[0].compression, 0.2, byHand),
    figure('one pad under 40 N, height of the plate [mm]', 1e3 * onePad.height, 1.8, byHand),
    {
      ...figure(
        'pads of 1 and 2 mm under 20 N between them, tilt [1]',
        unequal.tiltX,
        -0.05e-3 / 0.06,
        `${byHand}: 10 N each compress them by 0.05 and 0.10 mm`,
      ),
      tolerance: 1e-3 * (0.05e-3 / 0.06),
      why: 'a pad of 1 mm width adds a little of its own against the tilt',
    },
    figure('die alone, 100 N in its middle, mean pressure [kPa]', 1e-3 * pressed(0, 0).meanPressure, 500, byHand),
    figure('die alone, 100 N in its middle, unevenness [1]', pressed(0, 0).unevenness!, 1, byHand),
    figure(
      'die of 20 mm pressed 2 mm off, highest pressure [kPa]',
      1e-3 * inKern.highestPressure,
      800,
      `${byHand}: 500·(1 + 6·2/20)`,
    ),
    figure(
      'die of 20 mm pressed 2 mm off, lowest pressure [kPa]',
      1e-3 * inKern.lowestPressure,
      200,
      `${byHand}: 500·(1 − 6·2/20)`,
    ),
    figure('the same by the law, highest [kPa]', 1e-3 * highestPressure(100, 0.02, 0.01, -0.002), 800, byHand),
    figure('the same by the law, lowest [kPa]', 1e-3 * lowestPressure(100, 0.02, 0.01, -0.002), 200, byHand),
    figure(
      'die pressed 1 and 0.5 mm off, highest pressure [kPa]',
      1e-3 * kernBoth.highestPressure,
      800,
      `${byHand}: 500·(1 + 6/20 + 3/10)`,
    ),
    figure(
      'die of 20 mm pressed 5 mm off, highest pressure [kPa]',
      1e-3 * lifted.highestPressure,
      4e3 / 3,
      `${byHand}: 2·100 N/(3·10 mm·5 mm)`,
    ),
    figure('die of 20 mm pressed 5 mm off, share that touches [1]', lifted.contact, 0.75, byHand),
    figure(
      'the same by the law, highest [kPa]; lifted',
      1e-3 * highestPressure(100, 0.02, 0.01, 0.005),
      4e3 / 3,
      byHand,
    ),
    figure('the same by the law, share that touches [1]', contactShare(0.02, -0.005), 0.75, byHand),
    figure(
      'die pressed 0.3 of each side off, highest pressure [kPa]',
      1e-3 * tetrahedron.highestPressure,
      4687.5,
      `${byHand}: a pyramid over a triangle of 16 mm × 8 mm, 6·F/(16·8 mm²)`,
    ),
    figure(
      'die pressed 0.3 of each side off, share that touches [1]',
      tetrahedron.contact,
      0.32,
      `${byHand}: half of 0.8 · 0.8`,
    ),
    figure(
      'plate on four stops under 40 N, gap over a die 0.1 mm lower [mm]',
      1e3 * held.dies[0].gap,
      0.09,
      `${byHand}: 10 N on 1 kN/mm sink 0.01 mm`,
    ),
    figure(
      'plate on four stops, force of a screw of 12 N and 3 N/mm on 9 N/mm [N]',
      sprung.screwForces[0],
      9,
      `${byHand}: 12 − 3·s = 9·s`,
    ),
    figure('the same, height of the plate [mm]', 1e3 * sprung.height, 1, byHand),
  ],
  unchecked: [
    'A real plate bends; how far from rigid it may be was not checked.',
    'Pressure on a real die under a tilted plate: no published measurement was read.',
  ],
};
