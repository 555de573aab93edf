/**
 * Values that distributors commonly keep, as a stock list; common practice, no source. A real list, with the data sheets of the parts at hand, goes
 * into `stock.yaml` beside the study.
 */
export const defaultStock = `stock: 1
about: values that distributors commonly keep; common practice, no source
joint: 0.02..0.2 mohm                      # both joints of one part, soldered by hand
kelvin: 0..0.02 mohm                       # pad metal between a new part and the taps of the sense lines
resistors:                                 # low values, for where the current flows
  - values: [0.2 mohm, 0.25 mohm, 0.3 mohm, 0.5 mohm, 0.75 mohm]
    tolerance: 1 %
    temperature-coefficient: 100 ppm/K
    rated-power: 3 W
    derating: { from: 70 degC, end: 170 degC }
    size: '2512'
  - values: [1 mohm, 1.5 mohm, 2 mohm, 2.5 mohm, 3 mohm, 4 mohm, 5 mohm, 6 mohm, 7 mohm, 8 mohm, 9 mohm]
    tolerance: 1 %
    temperature-coefficient: 75 ppm/K
    rated-power: 2 W
    derating: { from: 70 degC, end: 170 degC }
    size: '2512'
  - values: [10 mohm, 12 mohm, 15 mohm, 18 mohm, 20 mohm, 22 mohm, 25 mohm, 27 mohm, 30 mohm, 33 mohm, 35 mohm, 39 mohm, 40 mohm, 47 mohm]
    tolerance: 1 %
    temperature-coefficient: 75 ppm/K
    rated-power: 1 W
    derating: { from: 70 degC, end: 155 degC }
    size: '2512'
  - values: [50 mohm, 56 mohm, 60 mohm, 68 mohm, 75 mohm, 80 mohm, 82 mohm, 91 mohm, 100 mohm, 120 mohm, 150 mohm, 180 mohm, 200 mohm]
    tolerance: 1 %
    temperature-coefficient: 100 ppm/K
    rated-power: 0.5 W
    derating: { from: 70 degC, end: 155 degC }
    size: '1206'
  - values: [220 mohm, 250 mohm, 270 mohm, 300 mohm, 330 mohm, 390 mohm, 430 mohm, 470 mohm, 500 mohm, 510 mohm, 560 mohm, 620 mohm, 680 mohm, 750 mohm, 820 mohm, 910 mohm, 1 ohm]
    tolerance: 1 %
    temperature-coefficient: 200 ppm/K
    rated-power: 0.25 W
    derating: { from: 70 degC, end: 155 degC }
    size: '1206'
chips:                                     # for the sense lines
  - series: E24
    from: 10 ohm
    to: 100 kohm
    tolerance: 1 %
    temperature-coefficient: 100 ppm/K
    rated-power: 0.1 W
    derating: { from: 70 degC, end: 155 degC }
    size: '0603'
  - series: E96
    from: 10 ohm
    to: 100 kohm
    tolerance: 1 %
    temperature-coefficient: 100 ppm/K
    rated-power: 0.1 W
    derating: { from: 70 degC, end: 155 degC }
    size: '0603'
`;
