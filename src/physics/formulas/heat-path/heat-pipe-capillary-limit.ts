import type { Formula } from '../../formula.ts';
import { capillaryLimit } from '../../thermal/heat-pipe-wick.ts';

export const heatPipeCapillaryLimitFormula: Formula = {
  name: 'heat-pipe-capillary-limit',
  title: 'most heat that a level heat pipe carries before its wick runs dry',
  equation: 'Q = (2·σ/r)·K·A·h/(ν·L)',
  room: 'heat path',
  inputs: [
    {
      name: 'surface-tension',
      symbol: 'σ',
      title: 'surface tension of the liquid',
      kind: 'surface-tension',
      unit: 'N/m',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'pore-radius',
      symbol: 'r',
      title: 'pore radius of the wick',
      kind: 'length',
      unit: 'µm',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'permeability',
      symbol: 'K',
      title: 'permeability of the wick',
      kind: 'area',
      unit: 'm²',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'wick-section',
      symbol: 'A',
      title: 'cross-section of the wick',
      kind: 'area',
      unit: 'mm²',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'evaporation-heat',
      symbol: 'h',
      title: 'heat of evaporation',
      kind: 'specific-energy',
      unit: 'J/kg',
      low: 0,
      lowOpen: true,
    },
    {
      name: 'viscosity',
      symbol: 'ν',
      title: 'kinematic viscosity of the liquid',
      kind: 'diffusivity',
      unit: 'mm²/s',
      low: 0,
      lowOpen: true,
    },
    { name: 'length', symbol: 'L', title: 'effective length', kind: 'length', unit: 'mm', low: 0, lowOpen: true },
  ],
  outputs: [{ name: 'limit', title: 'most heat by the capillary limit', kind: 'power', unit: 'W' }],
  source: 'A. Faghri, Heat Pipe Science and Technology, 1995',
  requires: [],
  valid: [
    {
      says: 'pressure drop of the vapour and gravity small; boiling, entrainment and sound may limit lower',
      holds: (x) => x[6] > 0,
    },
  ],
  example: {
    inputs: {
      'surface-tension': '0.07 N/m',
      'pore-radius': '31 µm',
      permeability: '1e-9 m²',
      'wick-section': '100 mm²',
      'evaporation-heat': '2.5e6 J/kg',
      viscosity: '1 mm²/s',
      length: '150 mm',
    },
    result: { limit: '7.5 kW' },
    source: 'COMSOL documentation 6.4, heat pipe with accurate liquid and gas properties',
    tolerance: 0.004,
  },
  compute(x, y) {
    y[0] = capillaryLimit(
      { poreRadius: x[1], permeability: x[2], wickSection: x[3], length: x[6] },
      { surfaceTension: x[0], density: 1, heatOfEvaporation: x[4], viscosity: x[5] },
    );
    return 'solved';
  },
};
