/**
 * A rating at a temperature, by a derating line [unit of the rating].
 *
 * full up to T1, then rating·(T2 − T)/(T2 − T1), and nothing from T2 on
 *
 * rating  full rating
 * T       temperature [K]
 * T1      full rating up to here [K]
 * T2      nothing left here [K], above T1
 * Valid over the part's rated range of temperature; the part's own data sheet wins.
 * Source: IEC 60115-1, rated dissipation and derating curve.
 */
export function deratedRating(rating: number, temperature: number, from: number, end: number): number {
  if (temperature <= from) return rating;
  if (temperature >= end) return 0;
  return (rating * (end - temperature)) / (end - from);
}
