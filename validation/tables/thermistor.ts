/** Resistance over that at 25 °C, every five degrees from −20 °C to 125 °C. Source: Amphenol Thermometrics, Sensor Temperature Resistance Curves, Rev. C, 2014, material type 1. */
export const materialType1: readonly number[] = [
  9.681, 7.281, 5.525, 4.229, 3.264, 2.539, 1.99, 1.571, 1.249, 1, 0.8056, 0.653, 0.5325, 0.4367, 0.3601, 0.2985,
  0.2487, 0.2082, 0.1751, 0.148, 0.1256, 0.107, 0.09155, 0.07864, 0.06781, 0.05868, 0.05095, 0.04439, 0.03881, 0.03403,
];

/** Resistance every five degrees from −20 °C to 85 °C [Ω]. Source: Measurement Specialties, HTM25X0LF data sheet HPC169 Rev. 0, 2009, temperature look-up table. */
export const moduleThermistor: readonly number[] = [
  68237, 53650, 42506, 33892, 27219, 22021, 17926, 14674, 12081, 10000, 8315, 6948, 5834, 4917, 4161, 3535, 3014, 2586,
  2228, 1925, 1669, 1452,
];
