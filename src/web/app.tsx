import { useSignal, useSignalEffect } from '@preact/signals';
import { CalculatorsDrawer } from './calculators/drawer.tsx';
import { Cautions } from './cautions.tsx';
import { PowerDial } from './dial.tsx';
import { FaultList } from './faults.tsx';
import { Ladder } from './ladder.tsx';
import { dialSampling, progress, reading, shownPlan } from './plans.ts';
import { StepDetail } from './step-detail.tsx';
import { connected, studySource } from './study-source.ts';
import { ThemeChoice } from './theme.tsx';
import { Verdict } from './verdict.tsx';
import { spokenSummary } from './words.ts';

/** The one screen: the study's ladder, and the chosen step. */
export function App() {
  const read = reading.value;
  return (
    <>
      <header class="head">
        <div>
          <p class="place-name">Uprate · Ladder</p>
          <h1>{read?.ok ? read.study.title : 'Study'}</h1>
          <FileName />
        </div>
        <div class="head-tools">
          <CalculatorsDrawer />
          <ThemeChoice />
        </div>
      </header>
      {!connected.value && (
        <p class="notice" role="status">
          The server does not answer. What is shown may be old; start <code>uprate open</code> again.
        </p>
      )}
      {read?.ok && <PowerDial />}
      <main>
        <Content />
      </main>
      <Spoken />
      <footer class="foot">
        <p>± is one standard uncertainty; intervals hold 95 %.</p>
      </footer>
    </>
  );
}

function FileName() {
  const source = studySource.value;
  return source.state === 'here' ? <p class="file">{source.file}</p> : null;
}

function Content() {
  const source = studySource.value;
  if (source.state === 'loading') return <p>Reading the study …</p>;
  if (source.state === 'failed') {
    return (
      <section class="refused">
        <h2>No study to show</h2>
        <p>{source.found}</p>
        {source.remedy && <p>{source.remedy}</p>}
      </section>
    );
  }
  const read = reading.value!;
  if (!read.ok) {
    return (
      <section class="refused" aria-live="polite">
        <h2>{read.faults.length === 1 ? 'One thing' : `${read.faults.length} things`} in the study can’t be read</h2>
        <p class="about">Correct the file and save it; this page follows by itself.</p>
        <FaultList faults={read.faults} />
      </section>
    );
  }
  return (
    <>
      <Verdict />
      <Cautions />
      <Ladder />
      <StepDetail />
    </>
  );
}

/** Says the outcome once the dial rests and the samples are in: not with every watt on the way. */
function Spoken() {
  const words = useSignal('');
  useSignalEffect(() => {
    const plan = shownPlan.value;
    if (plan && !dialSampling.value && !progress.value && (plan.sampling || !plan.operating))
      words.value = spokenSummary(plan);
  });
  return (
    <p class="visually-hidden" aria-live="polite">
      {words.value}
    </p>
  );
}
