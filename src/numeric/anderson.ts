/**
 * Anderson acceleration of a fixed-point iteration z ← g(z), with a short memory.
 * Source: D. G. Anderson, "Iterative procedures for nonlinear integral equations", J. ACM 12 (1965) 547–560;
 * unconstrained least-squares form after H. F. Walker and P. Ni, SIAM J. Numer. Anal. 49 (2011) 1715–1735.
 */
export class Anderson {
  readonly #size: number;
  readonly #memory: number;
  /** Differences of successive residuals and images, one row a remembered step. */
  readonly #residualSteps: Float64Array;
  readonly #imageSteps: Float64Array;
  readonly #lastResidual: Float64Array;
  readonly #lastImage: Float64Array;
  readonly #gram: Float64Array;
  readonly #lower: Float64Array;
  readonly #weights: Float64Array;
  #kept = 0;
  #next = 0;
  #started = false;

  constructor(size: number, memory: number) {
    this.#size = size;
    this.#memory = memory;
    this.#residualSteps = new Float64Array(size * memory);
    this.#imageSteps = new Float64Array(size * memory);
    this.#lastResidual = new Float64Array(size);
    this.#lastImage = new Float64Array(size);
    this.#gram = new Float64Array(memory * memory);
    this.#lower = new Float64Array(memory * memory);
    this.#weights = new Float64Array(memory);
  }

  restart(): void {
    this.#kept = 0;
    this.#next = 0;
    this.#started = false;
  }

  /** Overwrites `z` with the next iterate, from `z` and its image g(z). Components should be scaled alike. */
  step(z: Float64Array, image: Float64Array): void {
    const size = this.#size;
    const lastResidual = this.#lastResidual;
    const lastImage = this.#lastImage;
    if (this.#started) this.#remember(z, image);
    for (let i = 0; i < size; i++) {
      lastResidual[i] = image[i] - z[i];
      lastImage[i] = image[i];
      z[i] = image[i];
    }
    this.#started = true;
    const kept = this.#kept;
    if (kept === 0) return;
    this.#solveWeights();
    const weights = this.#weights;
    const imageSteps = this.#imageSteps;
    for (let k = 0; k < kept; k++) {
      const weight = weights[k];
      const row = k * size;
      for (let i = 0; i < size; i++) z[i] -= weight * imageSteps[row + i];
    }
  }

  #remember(z: Float64Array, image: Float64Array): void {
    const size = this.#size;
    const memory = this.#memory;
    const residualSteps = this.#residualSteps;
    const next = this.#next;
    const row = next * size;
    for (let i = 0; i < size; i++) {
      residualSteps[row + i] = image[i] - z[i] - this.#lastResidual[i];
      this.#imageSteps[row + i] = image[i] - this.#lastImage[i];
    }
    if (this.#kept < memory) this.#kept++;
    const kept = this.#kept;
    const gram = this.#gram;
    for (let k = 0; k < kept; k++) {
      const other = k * size;
      let sum = 0;
      for (let i = 0; i < size; i++) sum += residualSteps[row + i] * residualSteps[other + i];
      gram[next * memory + k] = sum;
      gram[k * memory + next] = sum;
    }
    this.#next = (next + 1) % memory;
  }

  /** Least-squares weights by normal equations and their Cholesky factor; a direction that adds nothing new gets none. */
  #solveWeights(): void {
    const size = this.#size;
    const memory = this.#memory;
    const kept = this.#kept;
    const gram = this.#gram;
    const lower = this.#lower;
    const weights = this.#weights;
    const residual = this.#lastResidual;
    const residualSteps = this.#residualSteps;
    for (let j = 0; j < kept; j++) {
      let right = 0;
      for (let i = 0, at = j * size; i < size; i++, at++) right += residualSteps[at] * residual[i];
      for (let k = 0; k < j; k++) {
        let sum = gram[j * memory + k];
        for (let m = 0; m < k; m++) sum -= lower[j * memory + m] * lower[k * memory + m];
        const entry = lower[k * memory + k] > 0 ? sum / lower[k * memory + k] : 0;
        lower[j * memory + k] = entry;
        right -= entry * weights[k];
      }
      let rest = gram[j * memory + j];
      for (let m = 0; m < j; m++) rest -= lower[j * memory + m] * lower[j * memory + m];
      const pivot = rest > 1e-14 * gram[j * memory + j] ? Math.sqrt(rest) : 0;
      lower[j * memory + j] = pivot;
      weights[j] = pivot > 0 ? right / pivot : 0;
    }
    for (let j = kept - 1; j >= 0; j--) {
      let sum = weights[j];
      for (let m = j + 1; m < kept; m++) sum -= lower[m * memory + j] * weights[m];
      weights[j] = lower[j * memory + j] > 0 ? sum / lower[j * memory + j] : 0;
    }
  }
}
