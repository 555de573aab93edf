import { type Fault, refuse } from '../../fault/fault.ts';
import { nearest } from '../../fault/nearest.ts';

/** never: destroys or short-circuits; warned: works with conditions; fine: no attack was found; open: nothing was found, so ask or test. */
export type Verdict = 'never' | 'warned' | 'fine' | 'open';

/** What an interface metal does to a surface. */
export interface Compatibility {
  readonly verdict: Verdict;
  readonly reason: string;
  /** How long it takes, as far as known. */
  readonly timeScale: string;
  readonly source: string;
}

/** Metals used as thermal interface. */
export const interfaceMetals = {
  gallium: 'gallium (melts at 29.8 °C)',
  'gallium-indium': 'gallium with indium, liquid at room temperature',
  'gallium-indium-tin': 'gallium with indium and tin, liquid at room temperature',
  indium: 'solid indium foil',
} as const;

/** Surfaces found in a cooling assembly. */
export const surfaces = {
  aluminium: 'bare aluminium and its alloys',
  'anodised-aluminium': 'anodised aluminium',
  'nickel-plated-aluminium': 'aluminium with a nickel layer',
  copper: 'bare copper',
  'nickel-plated-copper': 'copper with a nickel layer',
  nickel: 'solid nickel',
  brass: 'brass',
  gold: 'gold, such as the finish of contacts and pads',
  silver: 'silver',
  tin: 'tin finish',
  solder: 'tin-based solder',
  zinc: 'zinc, zinc-plated steel',
  steel: 'carbon steel',
  'stainless-steel': 'stainless steel',
  tungsten: 'tungsten',
  silicon: 'bare silicon die',
  diamond: 'diamond coating',
  board: 'circuit board with its contacts, parts and solder',
} as const;

export type InterfaceMetal = keyof typeof interfaceMetals;
export type Surface = keyof typeof surfaces;

const practice = 'common practice, no source';
const tang = 'Tang et al., Review of Scientific Instruments 93 (12), 2022, doi 10.1063/5.0127785, abstract';

/** What holds for every gallium alloy that is liquid at working temperature. */
const gallium: Readonly<Partial<Record<Surface, Compatibility>>> = {
  aluminium: {
    verdict: 'never',
    reason:
      'gallium runs along the grain boundaries of aluminium; the part loses its strength and crumbles, at any thickness',
    timeScale: 'micrometres a second in thin films; minutes to hours for a heat sink',
    source: 'abstract of Fast penetration of liquid gallium in polycrystalline aluminum films (2.3 µm/s to 9.1 µm/s)',
  },
  'anodised-aluminium': {
    verdict: 'never',
    reason: 'the oxide holds gallium off only while it is whole; one scratch or pore lets it into the aluminium',
    timeScale: 'none while whole; minutes to hours from the first scratch',
    source: practice,
  },
  'nickel-plated-aluminium': {
    verdict: 'never',
    reason: 'one pinhole or scratch in the layer lets gallium into the aluminium beneath',
    timeScale: 'unknown while whole; minutes to hours from the first pinhole',
    source: practice,
  },
  copper: {
    verdict: 'warned',
    reason:
      'copper takes up gallium as CuGa2: the surface stains, the alloy loses gallium, stiffens and dries; the joint is to be renewed',
    timeScale: 'weeks to months when hot (common practice, no source); 0.33 mm of reaction zone after 36 h at 250 °C',
    source: tang,
  },
  'nickel-plated-copper': {
    verdict: 'warned',
    reason: 'nickel reacts more slowly than copper but is no inert barrier; pinholes defeat it',
    timeScale: 'no rate between 60 °C and 100 °C was found; 48 µm of reaction zone in nickel after 36 h at 250 °C',
    source: tang,
  },
  nickel: {
    verdict: 'warned',
    reason: 'nickel forms Ni3Ga7, more slowly than copper forms its compound',
    timeScale: 'no rate between 60 °C and 100 °C was found; 48 µm after 36 h at 250 °C',
    source: tang,
  },
  brass: {
    verdict: 'never',
    reason: 'eutectic gallium-indium makes alpha brass brittle at room temperature, and zinc dissolves in it',
    timeScale: 'as soon as it is under load',
    source: 'Metals 15 (11), 2025, 1194, abstract',
  },
  gold: {
    verdict: 'never',
    reason:
      'gold forms several compounds with gallium that are stable at room temperature; a finish below a micrometre is used up',
    timeScale: 'not known; taken as short, as the layer is thin',
    source: 'gold–gallium phase diagram (four compounds stable at room temperature), from memory of a 2011 assessment',
  },
  tin: {
    verdict: 'never',
    reason: 'tin dissolves in the alloy, which is liquid because it takes up tin and indium',
    timeScale: 'hours or less when warm',
    source: practice,
  },
  solder: {
    verdict: 'never',
    reason: 'the tin of the joint dissolves and what is left has no strength',
    timeScale: 'hours or less when warm',
    source: practice,
  },
  zinc: {
    verdict: 'never',
    reason: 'gallium dissolves zinc and embrittles its alloys',
    timeScale: 'hours to days',
    source: practice,
  },
  steel: {
    verdict: 'warned',
    reason:
      'steels under load can become brittle in contact with gallium or indium; not for screws, springs or anything that carries force',
    timeScale: 'not known below 100 °C',
    source:
      'Vigilante, Trolano and Mossey, Liquid Metal Embrittlement of ASTM A723 Gun Steel by Indium and Gallium, 1999, title and citation only',
  },
  'stainless-steel': {
    verdict: 'warned',
    reason:
      'no wear is expected at the temperatures of a heat sink while the oxide is whole; parts under load are to be kept clear',
    timeScale: 'attack was reported from several hundred °C',
    source: 'Indium Corporation, notes on gallium alloys and stainless steel (acceptable in tests to about 600 °C)',
  },
  tungsten: {
    verdict: 'fine',
    reason: 'no reaction zone was found',
    timeScale: 'none after 36 h at 250 °C',
    source: tang,
  },
  silicon: {
    verdict: 'fine',
    reason: 'a die may carry it, inside a dam; the alloy itself still hardens in moist air',
    timeScale: 'the alloy: years, by moisture (hardening after 2 to 4 years was seen)',
    source: `die: ${practice}; hardening: Handschuh-Wang et al., Materials 17 (2024) 2683, abstract`,
  },
  diamond: {
    verdict: 'fine',
    reason: 'it neither entered nor corroded the coating; the alloy itself still hardens in moist air',
    timeScale: 'none in 4 years; the alloy hardened from the second year on',
    source: 'Handschuh-Wang et al., Materials 17 (2024) 2683, abstract',
  },
  board: {
    verdict: 'never',
    reason:
      'it conducts: a drop between contacts is a short circuit, and it attacks gold, tin and solder; a dam has to keep it on the die',
    timeScale: 'at once',
    source: practice,
  },
};

const table: Readonly<Record<InterfaceMetal, Readonly<Partial<Record<Surface, Compatibility>>>>> = {
  gallium,
  'gallium-indium': gallium,
  'gallium-indium-tin': gallium,
  indium: {
    copper: {
      verdict: 'warned',
      reason: 'indium slowly forms compounds with copper; they are brittle but conduct heat',
      timeScale: 'years below 100 °C',
      source: practice,
    },
    'nickel-plated-copper': {
      verdict: 'fine',
      reason: 'indium foil on nickel is a usual joint between die and lid',
      timeScale: 'none known below its melting point of 156.6 °C',
      source: practice,
    },
    gold: {
      verdict: 'warned',
      reason: 'indium takes up gold and forms a brittle compound; thin gold is used up on purpose to make a joint',
      timeScale: 'hours when hot, years at room temperature',
      source: practice,
    },
    board: {
      verdict: 'never',
      reason: 'it conducts: a foil that moves is a short circuit',
      timeScale: 'at once',
      source: practice,
    },
  },
};

/** A pair of which nothing is known: not fine, open. */
const unknownPair: Compatibility = {
  verdict: 'open',
  reason: 'nothing was found about this pair; that is no permission',
  timeScale: 'not known',
  source: 'none',
};

/**
 * What an interface metal does to a surface.
 *
 * Refuses `physics/unknown-interface-metal` and `physics/unknown-surface`. A known pair without an entry is `open`.
 */
export function compatibility(
  interfaceMetal: string,
  surface: string,
): { readonly ok: true; readonly entry: Compatibility } | { readonly ok: false; readonly fault: Fault } {
  const metals = Object.keys(interfaceMetals);
  const known = Object.keys(surfaces);
  if (!isOneOf(interfaceMetals, interfaceMetal)) {
    const data = { name: interfaceMetal, known: metals, near: nearest(interfaceMetal, metals) };
    return { ok: false, fault: refuse('physics/unknown-interface-metal', data) };
  }
  if (!isOneOf(surfaces, surface)) {
    const data = { name: surface, known, near: nearest(surface, known) };
    return { ok: false, fault: refuse('physics/unknown-surface', data) };
  }
  return { ok: true, entry: table[interfaceMetal][surface] ?? unknownPair };
}

function isOneOf<T extends object>(names: T, name: string): name is keyof T & string {
  return Object.hasOwn(names, name);
}
