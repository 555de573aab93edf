/** A plate that is heated over a rectangle of its top and cooled over its whole bottom; lengths in [m]. */
export interface HeatedPlate {
  readonly width: number;
  readonly depth: number;
  readonly thickness: number;
  /** Thermal conductivity of the plate [W/(m·K)]. */
  readonly conductivity: number;
  /** Film coefficient on the far side [W/(m²·K)]. */
  readonly film: number;
  readonly sourceWidth: number;
  readonly sourceDepth: number;
  /** Middle of the source from one corner of the plate; without it, the plate's middle. */
  readonly sourceCentre?: readonly [x: number, y: number];
}

/** Spreading resistances by the mean temperature of the source and by the temperature at its middle [K/W]. */
export interface Spreading {
  readonly mean: number;
  readonly centre: number;
}

/**
 * Spreading resistance of a rectangular source anywhere on a rectangular plate, by the exact series [K/W].
 *
 * R = (1/(a·b))·[2·Σ_m s_m·s_m·g(λ_m) + 2·Σ_n s_n·s_n·g(δ_n) + 4·ΣΣ s_m²·s_n²·g(β_mn)]; for the middle, s_m·cos(λ_m·x) instead of s_m²
 * λ_m = m·π/a, δ_n = n·π/b, β_mn² = λ_m² + δ_n², s_m = cos(λ_m·x)·sin(λ_m·c/2)/(λ_m·c/2)
 * g(z) = (z + (h/k)·tanh(z·t))/(k·z·(z·tanh(z·t) + h/k))
 *
 * a, b  width and depth of the plate [m]
 * c     width of the source [m], and likewise its depth
 * x, y  middle of the source [m]
 * t     thickness of the plate [m]
 * k     its thermal conductivity [W/(m·K)]
 * h     film coefficient on its far side [W/(m²·K)]
 * It comes on top of t/(k·a·b) + 1/(h·a·b). Valid for uniform flux over the source and insulated edges; the source lies inside the plate.
 * Source: Y. S. Muzychka, J. R. Culham, M. M. Yovanovich, J. Electronic Packaging 125 (2003) 178–185 (equations from memory, derived again).
 */
export function rectangleSpreading(plate: HeatedPlate): Spreading {
  const { width, depth, thickness, conductivity, film, sourceWidth, sourceDepth } = plate;
  const [x, y] = plate.sourceCentre ?? [width / 2, depth / 2];
  const columns = waves(width, sourceWidth, x);
  const rows = waves(depth, sourceDepth, y);
  const ratio = film / conductivity;
  const through = (wave: number) => {
    const tanh = Math.tanh(wave * thickness);
    return (wave + ratio * tanh) / (conductivity * wave * (wave * tanh + ratio));
  };
  let [mean, centre] = [0, 0];
  for (const row of rows) {
    const alone = 2 * through(row.wave);
    mean += row.mean * alone;
    centre += row.centre * alone;
  }
  for (const column of columns) {
    const alone = 2 * through(column.wave);
    mean += column.mean * alone;
    centre += column.centre * alone;
    for (const row of rows) {
      // Math.hypot would take twice as long for the whole series.
      const both = 4 * through(Math.sqrt(column.wave ** 2 + row.wave ** 2));
      mean += column.mean * row.mean * both;
      centre += column.centre * row.centre * both;
    }
  }
  return { mean: mean / (width * depth), centre: centre / (width * depth) };
}

/** The series is cut where a wave is this many times shorter than the source; what is left is below 0.05 %. */
const wavesAcrossSource = 40;

function waves(plate: number, source: number, middle: number): { wave: number; mean: number; centre: number }[] {
  return Array.from({ length: Math.ceil((2 * wavesAcrossSource * plate) / source) }, (_, i) => {
    const wave = ((i + 1) * Math.PI) / plate;
    const crest = Math.cos(wave * middle);
    const share = (crest * Math.sin((wave * source) / 2)) / ((wave * source) / 2);
    return { wave, mean: share * share, centre: share * crest };
  }).filter(({ mean, centre }) => mean + Math.abs(centre) > 1e-14);
}
