/**
 * Junction temperature from a temperature measured on the package's top or on the board beside it [K].
 *
 * Tj = Tx + ψ·P
 *
 * Tx  measured at the spot that ψ belongs to: ψJT top, ψJB board [K]
 * ψ   thermal characterisation parameter [K/W]; not a thermal resistance, only a part of the heat passes that spot
 * P   all of the part's loss [W]
 * Valid on boards and in air like those ψ was measured with. θJC(top) in its place is wrong by more than ten times.
 * Source: JEDEC JESD51-2A and JESD51-6; Texas Instruments, SPRA953, Semiconductor and IC Package Thermal Metrics.
 */
export function junctionFromSurface(surface: number, characterisation: number, power: number): number {
  return surface + characterisation * power;
}

/**
 * Junction temperature from the case, for heat that leaves through that face of the case [K].
 *
 * Tj = Tc + θ·s·P
 *
 * Tc  temperature of that face [K]
 * θ   thermal resistance junction to that face, measured with nearly all of the heat through it [K/W]
 * s   share of the loss that leaves through that face [1]; 1 under a cold plate or a heat sink, a few per cent for a bare top
 * P   all of the part's loss [W]
 * There is no result without the share: it can't be guessed from the package.
 * Source: JEDEC JESD51-14; Texas Instruments, SPRA953, Semiconductor and IC Package Thermal Metrics.
 */
export function junctionFromCase(face: number, resistance: number, power: number, share: number): number {
  return face + resistance * share * power;
}
