import {
  adcStep,
  adcVoltage,
  averagedUncertainty,
  idealSignalToNoise,
  quantisationUncertainty,
} from '../../src/physics/sensing/adc.ts';
import {
  cutoffFrequency,
  lowPassGain,
  noiseBandwidth,
  settlingError,
  settlingTime,
} from '../../src/physics/sensing/rc-filter.ts';
import type { Figure, Topic } from '../topic.ts';

const pocket = "Texas Instruments, Analog Engineer's Pocket Reference SLYW038D, settling of RC circuits";
const closedForm = { source: 'closed form, by an independent program', tier: 'C' } as const;

export const topic: Topic = {
  title: 'Converters and RC filters',
  field: 'sensing',
  figures: [...converterFigures(), ...averagingFigures(), ...settlingFigures(), ...filterFigures()],
  unchecked: [
    "the pocket reference's row of 16 bits: it prints 11.04 where 16·ln 2 is 11.09, half a per cent off; the rows around it are met",
  ],
};

function converterFigures(): Figure[] {
  const step = adcStep(3.3, 12);
  return [
    {
      what: 'one step of 12 bits over 3.3 V [mV]',
      computed: 1e3 * step,
      published: 0.806,
      tolerance: 0.0005,
      why: 'printed to 0.001 mV',
      source: 'Analog Devices, MT-001, for the rule; figure as widely printed',
      tier: 'B',
    },
    {
      what: 'its standard uncertainty [mV]',
      computed: 1e3 * quantisationUncertainty(step),
      published: 0.233,
      tolerance: 0.0005,
      why: 'printed to 0.001 mV',
      source: 'Analog Devices, MT-001, q/√12',
      tier: 'B',
    },
    {
      what: 'signal-to-noise ratio of 12 ideal bits [dB]',
      computed: idealSignalToNoise(12),
      published: 74,
      tolerance: 0.05,
      why: 'printed to 0.1 dB',
      source: 'Analog Devices, MT-001, 6.02·N + 1.76',
      tier: 'B',
    },
    {
      what: 'the same to six digits [dB]',
      computed: idealSignalToNoise(12),
      published: 74.0081,
      tolerance: 1e-4,
      why: 'six digits',
      ...closedForm,
    },
    {
      what: 'standard uncertainty of a resolution of one [1]',
      computed: quantisationUncertainty(1),
      published: 0.29,
      tolerance: 0.005,
      why: 'printed to 0.01',
      coarse: 'two digits',
      source: 'JCGM 100:2008 (GUM), F.2.2.1: u = 0.29·δx',
      tier: 'A',
    },
    {
      what: 'code 2048 of 12 bits over 4.096 V behind a gain of 10 with 48 mV offset [mV]',
      computed: 1e3 * adcVoltage(2048, adcStep(4.096, 12), 10, 0.048),
      published: 200,
      tolerance: 1e-9,
      why: '(2048 − 48)/10',
      source: 'closed form, worked by hand',
      tier: 'C',
    },
  ];
}

function averagingFigures(): Figure[] {
  return [
    {
      what: 'sixteen readings of 12 bits over 3.3 V with half a step of noise, resolution and noise [mV]',
      computed: averagedUncertainty(0.805664, 0.402832, 16),
      published: 0.116288,
      tolerance: 1e-6,
      why: '√((0.805664²/12 + 0.402832²)/16)',
      ...closedForm,
    },
    {
      what: 'sixteen readings with a tenth of a step of noise: resolution stays [mV]',
      computed: averagedUncertainty(0.805664, 0.0805664, 16),
      published: 0.2334457,
      tolerance: 1e-6,
      why: '√(0.805664²/12 + 0.0805664²/16)',
      ...closedForm,
    },
  ];
}

function settlingFigures(): Figure[] {
  const table = [
    [9, 6.24],
    [10, 6.93],
    [11, 7.62],
    [12, 8.32],
    [14, 9.7],
    [18, 12.48],
    [20, 13.86],
    [24, 16.64],
  ] as const;
  const accuracy = [
    [1, 1.44],
    [5, 7.21],
    [10, 14.43],
    [18, 25.97],
  ] as const;
  return [
    ...table.map(
      ([bits, published]): Figure => ({
        what: `time constants to settle to ${bits} bits [1]`,
        computed: settlingTime(1, 1, 2 ** -bits),
        published,
        tolerance: 0.00501,
        why: 'printed to 0.01',
        source: pocket,
        tier: 'B',
      }),
    ),
    {
      what: 'time constants to settle to 8 bits [1]',
      computed: settlingTime(1, 1, 2 ** -8),
      published: 5.5,
      tolerance: 0.05,
      why: 'printed as 5.5, cut off instead of rounded',
      coarse: 'two digits',
      source: pocket,
      tier: 'B',
    },
    ...accuracy.map(
      ([constants, published]): Figure => ({
        what: `bits settled to after ${constants} time constants [1]`,
        computed: -Math.log2(settlingError(1, 1, constants)),
        published,
        tolerance: 0.00501,
        why: 'printed to 0.01',
        source: pocket,
        tier: 'B',
      }),
    ),
    {
      what: '12 bits to an eighth of a step, 100 kΩ and 10 pF [µs]',
      computed: 1e6 * settlingTime(100e3, 10e-12, 1 / (8 * 2 ** 12)),
      published: 10.4,
      tolerance: 0.05,
      why: 'printed to 0.1 µs',
      source: '3roam, settling time of an RC circuit, worked example',
      tier: 'B',
    },
    {
      what: '12 bits to a quarter of a step, 10 kΩ and 12 pF [ns]',
      computed: 1e9 * settlingTime(10e3, 12e-12, 1 / (4 * 2 ** 12)),
      published: 1164.448,
      tolerance: 0.05,
      why: 'rounded on its way, by 0.004 %',
      source: 'electronics.stackexchange.com, question 180057, worked answer',
      tier: 'B',
    },
    {
      what: 'one per cent of a step left, 1 kΩ and 100 nF [µs]',
      computed: 1e6 * settlingTime(1e3, 100e-9, 0.01),
      published: 460.517,
      tolerance: 1e-3,
      why: 'ln 100 to six digits',
      ...closedForm,
    },
    {
      what: 'left of a step after five time constants [%]',
      computed: 100 * settlingError(1e3, 100e-9, 500e-6),
      published: 0.673795,
      tolerance: 1e-6,
      why: 'exp(−5) to six digits',
      ...closedForm,
    },
  ];
}

function filterFigures(): Figure[] {
  const cutoff = cutoffFrequency(1e3, 100e-9);
  return [
    {
      what: 'cut-off frequency of 1 kΩ and 100 nF [Hz]',
      computed: cutoff,
      published: 1591.549,
      tolerance: 1e-3,
      why: 'seven digits',
      ...closedForm,
    },
    {
      what: 'gain of that filter at 10 kHz [dB]',
      computed: 20 * Math.log10(lowPassGain(10e3, cutoff)),
      published: -16.072,
      tolerance: 1e-3,
      why: 'printed to 0.001 dB',
      ...closedForm,
    },
    {
      what: 'gain of a filter at its cut-off frequency [dB]',
      computed: 20 * Math.log10(lowPassGain(1591.549, 1591.549)),
      published: -3.0103,
      tolerance: 1e-4,
      why: '10·log10(1/2)',
      ...closedForm,
    },
    {
      what: 'noise bandwidth over cut-off frequency, one pole [1]',
      computed: noiseBandwidth(1e3, 100e-9) / cutoff,
      published: 1.57,
      tolerance: 0.005,
      why: 'printed to 0.01',
      source: "Texas Instruments, Analog Engineer's Pocket Reference SLYW038D, brick-wall correction for one pole",
      tier: 'B',
    },
    {
      what: 'noise bandwidth of 1 kΩ and 100 nF [Hz]',
      computed: noiseBandwidth(1e3, 100e-9),
      published: 2500,
      tolerance: 1e-6,
      why: '1/(4·R·C)',
      source: 'closed form, worked by hand',
      tier: 'C',
    },
  ];
}
