import { useSignal } from '@preact/signals';
import { dialPower, dialTarget, plans, shownPlan } from './plans.ts';
import { bareFigure, holderWord, powerLimiter } from './words.ts';

/** What one press of an arrow key and of a page key moves [W]. */
const STEP = 1;
const PAGE = 5;

/** The power target: sets the real power at the holding limiter of the chosen step, and everything below follows. */
export function PowerDial() {
  const draft = useSignal<string | null>(null);
  const target = dialTarget.value;
  if (!target) {
    return (
      <section class="dial" aria-label="Power dial">
        <p class="dial-about">No limiter of this step counts power: there is nothing to dial.</p>
      </section>
    );
  }
  const power = dialPower.value ?? target.start;
  const rests = dialPower.value === null;
  const [lowest, highest] = dialRange(power);
  const turn = (watts: number) => {
    if (Number.isFinite(watts)) dialPower.value = Math.min(Math.max(watts, lowest), highest);
  };
  const commit = () => {
    if (draft.value !== null && draft.value.trim() !== '') turn(Number(draft.value));
    draft.value = null;
  };
  const page = (event: KeyboardEvent) => {
    const by = { PageUp: PAGE, PageDown: -PAGE }[event.key];
    if (by === undefined) return;
    event.preventDefault();
    turn(Math.round(power) + by);
  };
  return (
    <section class="dial" aria-label="Power dial">
      <div class="dial-figure">
        <label class="visually-hidden" for="dial-number">
          Real power in watts
        </label>
        <input
          id="dial-number"
          type="number"
          inputMode="decimal"
          step="any"
          min={lowest}
          max={highest}
          placeholder="–"
          value={draft.value ?? (rests && !target.own ? '' : String(Math.round(power * 10) / 10))}
          onInput={(event) => {
            draft.value = event.currentTarget.value;
          }}
          onChange={commit}
          onBlur={commit}
        />
        <span aria-hidden="true">W</span>
      </div>
      <div class="dial-turn">
        <button type="button" class="step" aria-label="1 watt less" onClick={() => turn(Math.ceil(power) - STEP)}>
          −
        </button>
        <input
          type="range"
          aria-label="Real power"
          aria-valuetext={`${Math.round(power)} watts`}
          min={lowest}
          max={highest}
          step={STEP}
          value={Math.round(power)}
          onInput={(event) => turn(event.currentTarget.valueAsNumber)}
          onKeyDown={page}
        />
        <button type="button" class="step" aria-label="1 watt more" onClick={() => turn(Math.floor(power) + STEP)}>
          +
        </button>
      </div>
      <button
        type="button"
        class="dial-reset"
        disabled={rests}
        onClick={() => {
          dialPower.value = null;
        }}
      >
        {target.own ? `Back to ${bareFigure(target.own)}` : 'Back'}
      </button>
      <p class="dial-about">{dialAbout(target.title, target.own !== null)}</p>
    </section>
  );
}

/** From a quarter of the lowest step to well above the highest one, in full tens [W]; always holds where the dial stands. */
function dialRange(power: number): readonly [number, number] {
  const powers = plans.value.flatMap((plan) => {
    const real = powerLimiter(plan)?.real;
    return real?.unit === 'W' && Number.isFinite(real.value) ? [real.value] : [];
  });
  const lowest = Math.max(1, Math.floor((0.25 * Math.min(power, ...powers)) / 5) * 5);
  const highest = Math.ceil((1.5 * Math.max(...powers, power / 1.5)) / 10) * 10;
  return [lowest, highest];
}

/** What the dial says right now; when something else holds before the dialled power is reached, that first. */
function dialAbout(limiter: string, hasOwn: boolean): string {
  const plan = shownPlan.value;
  if (dialPower.value === null)
    return hasOwn
      ? `What “${limiter}” lets through. Turn it to ask “what if”.`
      : `What “${limiter}” lets through has no operating point. Turn it to ask for less.`;
  const reached = plan && powerLimiter(plan);
  if (plan?.operating && reached && reached.real.value < dialPower.value - 0.1) {
    const holder =
      plan.operating.holder === 'demand' ? 'the load demands no more than' : `“${holderWord(plan)}” holds at`;
    return `Not reached: ${holder} ${bareFigure(reached.real)}. A calculation: nothing is set on the machine.`;
  }
  return `What if “${limiter}” let this through? A calculation: nothing is set on the machine.`;
}
