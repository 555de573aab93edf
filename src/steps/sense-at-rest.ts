import { referenceTemperature } from '../board/path/conductor.ts';
import { evaluateAt } from '../metrology/evaluate.ts';
import type { Input, Model, Status } from '../metrology/model.ts';
import { monteCarlo } from '../metrology/monte-carlo.ts';
import { resistanceAt } from '../physics/electrical/resistance-at-temperature.ts';
import type { Quantity } from '../quantity/quantity.ts';
import type { Step } from '../study/study.ts';
import { tiesOfStep } from '../study/ties.ts';

/** A resistance as it will be read, with what is known about that [Ω]. */
export interface ExpectedResistance {
  readonly value: number;
  readonly u: number;
  /** 95 % interval. */
  readonly low: number;
  readonly high: number;
}

/** So many draws give the ends of the interval to a hundredth of its width. */
const SAMPLES = 8192;

/**
 * What an ohmmeter with four wires reads at a sense point of a board that lies at rest in the room, its joints included [Ω]. `meter`: standard uncertainty
 * of the meter at a value [Ω]. The room is the study's ambient. Null where the numbers allow no resistance.
 */
export function senseAtRest(step: Step, partId: string, meter: (value: number) => number): ExpectedResistance | null {
  const value = resistanceAtRest(step, partId);
  if (value === null) return null;
  const run = monteCarlo(senseModel(step, partId, { meterU: meter(value) }), { samples: SAMPLES, seed: 1 });
  const sample = run.outputs.get(OUTPUT)!;
  return sample.lost > 0 ? null : { value, u: sample.u, ...sample.interval(0.95) };
}

/** The same at the best values, without the resistor at the place `without` [Ω]; null where nothing is left. */
export function resistanceAtRest(step: Step, partId: string, without?: number): number | null {
  const { y, status } = evaluateAt(senseModel(step, partId, { without }));
  return status.ending === 'solved' ? y[0] : null;
}

const OUTPUT = 'reading';

/** R = 1/Σ(1/(R₂₀·(1 + α·(T − 20 °C)) + R_joint)) + error of the meter, as a model of the step's numbers. */
function senseModel(
  step: Step,
  partId: string,
  { meterU = 0, without = -1 }: { readonly meterU?: number; readonly without?: number },
): Model {
  const part = step.board.parts[partId];
  if (part?.kind !== 'sense') throw new Error(`"${partId}" is no sense point`);
  const quantities = [...step.quantities].filter(([, path]) => concerns(step, partId, path));
  const places = new Map(quantities.map(([quantity], i) => [quantity, i]));
  const placeOf = (quantity: Quantity | undefined) => (quantity ? places.get(quantity)! : -1);
  const connected = part.fitted.filter((_, place) => place !== without);
  const fitted = connected.map((resistor) => ({
    resistance: placeOf(resistor.resistance),
    joint: placeOf(resistor.joint),
    coefficient: placeOf(resistor['temperature-coefficient']),
  }));
  const ambient = placeOf(step.board.heat.ambient);
  const inputs = [
    ...quantities.map(([{ kind, unit, value, spread, source = '' }, id]) => ({
      id,
      kind,
      unit,
      value,
      spread,
      source,
    })),
    meterError(meterU),
  ];
  const ties = tiesOfStep(step, inputs);
  const status: Status = { ending: 'solved', residual: 0, passes: 1 };
  return {
    inputs,
    outputs: [{ id: OUTPUT, kind: 'resistance', unit: 'mΩ', title: `resistance of ${part.title ?? partId}` }],
    evaluate(given, y) {
      const x = ties ? ties.apply(given) : given;
      let conductance = 0;
      for (const { resistance, joint, coefficient } of fitted) {
        const alone = resistanceAt(
          x[resistance],
          coefficient < 0 ? 0 : x[coefficient],
          x[ambient],
          referenceTemperature,
        );
        conductance += 1 / (alone + (joint < 0 ? 0 : x[joint]));
      }
      status.ending = conductance > 0 && Number.isFinite(conductance) ? 'solved' : 'infeasible';
      y[0] = status.ending === 'solved' ? 1 / conductance + x[inputs.length - 1] : Number.NaN;
      return status;
    },
  };
}

/** Numbers of the part, the room, and what others have in common with them. */
function concerns({ board }: Step, partId: string, path: string): boolean {
  if (path.startsWith(`parts.${partId}.`) || path.startsWith('heat.ambient') || path.startsWith('shared.')) return true;
  return board.correlations?.some(({ between }) => between.includes(path)) ?? false;
}

function meterError(u: number): Input {
  const spread = u > 0 ? ({ shape: 'normal', u } as const) : null;
  return { id: 'meter', kind: 'resistance', unit: 'mΩ', value: 0, spread, source: 'of the meter' };
}
