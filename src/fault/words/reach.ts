import type { FaultData, Sentences } from '../fault.ts';

type Words = Record<string, (data: FaultData) => Sentences>;

const list = (names: FaultData[string]) => (Array.isArray(names) ? names.join(', ') : String(names));
const endings: Record<string, string> = {
  runaway: 'its heat runs away',
  infeasible: 'a supply or a regulator can’t carry the loads',
  unsettled: 'its equations don’t settle',
};

export const reachWords = {
  'reach/no-such-limiter': (d) => ({
    found: `no power can be set at "${d.limiter}": it is no limiter of this step that reads power and regulates it`,
    expected: `one of: ${list(d.known) || 'none on this board'}`,
    remedy: 'name one of these with --limiter; a temperature and a trip stand among the limits',
  }),
  'reach/no-power-limiter': (d) => ({
    found: `step "${d.step}" has no limiter that reads power and regulates it`,
    expected: 'a limiter with "reads" that acts as "regulate"',
    remedy: 'add one to the study: it names the sense points whose real power is meant',
  }),
  'reach/other-places': (d) => ({
    found: `the heat path of step "${d.cooling}" lacks places that step "${d.step}" has: ${list(d.missing)}`,
    expected: 'the same places in both',
    remedy: 'give that step these nodes, or look at it with --step',
  }),
  'reach/no-operating-point': (d) => ({
    found: `on the heat path of step "${d.cooling}" there is no operating point at any power: ${endings[String(d.ending)] ?? d.ending}`,
    expected: 'a power at which the board settles',
    remedy: 'check the constant loads and what carries their heat away',
  }),
  'reach/no-auto': () => ({
    found: '--reach draws a stated number of boards',
    expected: 'a number, or nothing',
    remedy: 'leave out --samples, or give a number',
  }),
  'reach/needs-reach': (d) => ({
    found: `${d.option} says how far the power may go, and that isn't asked for`,
    remedy: 'give --reach with it',
  }),
} satisfies Words;
