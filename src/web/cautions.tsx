import { useSignal } from '@preact/signals';

/** What must be done before anyone follows this page to the board: what matters most always, the rest when asked for and in print. */
export function Cautions() {
  const all = useSignal(false);
  return (
    <section class="cautions" aria-label="Cautions">
      <p>
        <strong>Before touching the board:</strong> adapter unplugged, battery disconnected, capacitors discharged.
        Never short a sense resistor, never test unattended; the manufacturer’s ratings win over this page.{' '}
        <button
          type="button"
          class="quiet"
          aria-expanded={all.value}
          onClick={() => {
            all.value = !all.value;
          }}
        >
          {all.value ? 'Fewer cautions' : 'All cautions'}
        </button>
      </p>
      <ul hidden={!all.value}>
        <li>Capacitors hold their charge after the plug is out. Measure before you touch.</li>
        <li>
          Never open or change a mains adapter. That is work for a qualified person under the local electrical code.
        </li>
        <li>Lithium batteries: no heat, no metal tools near them, no charging while the case is open.</li>
        <li>
          Never short a sense resistor outright: the reading falls to zero, and then nothing limits the power any more.
        </li>
        <li>Never leave a test unattended. Keep a smoke alarm and a way to cut the power within reach.</li>
        <li>Parts can pass 100 °C while the case feels warm. Let them cool, and extract solder fumes.</li>
        <li>The warranty ends, approvals may no longer hold, and data can be lost: back it up first.</li>
        <li>
          The manufacturer’s ratings win over every figure on this page; a standard or local code wins over both.
          Unknown is not safe.
        </li>
      </ul>
    </section>
  );
}
