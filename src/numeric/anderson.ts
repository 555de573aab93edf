/**
 * Anderson acceleration of a fixed-point iteration z ← g(z), with a short memory.
 * Source: D. G. Anderson, "Iterative procedures for nonlinear integral equations", J. ACM 12 (1965) 547–560;
 * unconstrained least-squares form after H. F. Walker and P. Ni, SIAM J. Numer. Anal. 49 (2011) 1715–1735.
 */
export class Anderson {
  readonly #memory: number;
  readonly #deltaResidual: Float64Array[];
  readonly #deltaImage: Float64Array[];
  readonly #lastResidual: Float64Array;
  readonly #lastImage: Float64Array;
  readonly #residual: Float64Array;
  readonly #gram: Float64Array;
  readonly #right: Float64Array;
  readonly #lower: Float64Array;
  #kept = 0;
  #next = 0;
  #started = false;

  constructor(size: number, memory: number) {
    this.#memory = memory;
    this.#deltaResidual = Array.from({ length: memory }, () => new Float64Array(size));
    this.#deltaImage = Array.from({ length: memory }, () => new Float64Array(size));
    this.#lastResidual = new Float64Array(size);
    this.#lastImage = new Float64Array(size);
    this.#residual = new Float64Array(size);
    this.#gram = new Float64Array(memory * memory);
    this.#right = new Float64Array(memory);
    this.#lower = new Float64Array(memory * memory);
  }

  restart(): void {
    this.#kept = 0;
    this.#next = 0;
    this.#started = false;
  }

  /** Overwrites `z` with the next iterate, from `z` and its image g(z). Components should be scaled alike. */
  step(z: Float64Array, image: Float64Array): void {
    const size = z.length;
    const residual = this.#residual;
    for (let i = 0; i < size; i++) residual[i] = image[i] - z[i];
    if (this.#started) {
      const dr = this.#deltaResidual[this.#next];
      const di = this.#deltaImage[this.#next];
      for (let i = 0; i < size; i++) {
        dr[i] = residual[i] - this.#lastResidual[i];
        di[i] = image[i] - this.#lastImage[i];
      }
      const memory = this.#memory;
      const kept = Math.min(this.#kept + 1, memory);
      for (let k = 0; k < kept; k++) {
        const other = this.#deltaResidual[k];
        let sum = 0;
        for (let i = 0; i < size; i++) sum += dr[i] * other[i];
        this.#gram[this.#next * memory + k] = sum;
        this.#gram[k * memory + this.#next] = sum;
      }
      this.#kept = kept;
      this.#next = (this.#next + 1) % memory;
    }
    this.#lastResidual.set(residual);
    this.#lastImage.set(image);
    this.#started = true;
    z.set(image);
    const weights = this.#weights(residual);
    for (let k = 0; k < this.#kept; k++) {
      const weight = weights[k];
      const di = this.#deltaImage[k];
      for (let i = 0; i < size; i++) z[i] -= weight * di[i];
    }
  }

  /** Least-squares weights by normal equations; a direction that adds nothing new gets none. */
  #weights(residual: Float64Array): Float64Array {
    const { length } = this.#right;
    const kept = this.#kept;
    const right = this.#right;
    const lower = this.#lower;
    for (let k = 0; k < kept; k++) {
      const dr = this.#deltaResidual[k];
      let sum = 0;
      for (let i = 0; i < residual.length; i++) sum += dr[i] * residual[i];
      right[k] = sum;
    }
    for (let j = 0; j < kept; j++) {
      for (let k = 0; k <= j; k++) {
        let sum = this.#gram[j * length + k];
        for (let m = 0; m < k; m++) sum -= lower[j * length + m] * lower[k * length + m];
        if (k < j) lower[j * length + k] = lower[k * length + k] > 0 ? sum / lower[k * length + k] : 0;
        else lower[j * length + j] = sum > 1e-14 * this.#gram[j * length + j] ? Math.sqrt(sum) : 0;
      }
    }
    for (let j = 0; j < kept; j++) {
      let sum = right[j];
      for (let m = 0; m < j; m++) sum -= lower[j * length + m] * right[m];
      right[j] = lower[j * length + j] > 0 ? sum / lower[j * length + j] : 0;
    }
    for (let j = kept - 1; j >= 0; j--) {
      let sum = right[j];
      for (let m = j + 1; m < kept; m++) sum -= lower[m * length + j] * right[m];
      right[j] = lower[j * length + j] > 0 ? sum / lower[j * length + j] : 0;
    }
    return right;
  }
}
