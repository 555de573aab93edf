import {
  flatSpringRate,
  helicalSpringRate,
  rodStiffness,
  seriesStiffness,
} from '../../src/physics/mechanics/stiffness.ts';
import type { Topic } from '../topic.ts';

const inch = 0.0254;
const poundForce = 4.4482216152605;
const squareInch = inch * inch;
const psi = poundForce / squareInch;
const composite =
  'V. B. Bhandari, Design of Machine Elements, example 10.19, force over compression, as worked in its public Scilab companion';
const en13906 = 'verification of a compression spring by EN 13906-1, A. Dewispelaere, 2021 (an engineering office)';
const byHand = 'closed form, worked out by hand';

const halfShank = (area: number) => rodStiffness(30e6 * psi, area * squareInch, 0.75 * inch);

export const topic: Topic = {
  title: 'Springs and the stiffness of screws',
  field: 'mechanics',
  figures: [
    {
      what: 'rate, wire 5 mm, coil 34.6 mm, 9.5 coils, 81.5 GPa [N/mm]',
      computed: 1e-3 * helicalSpringRate(81.5e9, 5e-3, 34.6e-3, 9.5),
      published: 16.181,
      tolerance: 0.0005,
      why: 'half of the last printed digit',
      source: en13906,
      tier: 'B',
    },
    {
      what: 'force of that spring at 38.3 mm [N]',
      computed: helicalSpringRate(81.5e9, 5e-3, 34.6e-3, 9.5) * 38.3e-3,
      published: 620,
      tolerance: 0.9,
      why: 'the compression is printed to 0.1 mm',
      source: en13906,
      tier: 'B',
    },
    {
      what: 'rate, wire 6 mm, coil 36 mm, 10 coils, 81.37 GPa [N/mm]',
      computed: 1e-3 * helicalSpringRate(81.37e9, 6e-3, 36e-3, 10),
      published: 706.021471 / 24.988839,
      tolerance: 1e-5,
      why: 'eight digits printed',
      source: composite,
      tier: 'B',
    },
    {
      what: 'rate, wire 5 mm, coil 30 mm, 8 coils, 81.37 GPa [N/mm]',
      computed: 1e-3 * helicalSpringRate(81.37e9, 5e-3, 30e-3, 8),
      published: 293.978529 / 9.988839,
      tolerance: 1e-5,
      why: 'seven digits printed',
      source: composite,
      tier: 'B',
    },
    {
      what: 'rate, music wire 0.037 in, coil 0.400 in, 10.5 coils, 11.85 Mpsi [lbf/in]',
      computed: (helicalSpringRate(11.85e6 * psi, 0.037 * inch, 0.4 * inch, 10.5) * inch) / poundForce,
      published: 4.13,
      tolerance: 0.005,
      why: 'half of the last printed digit',
      source: "Shigley's Mechanical Engineering Design, example 10-1 (from memory)",
      tier: 'B',
    },
    {
      what: 'stiffness of 5/8-11 over 0.75 in of shank and 0.75 in of thread, 30 Mpsi [Mlbf/in]',
      computed: (1e-6 * seriesStiffness([halfShank(0.3068), halfShank(0.226)]) * inch) / poundForce,
      published: 5.21,
      tolerance: 0.01,
      why: 'last digit',
      source: "Shigley's Mechanical Engineering Design, example 8-4 (from memory)",
      tier: 'B',
    },
    {
      what: 'steel arm 10 mm × 1 mm, 30 mm free, 200 GPa [N/mm]',
      computed: 1e-3 * flatSpringRate(200e9, 10e-3, 1e-3, 30e-3),
      published: 18.5185,
      tolerance: 0.0001,
      why: 'digits given',
      source: `${byHand}: 3·E·I/L³ with I = 10/12 mm⁴, that is 500/27 N/mm`,
      tier: 'C',
    },
    {
      what: 'brass standoff of 12 mm² and 6 mm, 100 GPa [kN/mm]',
      computed: 1e-6 * rodStiffness(100e9, 12e-6, 6e-3),
      published: 200,
      tolerance: 0.001,
      why: 'exact',
      source: byHand,
      tier: 'C',
    },
    {
      what: 'springs of 20 and 30 N/mm one after the other [N/mm]',
      computed: 1e-3 * seriesStiffness([20e3, 30e3]),
      published: 12,
      tolerance: 0.001,
      why: 'exact',
      source: byHand,
      tier: 'C',
    },
  ],
};
