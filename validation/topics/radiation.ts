import { exchangedHeat, radiatedHeat, radiationFilm } from '../../src/physics/thermal/radiation.ts';
import type { Topic } from '../topic.ts';

const book = 'Incropera and DeWitt, Fundamentals of Heat and Mass Transfer';
const room = 'Çengel, Heat and Mass Transfer, example on radiation in a room in winter and summer (from memory)';

export const topic: Topic = {
  title: 'Radiation',
  field: 'thermal',
  figures: [
    {
      what: 'emissive power at 200 °C, emissivity 0.8 [W/m²]',
      computed: radiatedHeat(0.8, 1, 473.15, 0),
      published: 2273.36,
      tolerance: 0.2,
      why: 'the book takes 5.67e-8 for the constant',
      source: `${book}, example 1.2`,
      tier: 'B',
    },
    {
      what: 'irradiation from surroundings at 25 °C [W/m²]',
      computed: -radiatedHeat(1, 1, 0, 298.15),
      published: 448.05,
      tolerance: 0.04,
      why: 'the book takes 5.67e-8 for the constant',
      source: `${book}, example 1.2`,
      tier: 'B',
    },
    {
      what: 'steam pipe of 70 mm, 200 °C, emissivity 0.8, with 15 W/(m²·K) of convection [W/m]',
      computed: Math.PI * 0.07 * (15 * 175 + radiatedHeat(0.8, 1, 473.15, 298.15)),
      published: 998.38,
      tolerance: 0.05,
      why: 'the book takes 5.67e-8 for the constant',
      source: `${book}, example 1.2`,
      tier: 'B',
    },
    {
      what: 'a person of 1.4 m² at 303 K, walls at 283 K [W]',
      computed: radiatedHeat(0.95, 1.4, 303, 283),
      published: 152,
      tolerance: 0.5,
      why: 'half of the last printed digit',
      source: room,
      tier: 'B',
    },
    {
      what: 'a person of 1.4 m² at 303 K, walls at 298 K [W]',
      computed: radiatedHeat(0.95, 1.4, 303, 298),
      published: 40.9,
      tolerance: 0.05,
      why: 'half of the last printed digit',
      source: room,
      tier: 'B',
    },
    {
      what: 'as a film, emissivity 0.8, 150 °C against 175 °C [W/(m²·K)]',
      computed: radiationFilm(0.8, 423, 448),
      published: 15,
      tolerance: 0.05,
      why: 'half of the last printed digit',
      source: `${book}, example 5.3`,
      tier: 'B',
    },
    {
      what: 'as a film, emissivity 0.8, 150 °C against 25 °C [W/(m²·K)]',
      computed: radiationFilm(0.8, 423, 298),
      published: 8.8,
      tolerance: 0.05,
      coarse: 'two printed digits',
      why: 'half of the last printed digit',
      source: `${book}, example 5.3`,
      tier: 'B',
    },
    {
      what: 'black, both at 300 K, as a film: 4·σ·T³ [W/(m²·K)]',
      computed: radiationFilm(1, 300, 300),
      published: 6.124,
      tolerance: 0.0005,
      why: 'last digit',
      source: 'closed form with the CODATA constant',
      tier: 'C',
    },
    {
      what: 'cold tube of 20 mm at 77 K in one of 50 mm at 300 K, emissivities 0.02 and 0.05 [W/m]',
      computed: exchangedHeat(
        { emissivity: 0.02, area: Math.PI * 0.02, temperature: 77 },
        { emissivity: 0.05, area: Math.PI * 0.05, temperature: 300 },
        1,
      ),
      published: -0.5,
      tolerance: 0.003,
      why: 'two printed digits, less where one per cent would not show',
      source: `${book}, example 13.5`,
      tier: 'B',
    },
    {
      what: 'triangular duct, 1200 K against 500 K, insulated third side as a view factor of 0.75 [kW/m]',
      computed:
        exchangedHeat(
          { emissivity: 0.8, area: 1, temperature: 1200 },
          { emissivity: 0.4, area: 1, temperature: 500 },
          0.75,
        ) / 1e3,
      published: 36.98,
      tolerance: 0.01,
      why: 'last printed digit',
      source: `${book}, example 13.6`,
      tier: 'B',
    },
  ],
};
