/** A reference function over one range: E = Σ cᵢ·tⁱ, and for type K above 0 °C a bump a0·exp(a1·(t − a2)²) on top [mV, °C]. */
export interface DirectPiece {
  /** Upper end of the range [°C]. */
  readonly to: number;
  /** [mV/°C^i], lowest order first. */
  readonly coefficients: readonly number[];
  /** a0 [mV], a1 [1/°C²], a2 [°C]. */
  readonly bump?: { readonly height: number; readonly rate: number; readonly centre: number };
}

/** A published inverse polynomial over one range: t = Σ dᵢ·Eⁱ [°C, mV]. */
export interface InversePiece {
  /** Upper end of the range [mV]. */
  readonly to: number;
  /** Published least and greatest error of the polynomial [°C]. */
  readonly error: { readonly low: number; readonly high: number };
  /** [°C/mV^i], lowest order first. */
  readonly coefficients: readonly number[];
}

/** A letter-designated thermocouple type; pieces from cold to hot, each beginning where the one before ends. */
export interface ThermocoupleType {
  readonly letter: 'K' | 'T' | 'J' | 'E' | 'N';
  readonly title: string;
  /** Where the first reference function begins [°C]. */
  readonly lowest: number;
  readonly direct: readonly DirectPiece[];
  /** Where the first inverse polynomial begins [mV]. */
  readonly lowestInverse: number;
  readonly inverse: readonly InversePiece[];
}
