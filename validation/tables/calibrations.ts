/** Thermometer readings [°C] and corrections [°C]. Source: JCGM 100:2008 (GUM), table H.6. */
export const thermometer = {
  readings: [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511],
  corrections: [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16],
};

const loads = Array.from({ length: 20 }, (_, i) => 150_000 * (i + 1));

/** Calibration of a load cell: load and deflection, twice. Source: NIST StRD, linear least squares, Pontius. */
export const loadCell = {
  loads: [...loads, ...loads],
  deflections: [
    0.11019, 0.21956, 0.32949, 0.43899, 0.54803, 0.65694, 0.76562, 0.87487, 0.98292, 1.09146, 1.20001, 1.30822, 1.41599,
    1.52399, 1.63194, 1.73947, 1.84646, 1.95392, 2.06128, 2.16844, 0.11052, 0.22018, 0.32939, 0.43886, 0.54798, 0.65739,
    0.76596, 0.87474, 0.983, 1.0915, 1.20004, 1.30818, 1.41613, 1.52408, 1.63159, 1.73965, 1.84696, 1.95445, 2.06177,
    2.16829,
  ],
};
