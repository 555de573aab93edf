/** Faraday constant [C/mol]. Source: CODATA 2018, e·N_A, exact to the digits given. */
export const faradayConstant = 96_485.33212;

/**
 * Mass of a metal that a charge deposits at full current efficiency [kg/C].
 *
 * e = M/(n·F)
 *
 * M  molar mass [kg/mol]
 * n  electrons for each ion, its charge in the bath [1], more than zero
 * F  Faraday constant [C/mol]
 * Valid for deposition from one kind of ion.
 * Source: Faraday's laws of electrolysis; CODATA 2018.
 */
export function electrochemicalEquivalent(molarMass: number, valence: number): number {
  return molarMass / (valence * faradayConstant);
}
