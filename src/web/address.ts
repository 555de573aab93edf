/** What the address keeps: the chosen step, and the dial when it stands elsewhere than the firmware would. */
export interface Chosen {
  readonly step: string | null;
  /** [W] */
  readonly dial: number | null;
}

/** Reads `#step=second&dial=62`; anything that isn't a number of watts above zero is no dial. */
export function readAddress(hash: string): Chosen {
  const fields = new URLSearchParams(hash.replace(/^#/, ''));
  const dial = Number(fields.get('dial') ?? Number.NaN);
  return { step: fields.get('step'), dial: Number.isFinite(dial) && dial > 0 ? dial : null };
}

export function writeAddress({ step, dial }: Chosen): string {
  const fields = new URLSearchParams();
  if (step !== null) fields.set('step', step);
  if (dial !== null) fields.set('dial', String(dial));
  return `#${fields}`;
}
