import { padPressure, padStrain } from '../../src/physics/mechanics/pad.ts';
import { planPadCurve } from '../../src/physics/mechanics/pad-curve.ts';
import type { Topic } from '../topic.ts';

// Invented.
const curve = planPadCurve([0.1, 0.2, 0.3, 0.4], [10e3, 30e3, 70e3, 150e3])!;
const byHand = 'closed form, worked out by hand';
const pchip = 'SciPy 1.10.1, PchipInterpolator through the same points and (0, 0)';

export const topic: Topic = {
  title: 'Gap pads',
  field: 'mechanics',
  figures: [
    {
      what: 'strain of a pad of 1.0 mm in 0.7 mm [1]',
      computed: padStrain(1e-3, 0.7e-3),
      published: 0.3,
      tolerance: 1e-9,
      why: 'exact',
      source: 'definition in ASTM D575',
      tier: 'C',
    },
    {
      what: 'strain of a pad of 2.0 mm in 0.8 mm [1]',
      computed: padStrain(2e-3, 0.8e-3),
      published: 0.6,
      tolerance: 1e-9,
      why: 'exact',
      source: 'definition in ASTM D575',
      tier: 'C',
    },
    {
      what: 'pressure at 30 % between 100 kPa at 20 % and 400 kPa at 40 % [kPa]',
      computed: 1e-3 * padPressure(0.3, 0.2, 100e3, 0.4, 400e3),
      published: 225,
      tolerance: 0.01,
      why: 'exact',
      source: `${byHand}: a square, 100·1.5²`,
      tier: 'C',
    },
    {
      what: 'pressure at 40 % between 50 kPa at 10 % and 400 kPa at 80 % [kPa]',
      computed: 1e-3 * padPressure(0.4, 0.1, 50e3, 0.8, 400e3),
      published: 200,
      tolerance: 0.01,
      why: 'exact',
      source: `${byHand}: a straight line`,
      tier: 'C',
    },
    {
      what: 'curve at 5 % [kPa]',
      computed: 1e-3 * curve.pressureAt(0.05),
      published: 3.9583,
      tolerance: 0.0005,
      why: 'digits given',
      source: pchip,
      tier: 'C',
    },
    {
      what: 'curve at 25 % [kPa]',
      computed: 1e-3 * curve.pressureAt(0.25),
      published: 46.6667,
      tolerance: 0.0005,
      why: 'digits given',
      source: pchip,
      tier: 'C',
    },
    {
      what: 'curve at 38 % [kPa]',
      computed: 1e-3 * curve.pressureAt(0.38),
      published: 130.5867,
      tolerance: 0.0005,
      why: 'digits given',
      source: pchip,
      tier: 'C',
    },
    {
      what: 'curve at its point of 30 % [kPa]',
      computed: 1e-3 * curve.pressureAt(0.3),
      published: 70,
      tolerance: 1e-6,
      why: 'it passes through its points',
      source: 'the points themselves',
      tier: 'C',
    },
  ],
  unchecked: [
    'Measured pressure against strain of a gap pad: no maker’s table could be read. Curves are data of the user.',
    'How much a pad relaxes after it is compressed: common practice, no source.',
  ],
};
