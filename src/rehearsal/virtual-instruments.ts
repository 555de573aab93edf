import { type RandomStream, randomStream } from '../numeric/random.ts';
import type { Planted } from './planted.ts';

/** An instrument of the study as it hangs on a virtual board. */
export interface Fitting {
  readonly id: string;
  /** Output of the board that it shows. */
  readonly shows: string;
  /** Standard uncertainty that all its readings share [SI]. */
  readonly u: number;
  /** Standard uncertainty of a steady value for itself, from one to the next [SI]. */
  readonly repeatability: number;
  readonly temperature: boolean;
}

/** One instrument: reads late, a little off, with noise, and in steps. */
interface Sensor {
  readonly shows: string;
  /** What all its readings are off by [SI]. */
  readonly offset: number;
  /** Standard deviation of one reading [SI]. */
  readonly noise: number;
  /** Step of the display [SI]; 0: as fine as one likes. */
  readonly resolution: number;
  /** Time constant of its own [s]. */
  readonly lag: number;
  /** What its offset gains in an hour [SI/h]. */
  readonly drift: number;
  readonly random: RandomStream;
  readonly repeatability: number;
  /** What this run is off by beside all that [SI]. */
  seating: number;
  shown: number;
}

/** The instruments on a virtual board, with errors of their own that nobody at the bench can see. */
export class VirtualInstruments {
  readonly #sensors = new Map<string, Sensor>();
  #hours = 0;

  constructor(fittings: readonly Fitting[], drift: number, faults: readonly Planted[], seed: number) {
    const swap = faults.find((fault) => fault.kind === 'swapped-channels');
    const [one, other] = swap?.kind === 'swapped-channels' ? swap.instruments : ['', ''];
    const lead = (id: string) => (id === one ? other : id === other ? one : id);
    for (const { id, u, repeatability, temperature } of fittings) {
      const shows = fittings.find((fitting) => fitting.id === lead(id))!.shows;
      // A stream of its own: one instrument more leaves the others as they are.
      const random = randomStream([...id].reduce((sum, letter) => Math.imul(sum, 31) + letter.charCodeAt(0), seed));
      this.#sensors.set(id, {
        shows,
        offset: u * random.normal(),
        noise: u * (0.1 + 0.4 * random.uniform()),
        // Whole kelvins as a processor reports them, or tenths; powers and currents in hundredths of their uncertainty.
        resolution: temperature ? (random.uniform() < 0.3 ? 1 : 0.1) : u / 100,
        lag: temperature ? 2 + 10 * random.uniform() : 0.2,
        drift: drift * u * random.normal(),
        random,
        repeatability,
        seating: 0,
        shown: Number.NaN,
      });
    }
  }

  /** Step of an instrument's display [SI]. */
  resolution(id: string): number {
    return this.#sensors.get(id)!.resolution;
  }

  /** The board is started again: sensors are not quite as they were. */
  restart(): void {
    for (const sensor of this.#sensors.values()) {
      sensor.seating = sensor.repeatability * sensor.random.normal();
      sensor.shown = Number.NaN;
    }
  }

  /** What the instruments show `dt` seconds later, by instrument [SI]. */
  read(outputs: ReadonlyMap<string, number>, dt: number): Map<string, number> {
    this.#hours += dt / 3600;
    const readings = new Map<string, number>();
    for (const [id, sensor] of this.#sensors) {
      const truth = outputs.get(sensor.shows);
      if (truth === undefined) throw new Error(`a virtual board has no output "${sensor.shows}"`);
      const share = Number.isNaN(sensor.shown) ? 1 : 1 - Math.exp(-dt / sensor.lag);
      sensor.shown = Number.isNaN(sensor.shown) ? truth : sensor.shown + share * (truth - sensor.shown);
      const raw =
        sensor.shown +
        sensor.offset +
        sensor.seating +
        sensor.drift * this.#hours +
        sensor.noise * sensor.random.normal();
      readings.set(id, Math.round(raw / sensor.resolution) * sensor.resolution);
    }
    return readings;
  }
}
