import type { BoardModel } from '../board/assemble.ts';
import type { SensePart } from '../study/schema/parts.ts';
import type { Step } from '../study/study.ts';
import type { PointFit } from './fit.ts';
import type { Soldered } from './soldered.ts';
import { type Solved, solveWith } from './working-point.ts';

/** Stands for a way that is open [Ω]. */
const openResistance = 1e9;
/** Stands for a part that is shorted, its joints with it [Ω]. */
const shortedResistance = 1e-12;

/** One single failure, and what it changes among the board's inputs. */
export interface Failure {
  readonly sense: string;
  /** What fails: the name of a part of the stock, or of a resistor that was there. */
  readonly part: string;
  readonly mode: 'opens' | 'shorts';
  readonly isOriginal: boolean;
  /** SI by input id; null: the current's only way is open, and everything behind it is off. */
  readonly changed: ReadonlyMap<string, number> | null;
}

/** Every single failure at the sense points of a limiter: each joint open, each part short, each resistor that was there cracked. */
export function failuresOf(
  before: Step,
  after: Step,
  points: ReadonlyMap<string, { readonly fit: PointFit; readonly soldered: Soldered }>,
): Failure[] {
  return [...points].flatMap(([sense, { fit, soldered }]) => {
    const was = before.board.parts[sense] as SensePart;
    const is = after.board.parts[sense] as SensePart;
    const idOf = (quantity: NonNullable<SensePart['fitted'][number]['joint']>) => after.quantities.get(quantity)!;
    const resistors = is.fitted.flatMap((resistor, place): Failure[] => {
      const entry = soldered.entries[place];
      const isOriginal = typeof entry === 'number';
      const part = isOriginal
        ? (was.fitted[entry].title ?? `${was.title ?? sense}, resistor ${entry + 1}`)
        : entry.name;
      const id = idOf(resistor.resistance);
      const shorted = new Map([[id, shortedResistance]]);
      if (resistor.joint) shorted.set(idOf(resistor.joint), 0);
      const open = is.fitted.length > 1 ? new Map([[id, openResistance]]) : null;
      return [
        { sense, part, mode: 'opens', isOriginal, changed: open },
        { sense, part, mode: 'shorts', isOriginal, changed: shorted },
      ];
    });
    if (!fit.across) return resistors;
    const { name: part } = fit.across;
    const id = idOf(is.divider!.parallel);
    return [
      ...resistors,
      { sense, part, mode: 'opens', isOriginal: false, changed: new Map([[id, was.divider!.parallel.value]]) },
      { sense, part, mode: 'shorts', isOriginal: false, changed: new Map([[id, shortedResistance]]) },
    ];
  });
}

/** What the board does with one part failed. */
export interface Failed extends Failure {
  readonly direction: 'falls' | 'stays' | 'rises' | 'off' | 'gives in';
  /** Real power past the limiter [W]; null when the board is off, or finds no steady state. */
  readonly real: number | null;
  /** The limiter that holds then, or `demand`: nothing does. */
  readonly holder: string | null;
  /** Trips and ratings that are passed then, and weren't before: their ids. */
  readonly passed: readonly string[];
}

/** The board with one part failed, every limiter acting as it does and the processor taking what it may. */
export function fail(board: BoardModel, limiter: string, whole: Solved, failure: Failure): Failed {
  if (failure.changed === null) return { ...failure, direction: 'off', real: null, holder: null, passed: [] };
  const failed = solveWith(board, failure.changed);
  if (failed.ending !== 'solved' || isBeyondAnything(failed))
    return { ...failure, direction: 'gives in', real: null, holder: null, passed: [] };
  const output = `limiters.${limiter}.real`;
  const real = failed.of(output);
  const ratio = whole.ending === 'solved' ? real / whole.of(output) : 1;
  const direction = ratio > 1 + 1e-4 ? 'rises' : ratio < 1 - 1e-4 ? 'falls' : 'stays';
  const already = new Set(whole.ending === 'solved' ? passedAt(whole) : []);
  return {
    ...failure,
    direction,
    real,
    holder: failed.holder,
    passed: passedAt(failed).filter((id) => !already.has(id)),
  };
}

/** A rise that no board survives, of which a search for a steady state may still find a balance [K]. */
const runawayRise = 2000;

function isBeyondAnything({ board, of }: Solved): boolean {
  const ambient = of('heat.nodes.ambient.temperature');
  return board.outputs.some(({ id }) => /^heat\.nodes\.[^.]+\.temperature$/.test(id) && of(id) - ambient > runawayRise);
}

/** Trips and ratings that are passed at a solution. */
export function passedAt({ board, of }: Solved): string[] {
  return board.limits.filter(({ marginOutput }) => of(board.outputs[marginOutput].id) < 0).map(({ id }) => id);
}
