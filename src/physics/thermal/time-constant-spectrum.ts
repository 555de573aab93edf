/**
 * Response of one time constant to a step, by the logarithm of time: what a spectrum is smeared with [1].
 *
 * w(z) = exp(z − exp z), z = ln(t/τ)
 *
 * Its greatest value is 1/e at z = 0, its area 1.
 * Source: V. Székely, T. Van Bien, Solid-State Electronics 31 (1988) 1363–1368.
 */
export function spectrumKernel(z: number): number {
  return Math.exp(z - Math.exp(z));
}

/**
 * Spectrum of time constants from the slope of a step response, both on the same equal steps of ln t [K/W for each unit of ln τ].
 *
 * R ← R·(Kᵀ·(d/(K·R)))/(Kᵀ·1), K the kernel
 *
 * d  slope dZth/d ln t, not negative [K/W]
 * R  spectrum, at the start equal to d
 * The result is nowhere negative and keeps the sum. More passes sharpen the peaks, and the noise.
 * Source: W. H. Richardson, J. Optical Society of America 62 (1972) 55–59; L. B. Lucy, Astronomical Journal 79 (1974) 745–754.
 */
export function spectrumOf(slope: readonly number[], step: number, passes: number): number[] {
  const n = slope.length;
  const kernel = Array.from({ length: 2 * n - 1 }, (_, i) => spectrumKernel((i - n + 1) * step) * step);
  const smear = (from: readonly number[], forward: boolean) =>
    from.map((_, i) => {
      let sum = 0;
      for (let j = 0; j < n; j++) sum += from[j] * kernel[(forward ? i - j : j - i) + n - 1];
      return sum;
    });
  const reach = smear(
    slope.map(() => 1),
    false,
  );
  let spectrum = [...slope];
  for (let pass = 0; pass < passes; pass++) {
    const seen = smear(spectrum, true);
    const ratio = slope.map((value, i) => (seen[i] > 0 ? value / seen[i] : 0));
    const correction = smear(ratio, false);
    spectrum = spectrum.map((value, i) => (value * correction[i]) / reach[i]);
  }
  return spectrum;
}
