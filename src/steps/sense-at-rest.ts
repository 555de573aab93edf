import { referenceTemperature } from '../board/path/conductor.ts';
import { startValues } from '../metrology/evaluate.ts';
import type { Model, Status } from '../metrology/model.ts';
import { monteCarlo } from '../metrology/monte-carlo.ts';
import { resistanceAt } from '../physics/electrical/resistance-at-temperature.ts';
import type { Quantity } from '../quantity/quantity.ts';
import type { Step } from '../study/study.ts';
import { tiesOfStep } from '../study/ties.ts';

/** A resistance with what is known about it [Ω]. */
export interface Resistance {
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
export function senseAtRest(step: Step, partId: string, meter: (value: number) => number): Resistance | null {
  const best = senseModel(step, partId, 0);
  const y = new Float64Array(1);
  if (best.evaluate(startValues(best), y).ending !== 'solved') return null;
  const [value] = y;
  const run = monteCarlo(senseModel(step, partId, meter(value)), { samples: SAMPLES, seed: 1 });
  const sample = run.outputs.get(OUTPUT)!;
  if (sample.lost > 0) return null;
  return { value, u: sample.u, ...sample.interval(0.95) };
}

const OUTPUT = 'reading';

/** R = 1/Σ(1/(R₂₀·(1 + α·(T − 20 °C)) + R_joint)) + error of the meter, as a model of the step's numbers. */
function senseModel(step: Step, partId: string, meterU: number): Model {
  const part = step.board.parts[partId];
  if (part?.kind !== 'sense') throw new Error(`"${partId}" is no sense point`);
  const quantities = [...step.quantities];
  const inputs = quantities.map(([{ kind, unit, value, spread, source = '' }, id]) => {
    return { id, kind, unit, value, spread, source };
  });
  const places = new Map(quantities.map(([quantity], i) => [quantity, i]));
  const placeOf = (quantity: Quantity | undefined) => (quantity ? places.get(quantity)! : -1);
  const fitted = part.fitted.map((resistor) => ({
    resistance: placeOf(resistor.resistance),
    joint: placeOf(resistor.joint),
    coefficient: placeOf(resistor['temperature-coefficient']),
  }));
  const ambient = placeOf(step.board.heat.ambient);
  const ties = tiesOfStep(step, inputs);
  const status: Status = { ending: 'solved', residual: 0, passes: 1 };
  return {
    inputs: [
      ...inputs,
      {
        id: 'meter',
        kind: 'resistance',
        unit: 'mΩ',
        value: 0,
        spread: meterU > 0 ? { shape: 'normal', u: meterU } : null,
        source: 'of the meter',
      },
    ],
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
      y[0] = status.ending === 'solved' ? 1 / conductance + given[inputs.length] : Number.NaN;
      return status;
    },
  };
}
