import { useSignal } from '@preact/signals';
import { dialLimiter, dialPower, ownPlan, plans } from './plans.ts';
import { bareFigure, leadingLimiter } from './words.ts';

/** What one press of an arrow key and of a page key moves [W]. */
const STEP = 1;
const PAGE = 5;

/** The power target: sets the real power at the holding limiter of the chosen step, and everything below follows. */
export function PowerDial() {
  const draft = useSignal<string | null>(null);
  const limiter = dialLimiter.value;
  const own = ownPlan.value;
  if (!limiter || !own) {
    return (
      <section class="dial" aria-label="Power dial">
        <p class="dial-about">No limiter of this step counts power: there is nothing to dial.</p>
      </section>
    );
  }
  const power = dialPower.value ?? limiter.real.value;
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
          value={draft.value ?? String(Math.round(power * 10) / 10)}
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
        disabled={dialPower.value === null}
        onClick={() => {
          dialPower.value = null;
        }}
      >
        Back to {bareFigure(limiter.real)}
      </button>
      <p class="dial-about">
        {dialPower.value === null
          ? `What the firmware would let through at “${limiter.title}”, step “${own.title}”. Turn to ask “what if”.`
          : `What if “${limiter.title}” let this through at step “${own.title}”? A calculation: nothing is set on the machine.`}
      </p>
    </section>
  );
}

/** From a quarter of the lowest step to well above the highest one, in full tens [W]; always holds where the dial stands. */
function dialRange(power: number): readonly [number, number] {
  const powers = plans.value.flatMap((plan) => {
    const real = leadingLimiter(plan)?.real;
    return real?.unit === 'W' && Number.isFinite(real.value) ? [real.value] : [];
  });
  const lowest = Math.max(1, Math.floor((0.25 * Math.min(power, ...powers)) / 5) * 5);
  const highest = Math.ceil((1.5 * Math.max(...powers, power / 1.5)) / 10) * 10;
  return [lowest, highest];
}
