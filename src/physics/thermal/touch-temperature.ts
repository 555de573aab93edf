/** What a touched surface is made of. */
export type TouchedMaterial = 'metal' | 'glass' | 'plastic' | 'wood';

/**
 * Highest temperature of a part that may be touched [K].
 *
 * By the time of contact: under 1 s, to 10 s, to 1 min, longer; limits for class TS1, measured at 25 °C around.
 *
 * material  of the touched surface; glass stands for ceramics, plastic for rubber
 * time      of contact [s]
 * Valid for adults and a small area of skin. The standard wins over this table; a burn threshold isn't comfort.
 * Source: IEC 62368-1:2018, table 38 (from memory; 48, 77 and 94 °C for plastic agree with what the committee's readers quote).
 */
export function touchLimit(material: TouchedMaterial, time: number): number {
  const row = limits.find(({ upTo }) => time < upTo) ?? limits[limits.length - 1];
  return 273.15 + row[material];
}

/** Limits [°C] by time of contact [s]. */
const limits: readonly (Readonly<Record<TouchedMaterial, number>> & { readonly upTo: number })[] = [
  { upTo: 1, metal: 70, glass: 85, plastic: 94, wood: 140 },
  { upTo: 10, metal: 60, glass: 71, plastic: 77, wood: 107 },
  { upTo: 60, metal: 51, glass: 56, plastic: 60, wood: 60 },
  { upTo: Number.POSITIVE_INFINITY, metal: 48, glass: 48, plastic: 48, wood: 48 },
];
