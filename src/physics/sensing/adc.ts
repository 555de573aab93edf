/**
 * Voltage of one step of a converter [V].
 *
 * q = U_ref/2^N
 *
 * U_ref   reference, or full scale [V]
 * N       bits, whole and at least 1
 * Source: Analog Devices, MT-001.
 */
export function adcStep(reference: number, bits: number): number {
  return reference / 2 ** bits;
}

/**
 * Voltage at the input of an amplifier and converter [V].
 *
 * U = (n·q − U_off)/G
 *
 * n       code, or the mean of several
 * q       one step [V]
 * U_off   output of the amplifier at 0 V in [V]
 * G       gain between input and converter [1], not zero
 * Valid between the end codes; a code at either end says only "beyond".
 * Source: definition of gain and offset error, IEEE 1241.
 */
export function adcVoltage(code: number, step: number, gain: number, offset: number): number {
  return (code * step - offset) / gain;
}

/**
 * Standard uncertainty of one reading from its resolution [same unit as the step].
 *
 * u = q/√12
 *
 * q   step between neighbouring values
 * Valid where the signal is as likely anywhere within a step.
 * Source: JCGM 100:2008 (GUM), F.2.2.1; Analog Devices, MT-001.
 */
export function quantisationUncertainty(step: number): number {
  return step / Math.sqrt(12);
}

/**
 * Standard uncertainty of the mean of several readings from resolution and noise [same unit as the step].
 *
 * with enough noise (σ ≥ q/2) u = √((q²/12 + σ²)/M); with less, resolution doesn't average: u = √(q²/12 + σ²/M)
 *
 * q   step [V]
 * σ   noise, standard deviation of one reading before rounding [V]
 * M   readings, at least 1, apart enough to be independent
 * Valid for noise without memory. The limit of half a step is common practice, no source.
 * Source: R. M. Gray and T. G. Stockham, Dithered quantizers, IEEE Trans. Inf. Theory 39 (1993) 805–812, for what dither does.
 */
export function averagedUncertainty(step: number, noise: number, readings: number): number {
  const resolution = step ** 2 / 12;
  return noise >= step / 2
    ? Math.sqrt((resolution + noise ** 2) / readings)
    : Math.sqrt(resolution + noise ** 2 / readings);
}

/**
 * Signal-to-noise ratio of an ideal converter for a full-scale sine [dB].
 *
 * SNR = 20·log10(2^N·√1.5), about 6.02·N + 1.76
 *
 * N   bits
 * Valid over the band to half the sampling rate.
 * Source: Analog Devices, MT-001.
 */
export function idealSignalToNoise(bits: number): number {
  return 20 * Math.log10(2 ** bits * Math.sqrt(1.5));
}
