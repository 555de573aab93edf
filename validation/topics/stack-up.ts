import { gapOverPad, rootSumSquare, worstCase } from '../../src/physics/mechanics/stack-up.ts';
import type { Topic } from '../topic.ts';

const tenParts = Array.from({ length: 10 }, () => 0.1);
const boreParts = [0.1, 0.05, 0.03, 0.05];
const threeParts = [0.1, 0.2, 0.05];
const boreSource = 'Tolerance stack-up: a worked example using worst-case and RSS, metricmech.com, 2026';
const threeSource = 'reference case of 10, 20 and 5 mm, tolstackup.com; single tolerances inferred from both results';
const tenSource = 'article on statistical tolerance analysis, ten parts of ±0.1 mm';
const digits = 'half of the last printed digit';

export const topic: Topic = {
  title: 'Tolerance stacks',
  field: 'mechanics',
  figures: [
    {
      what: 'ten parts of ±0.1 mm at most [mm]',
      computed: worstCase(tenParts),
      published: 1,
      tolerance: 0.005,
      why: digits,
      source: tenSource,
      tier: 'B',
    },
    {
      what: 'ten parts of ±0.1 mm as a rule [mm]',
      computed: rootSumSquare(tenParts),
      published: 0.316,
      tolerance: 0.0005,
      why: digits,
      source: tenSource,
      tier: 'B',
    },
    {
      what: 'three parts as a rule [mm]',
      computed: rootSumSquare(threeParts),
      published: 0.2291,
      tolerance: 0.00005,
      why: digits,
      source: threeSource,
      tier: 'B',
    },
    {
      what: 'greatest size of three parts [mm]',
      computed: 35 + worstCase(threeParts),
      published: 35.35,
      tolerance: 0.0005,
      why: digits,
      source: threeSource,
      tier: 'B',
    },
    {
      what: 'four features of 0.25, 0.08, 0.05 and 0.03 mm at most [mm]',
      computed: worstCase([0.25, 0.08, 0.05, 0.03]),
      published: 0.41,
      tolerance: 0.001,
      why: digits,
      source: 'Tolerance stackup, worked example, mfgcalcs.com',
      tier: 'B',
    },
    {
      what: 'four features of 0.05, 0.08, 0.05 and 0.03 mm at most [mm]',
      computed: worstCase([0.05, 0.08, 0.05, 0.03]),
      published: 0.21,
      tolerance: 0.001,
      why: digits,
      source: 'Tolerance stackup, worked example, mfgcalcs.com',
      tier: 'B',
    },
    {
      what: 'bore of 40 mm with 25 mm and 10 mm in it, 2 mm ring left out of the plate [mm]',
      computed: 1e3 * gapOverPad(40e-3 - 2e-3, 25e-3, 10e-3),
      published: 3,
      tolerance: 0.001,
      why: 'exact',
      source: boreSource,
      tier: 'B',
    },
    {
      what: 'four sizes of a bore as a rule [mm]',
      computed: rootSumSquare(boreParts),
      published: 0.1261,
      tolerance: 0.00005,
      why: 'digits given',
      source: `inputs from ${boreSource}; √(0.0100 + 0.0025 + 0.0009 + 0.0025) worked out by hand`,
      tier: 'C',
    },
    {
      what: 'plate at 2.20 mm, component 1.40 mm, pad 1.00 mm [mm]',
      computed: 1e3 * gapOverPad(2.2e-3, 1.4e-3, 1e-3),
      published: -0.2,
      tolerance: 0.0001,
      why: 'exact',
      source: 'worked out by hand; negative is compressed',
      tier: 'C',
    },
  ],
};
