/** A fault that somebody has planted in a virtual board; nobody at the bench knows. */
export type Planted =
  /** A link whose contact is gone: only a tenth of its conductance is left. */
  | { readonly kind: 'detached-pad'; readonly link: string }
  /** The resistor soldered at a sense point isn't what is printed on it: `factor` times. */
  | { readonly kind: 'wrong-sense'; readonly part: string; readonly factor: number }
  /** One phase of a regulator carries nothing; the others share its current. */
  | { readonly kind: 'dead-phase'; readonly part: string }
  /** The leads of two instruments are exchanged. */
  | { readonly kind: 'swapped-channels'; readonly instruments: readonly [string, string] };
