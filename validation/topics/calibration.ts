import { fitCalibration, predictCalibration } from '../../src/physics/sensing/calibration-fit.ts';
import { calibratedUncertainty, calibratedValue } from '../../src/physics/sensing/calibration-two-point.ts';
import { loadCell, thermometer } from '../tables/calibrations.ts';
import type { Figure, Topic } from '../topic.ts';

const gum = 'JCGM 100:2008 (GUM), H.3';
const strd = 'NIST StRD, linear least squares, Pontius, certified values';

export const topic: Topic = {
  title: 'Calibration',
  field: 'sensing',
  figures: [...thermometerFigures(), ...loadCellFigures(), ...twoPointFigures()],
};

function thermometerFigures(): Figure[] {
  const curve = fitCalibration(thermometer.readings, thermometer.corrections, 1, 20)!;
  const [[vv, vw], [, ww]] = curve.covariance;
  const at30 = predictCalibration(curve, 30);
  const published = [
    ['intercept at 20 °C [°C]', curve.coefficients[0], -0.1712, 5e-5],
    ['standard uncertainty of the intercept [°C]', Math.sqrt(vv), 0.0029, 5e-5],
    ['slope [1]', curve.coefficients[1], 0.00218, 5e-6],
    ['standard uncertainty of the slope [1]', Math.sqrt(ww), 0.00067, 5e-6],
    ['correlation [1]', vw / Math.sqrt(vv * ww), -0.93, 5e-4],
    ['scatter [°C]', curve.scatter, 0.0035, 5e-5],
    ['correction at 30 °C [°C]', at30.value, -0.1494, 5e-5],
    ['standard uncertainty at 30 °C [°C]', at30.u, 0.0041, 5e-5],
    ['degrees of freedom [1]', curve.freedom, 9, 1e-9],
  ] as const;
  const recomputed = [
    ['intercept at 20 °C to eight digits [°C]', curve.coefficients[0], -0.17120379, 1e-8],
    ['standard uncertainty of the intercept to five digits [°C]', Math.sqrt(vv), 0.0028776, 1e-7],
    ['slope to nine digits [1]', curve.coefficients[1], 0.00218269774, 1e-11],
    ['standard uncertainty of the slope to six digits [1]', Math.sqrt(ww), 0.000667939, 1e-9],
    ['correlation to six digits [1]', vw / Math.sqrt(vv * ww), -0.93043, 1e-6],
    ['correction at 30 °C to nine digits [°C]', at30.value, -0.149376813, 1e-9],
    ['standard uncertainty at 30 °C to six digits [°C]', at30.u, 0.0041386, 1e-7],
  ] as const;
  return [
    ...published.map(
      ([name, computed, figure, tolerance]): Figure => ({
        what: `thermometer, ${name}`,
        computed,
        published: figure,
        tolerance,
        why: 'printed digits',
        source: name.startsWith('scatter') ? `${gum}, from memory` : gum,
        tier: 'A',
        ...(/^(standard|scatter)/.test(name) && { coarse: 'two digits' }),
      }),
    ),
    ...recomputed.map(
      ([name, computed, figure, tolerance]): Figure => ({
        what: `thermometer, ${name}`,
        computed,
        published: figure,
        tolerance,
        why: 'digits of the other program',
        source: `data of ${gum}, fitted by an independent program`,
        tier: 'C',
      }),
    ),
  ];
}

function loadCellFigures(): Figure[] {
  const curve = fitCalibration(loadCell.loads, loadCell.deflections, 2, 0)!;
  const { coefficients, covariance, scatter } = curve;
  const certified = [
    ['constant', coefficients[0], 0.673565789473684e-3],
    ['linear coefficient', coefficients[1], 0.732059160401003e-6],
    ['quadratic coefficient', coefficients[2], -0.316081871345029e-14],
    ['standard deviation of the constant', Math.sqrt(covariance[0][0]), 0.107938612033077e-3],
    ['standard deviation of the linear coefficient', Math.sqrt(covariance[1][1]), 0.157817399981659e-9],
    ['standard deviation of the quadratic coefficient', Math.sqrt(covariance[2][2]), 0.486652849992036e-16],
    ['residual standard deviation', scatter, 0.205177424076185e-3],
  ] as const;
  const unit = [
    ['constant with linear', covariance[0][1], -3.59649122807024e-7],
    ['constant with quadratic', covariance[0][2], 9.74658869395731e-14],
    ['linear with quadratic', covariance[1][2], -1.77210703526497e-19],
  ] as const;
  const relative = (what: string, computed: number, published: number, source: string, tier: 'A' | 'C'): Figure => ({
    what: `load cell, ${what}`,
    computed,
    published,
    tolerance: 1e-9 * Math.abs(published),
    why: 'rounding of double precision in the fit',
    source,
    tier,
  });
  return [
    ...certified.map(([name, computed, published]) => relative(name, computed, published, strd, 'A')),
    ...unit.map(([name, computed, published]) =>
      relative(
        `covariance of ${name} per unit variance`,
        computed / scatter ** 2,
        published,
        'GNU Scientific Library, test of weighted least squares on the NIST data set Pontius',
        'C',
      ),
    ),
  ];
}

function twoPointFigures(): Figure[] {
  const points = { reading1: 0.806, true1: 25, reading2: 1.271, true2: 85 };
  const uncertainty = { true1: 0.2, true2: 0.2, reading: 0.5e-3 };
  const valueAt = (reading: number) =>
    calibratedValue(points.reading1, points.true1, points.reading2, points.true2, reading);
  const cases = [
    ['1.100 V between 0.806 V at 25 °C and 1.271 V at 85 °C [°C]', valueAt(1.1), 62.9355, 5e-5],
    [
      'its standard uncertainty with 0.2 K and 0.5 mV [K]',
      calibratedUncertainty(points, uncertainty, 1.1),
      0.1667,
      5e-5,
    ],
    ['1.450 V beyond them [°C]', valueAt(1.45), 108.0968, 5e-5],
    ['its standard uncertainty [K]', calibratedUncertainty(points, uncertainty, 1.45), 0.3089, 5e-5],
    ['the first point [°C]', valueAt(0.806), 25, 1e-9],
    ['the second point [°C]', valueAt(1.271), 85, 1e-9],
  ] as const;
  return cases.map(([what, computed, published, tolerance]) => ({
    what,
    computed,
    published,
    tolerance,
    why: 'printed digits',
    source: 'closed form, by an independent program',
    tier: 'C',
  }));
}
