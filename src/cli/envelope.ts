import { type Fault, sayFault } from '../fault/fault.ts';

/** What a verb hands back: words for people, the same as data for programs, and whether the study passed (0) or was refused (1). */
export interface Outcome {
  readonly text: string;
  readonly json: unknown;
  readonly exit: 0 | 1;
  readonly notes?: readonly string[];
}

/** Who answers, to which verb, about which study (null: the verb needs none). */
export interface Heading {
  readonly uprate: string;
  readonly verb: string;
  readonly study: string | null;
}

/** One JSON document with a verb's result. */
export function writeEnvelope(heading: Heading, outcome: Outcome): string {
  return writeDocument({ ...heading, result: outcome.json, notes: outcome.notes ?? [] });
}

/** One JSON document with the reasons why there is no result. */
export function writeRefusalEnvelope(heading: Heading, faults: readonly Fault[]): string {
  const spoken = faults.map((fault) => {
    const { found, expected = null, remedy = null } = sayFault(fault);
    const { code, severity, data, place = null } = fault;
    return { code, severity, data, place, found, expected, remedy };
  });
  return writeDocument({ ...heading, result: null, notes: [], faults: spoken });
}

/** Typed arrays become lists, and a number that isn't one is refused: JSON would quietly make it null. */
function writeDocument(document: object): string {
  const text = JSON.stringify(
    document,
    (key, value) => {
      if (typeof value === 'number' && !Number.isFinite(value))
        throw new Error(`"${key}" is ${value}, not a finite number`);
      return ArrayBuffer.isView(value) && Symbol.iterator in value ? [...(value as Float64Array)] : value;
    },
    2,
  );
  return `${text}\n`;
}
