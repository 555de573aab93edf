import { bondLineThickness } from '../../src/physics/thermal/bond-line.ts';
import { equivalentThickness } from '../../src/physics/thermal/contact.ts';
import { tubeWallResistance } from '../../src/physics/thermal/cylinder-wall.ts';
import { layerResistance } from '../../src/physics/thermal/layer.ts';
import type { Topic } from '../topic.ts';

const book = 'Incropera and DeWitt, Fundamentals of Heat and Mass Transfer';
const identity = 'power law: the ratio follows from the exponent alone';

export const topic: Topic = {
  title: 'Layers, tube walls, interfaces',
  field: 'thermal',
  figures: [
    {
      what: 'furnace wall, 0.15 m of 1.7 W/(m·K), 0.6 m², 250 K [W]',
      computed: 250 / layerResistance(0.15, 1.7, 0.6),
      published: 1700,
      tolerance: 0.01,
      why: 'the figure is exact',
      source: `${book}, example 1.1`,
      tier: 'B',
    },
    {
      what: 'skin of 3 mm, 0.3 W/(m·K), 1.8 m², 100 W: drop [K]',
      computed: 100 * layerResistance(3e-3, 0.3, 1.8),
      published: 0.56,
      tolerance: 0.005,
      why: 'half of the last printed digit, 34.44 °C under 35 °C',
      coarse: 'a drop of half a kelvin, printed to a hundredth',
      source: `${book}, example 3.1`,
      tier: 'B',
    },
    {
      what: 'glass fibre of 0.038 W/(m·K) between tubes of 100 mm and 120 mm, 85 K [W/m]',
      computed: 85 / tubeWallResistance(0.05, 0.06, 0.038, 1),
      published: 111,
      tolerance: 0.5,
      why: 'printed without decimals',
      source: `${book}, example 9.5`,
      tier: 'B',
    },
    {
      what: 'grease, 25 µm of 5 W/(m·K) over 100 mm² [K/W]',
      computed: layerResistance(25e-6, 5, 100e-6),
      published: 0.05,
      tolerance: 0.0001,
      why: 'the figure is exact',
      source: 'thermal interface materials, rfessentials.com',
      tier: 'B',
    },
    {
      what: 'solder, 15 µm of 57 W/(m·K) over 100 mm² [K/W]',
      computed: layerResistance(15e-6, 57, 100e-6),
      published: 0.003,
      tolerance: 0.0005,
      why: 'half of the printed digit',
      coarse: 'only one digit is printed',
      source: 'thermal interface materials, rfessentials.com',
      tier: 'B',
    },
    {
      what: 'aluminium, 237 W/(m·K), that resists like a contact of 11 000 W/(m²·K) [cm]',
      computed: 100 * equivalentThickness(237, 11000),
      published: 2.15,
      tolerance: 0.005,
      why: 'half of the last printed digit',
      source: 'Çengel, Heat and Mass Transfer, example 3-4 (from memory)',
      tier: 'B',
    },
    {
      what: 'bond line at 200 kPa against 100 kPa [1]',
      computed: bondLineThickness(100, 200e3) / bondLineThickness(100, 100e3),
      published: 0.8913,
      tolerance: 0.00005,
      why: 'last digit of 2^−0.166',
      source: identity,
      tier: 'C',
    },
    {
      what: 'bond line at 1 MPa against 100 kPa [1]',
      computed: bondLineThickness(100, 1e6) / bondLineThickness(100, 100e3),
      published: 0.6823,
      tolerance: 0.00005,
      why: 'last digit of 10^−0.166',
      source: identity,
      tier: 'C',
    },
  ],
  unchecked: [
    'constants of the bond line law (c = 1.31e-4 m, m = 0.166): only the abstract of its source could be read',
    'coefficient 1.25 of the contact conductance: garbled in the one handbook copy that could be read',
    'how pads give way under pressure: no maker publishes a table that could be read',
  ],
};
