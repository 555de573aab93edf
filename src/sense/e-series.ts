/** Values of one decade in the E24 series; IEC 60063 rounds eight of them away from 10^(i/24). */
const e24 = [10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91];

/** Values of one decade in the E96 series: 10^(i/96) to three digits, without an exception. */
const e96 = Array.from({ length: 96 }, (_, i) => Math.round(100 * 10 ** (i / 96)));

export type Series = 'E24' | 'E96';

/**
 * Nominal values of a series of preferred numbers from `low` to `high`, both included [any unit; the same as the ends].
 *
 * Source: IEC 60063, series E24 and E96.
 */
export function seriesValues(series: Series, low: number, high: number): number[] {
  const decade = series === 'E24' ? e24 : e96;
  const values: number[] = [];
  const last = Math.ceil(Math.log10(high));
  for (let power = Math.floor(Math.log10(low)); power <= last; power++)
    for (const digits of decade) {
      const value = Number(`${digits}e${power - (series === 'E24' ? 1 : 2)}`);
      if (value >= low * (1 - 1e-9) && value <= high * (1 + 1e-9)) values.push(value);
    }
  return values;
}
