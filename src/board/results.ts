import { peakCurrent } from '../physics/electrical/inductor-current.ts';
import type { Step } from '../study/study.ts';
import type { HeatNetwork } from './heat/network.ts';
import type { Outputs } from './outputs.ts';
import type { CoupledPass } from './pass.ts';
import type { PathPart } from './path/path-part.ts';
import type { PathState } from './path/path-state.ts';
import type { PowerPath } from './power-path.ts';

/** What is said of the board as a whole and of its heat nodes. */
export class WholeResults {
  readonly #scale: number;
  readonly #processor: number;
  readonly #wall: number;
  readonly #heat: number;
  readonly #gain: number;
  readonly #nodes: readonly number[];
  readonly #ambient: number;

  constructor({ board }: Step, { nodes }: HeatNetwork, outputs: Outputs) {
    this.#scale = outputs.add('scale', 'ratio', '', 'scale of the processor’s power');
    this.#processor = outputs.add('processor-power', 'power', 'W', 'power of everything that follows the processor');
    this.#wall = outputs.add('wall-power', 'power', 'W', 'power from the wall');
    this.#heat = outputs.add('heat', 'power', 'W', 'heat that leaves the board');
    this.#gain = outputs.add('loop-gain', 'ratio', '', 'growth of a small rise in temperature; 1 is runaway');
    this.#nodes = nodes.map((id) =>
      outputs.add(`heat.nodes.${id}.temperature`, 'temperature', '°C', board.heat.nodes[id].title ?? id),
    );
    this.#ambient = outputs.add('heat.nodes.ambient.temperature', 'temperature', '°C', 'ambient');
  }

  write(pass: CoupledPass, path: PowerPath, y: readonly Float64Array[], from: number, to: number): void {
    const { state, heat, rises, loopGain } = pass;
    const { ambient } = heat;
    for (let s = from; s < to; s++) {
      let wall = 0;
      for (let i = 0; i < path.supplies.length; i++) wall += path.supplies[i].wallPower(state, s);
      let processor = 0;
      for (let i = 0; i < path.followers.length; i++) processor += state.loss[path.followers[i].index][s];
      y[this.#scale][s] = state.scale[s];
      y[this.#processor][s] = processor;
      y[this.#wall][s] = wall;
      // What heats `ambient` at once never passes the heat path.
      y[this.#heat][s] = state.heat.columns[heat.nodes.length][s] + heat.leaving(rises, s);
      y[this.#gain][s] = loopGain[s];
      y[this.#ambient][s] = ambient[s];
    }
    for (let i = 0; i < this.#nodes.length; i++) {
      const temperature = y[this.#nodes[i]];
      const rise = rises.columns[i];
      for (let s = from; s < to; s++) temperature[s] = ambient[s] + rise[s];
    }
  }
}

/** Places of one part's results; −1 where a part of its kind has none. */
interface PartPlaces {
  readonly part: PathPart;
  readonly current: number;
  readonly voltage: number;
  readonly loss: number;
  readonly peak: number;
  readonly inductorPeak: number;
  readonly phaseCurrent: number;
  readonly phaseRipple: number;
}

/** What is said of every part alike: current, voltage, loss, and peaks. The parts have made their own outputs before. */
export class PartResults {
  readonly #places: readonly PartPlaces[];
  readonly #crest: Float64Array;

  constructor({ board }: Step, parts: readonly PathPart[], crest: Float64Array, outputs: Outputs) {
    this.#crest = crest;
    const title = (id: string) => board.parts[id].title ?? id;
    const currents = parts.map(({ id }) =>
      outputs.add(`parts.${id}.current`, 'current', 'A', `current of ${title(id)}`),
    );
    const voltages = parts.map(({ id }) =>
      outputs.add(`parts.${id}.voltage`, 'voltage', 'V', `voltage at ${title(id)}`),
    );
    const losses = parts.map(({ id }) => outputs.add(`parts.${id}.loss`, 'power', 'W', `heat of ${title(id)}`));
    const ofKind = (kind: string, add: (id: string) => number) =>
      parts.map(({ id }) => (board.parts[id].kind === kind ? add(id) : -1));
    const peaks = ofKind('supply', (id) =>
      outputs.add(`parts.${id}.peak-current`, 'current', 'A', `peak current of ${title(id)}`),
    );
    const inductorPeaks = ofKind('regulator', (id) =>
      outputs.add(`parts.${id}.inductor-peak`, 'current', 'A', `peak current of the busiest inductor of ${title(id)}`),
    );
    this.#places = parts.map((part, i) => ({
      part,
      current: currents[i],
      voltage: voltages[i],
      loss: losses[i],
      peak: peaks[i],
      inductorPeak: inductorPeaks[i],
      phaseCurrent: outputs.find(`parts.${part.id}.phase-current`),
      phaseRipple: outputs.find(`parts.${part.id}.phase-ripple`),
    }));
  }

  write(state: PathState, y: readonly Float64Array[], from: number, to: number): void {
    const crest = this.#crest;
    for (let i = 0; i < this.#places.length; i++) {
      const places = this.#places[i];
      const { part, peak, inductorPeak, phaseCurrent, phaseRipple } = places;
      part.write(state, y, from, to);
      const through = part.feeder < 0 ? state.delivered[i] : state.drawn[i];
      const current = y[places.current];
      const voltage = y[places.voltage];
      const loss = y[places.loss];
      for (let s = from; s < to; s++) {
        current[s] = through[s];
        voltage[s] = state.voltage[i][s];
        loss[s] = state.loss[i][s];
      }
      if (peak >= 0) for (let s = from; s < to; s++) y[peak][s] = current[s] * crest[s];
      if (inductorPeak >= 0)
        for (let s = from; s < to; s++)
          y[inductorPeak][s] = peakCurrent(y[phaseCurrent][s] * crest[s], y[phaseRipple][s]);
    }
  }
}
