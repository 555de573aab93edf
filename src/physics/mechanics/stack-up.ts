/**
 * How far a chain of sizes can be off at most [m]: every part at its limit in the worst direction.
 *
 * t = Σ tᵢ
 *
 * tᵢ  tolerance of each size [m], half of its range; a size that counts several times is listed as often
 * Valid for sizes that simply add or subtract; the sign in the chain doesn't matter.
 * Source: ASME Y14.5 practice, arithmetic tolerance stack.
 */
export function worstCase(tolerances: readonly number[]): number {
  return tolerances.reduce((sum, tolerance) => sum + tolerance, 0);
}

/**
 * How far a chain of sizes is off as a rule [m]: the root of the summed squares.
 *
 * t = √(Σ tᵢ²)
 *
 * Valid for independent sizes; it is as likely to be exceeded as each single tolerance is, and for few parts with even distributions it is too small.
 * Source: ASME Y14.5 practice, statistical tolerance stack; JCGM 100:2008, 5.1.2, for standard uncertainties.
 */
export function rootSumSquare(tolerances: readonly number[]): number {
  return Math.hypot(...tolerances);
}

/**
 * Room that is left between a plate and a component with its pad on [m]; negative: the pad is compressed by that much.
 *
 * g = H − h − t
 *
 * H  height of the plate over the board, at this place [m]
 * h  height of the component over the board [m]
 * t  thickness of the pad, free [m]
 * Source: geometry.
 */
export function gapOverPad(plateHeight: number, componentHeight: number, padThickness: number): number {
  return plateHeight - componentHeight - padThickness;
}
