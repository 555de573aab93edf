import { type Fault, refuse } from '../../fault/fault.ts';
import { nearest } from '../../fault/nearest.ts';

/** Where a condition was published to work: lowest and highest value [SI]. */
export type Range = readonly [low: number, high: number];

/** A plating bath as published, without its recipe. */
export interface Bath {
  readonly title: string;
  /** [K] */
  readonly temperature: Range | null;
  readonly ph: Range | null;
  /** [A/m²] */
  readonly currentDensity: Range | null;
  /** Current efficiency of the cathode [1]. */
  readonly efficiency: Range | null;
  readonly source: string;
  /** What may hurt someone; shown wherever the bath is. */
  readonly caution: string;
}

const celsius = (low: number, high: number): Range => [low + 273.15, high + 273.15];

const nickelCaution =
  'Nickel salts are toxic, sensitise skin and lungs and cause cancer; hydrogen is set free. Use a commercial plater. Local codes on work and waste win over everything here.';

/** Baths with their published ranges; `null` where none was found. */
export const baths = {
  'watts-nickel': {
    title: 'Watts nickel bath',
    temperature: celsius(40, 65),
    ph: [3.5, 5.1],
    currentDensity: [200, 1000],
    efficiency: [0.92, 0.97],
    source:
      'ASM handbooks as summarised in encyclopedias (40 °C to 65 °C, 2 A/dm² to 10 A/dm², pH up to 5.1); Nickel Institute, Nickel Plating Handbook, 2014 (pH from 3.5, efficiency; from memory)',
    caution: nickelCaution,
  },
  'bright-nickel': {
    title: 'bright nickel bath',
    temperature: celsius(50, 65),
    ph: [3, 5],
    currentDensity: null,
    efficiency: [0.93, 0.97],
    source: 'platers’ published notes: 50 °C to 65 °C, pH 3 to 5; efficiency 93 % to 97 %',
    caution: nickelCaution,
  },
  'acid-copper': {
    title: 'acid copper sulfate bath',
    temperature: celsius(18, 60),
    ph: null,
    currentDensity: [215, 1080],
    efficiency: null,
    source:
      'platers’ published notes (18 °C to 60 °C); US EPA, AP-42, section 12.20, electroplating (215 A/m² to 1080 A/m², as reprinted)',
    caution:
      'Sulfuric acid burns skin and eyes; copper salts poison water. Use a commercial plater. Local codes on work and waste win over everything here.',
  },
} satisfies Record<string, Bath>;

export type BathName = keyof typeof baths;

/** Conditions someone means to plate under [SI]. */
export interface BathConditions {
  readonly temperature: number;
  readonly ph: number;
  readonly currentDensity: number;
}

const conditions = [
  { key: 'temperature', name: 'a temperature', unit: '°C', shown: (value: number) => value - 273.15 },
  { key: 'ph', name: 'a pH', unit: '', shown: (value: number) => value },
  { key: 'currentDensity', name: 'a current density', unit: 'A/dm²', shown: (value: number) => value / 100 },
] as const;

/**
 * What is wrong with conditions in a bath: a warning for each that is outside its published range, an open point for each without a range.
 *
 * Refuses `physics/unknown-bath` as its only fault.
 */
export function checkBath(name: string, given: BathConditions): Fault[] {
  const known = Object.keys(baths);
  if (!Object.hasOwn(baths, name)) return [refuse('physics/unknown-bath', { name, known, near: nearest(name, known) })];
  const bath: Bath = baths[name as BathName];
  return conditions.flatMap(({ key, name: condition, unit, shown }): Fault[] => {
    const range = bath[key];
    const about = { condition, bath: bath.title, unit };
    if (range === null) return [{ code: 'physics/bath-range-open', severity: 'open', data: about }];
    if (given[key] >= range[0] && given[key] <= range[1]) return [];
    const [value, low, high] = [given[key], ...range].map((x) => Number(shown(x).toPrecision(6)));
    return [{ code: 'physics/bath-outside-range', severity: 'warning', data: { ...about, value, low, high } }];
  });
}
