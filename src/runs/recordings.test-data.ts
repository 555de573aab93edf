/** The recordings of the example study, as they were logged. */
export const recordings = {
  step: 'examples/accelerator/runs/step/accelerator-step-telemetry.csv.gz',
  stair: 'examples/accelerator/runs/stair/accelerator-stair-telemetry.csv.gz',
};
