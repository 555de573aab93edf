import { type Fault, Refusal, refuse, writeFault } from '../fault/fault.ts';
import { type Heading, type Outcome, writeEnvelope, writeRefusalEnvelope } from './envelope.ts';

/** Where a command's words go: results to `out`, everything about the way there to `err`. */
export interface Streams {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  /** Where a line that says how far something is may be written over and over; none where nobody watches. */
  readonly progress?: (text: string) => void;
  /** Whether the stack of an unexpected exception is wanted. */
  readonly debug: boolean;
}

/**
 * Runs a verb's work and puts its outcome, or the reasons for none, on the streams: the exit code.
 * A refusal leaves with 1, or with 2 where the command line was to blame rather than the data.
 */
export async function answer(
  heading: Heading,
  asJson: boolean,
  streams: Streams,
  work: () => Promise<Outcome>,
): Promise<number> {
  try {
    const outcome = await work();
    if (asJson) streams.out(writeEnvelope(heading, outcome));
    else {
      streams.out(printable(endLine(outcome.text)));
      for (const note of outcome.notes ?? []) streams.err(printable(`note: ${note}\n`));
    }
    return outcome.exit;
  } catch (error) {
    if (asJson) {
      tellStack(error, streams);
      streams.out(writeRefusalEnvelope(heading, faultsOf(error)));
    } else tellError(error, streams);
    return isMisuse(error) ? 2 : 1;
  }
}

/** Whether the command line is to blame: it names what isn't there, or says something that can't be. */
export function isMisuse(error: unknown): boolean {
  return error instanceof Refusal && error.faults.some(({ code }) => misuses.has(code));
}

const misuses: ReadonlySet<Fault['code']> = new Set([
  'command/no-file',
  'command/no-such-step',
  'command/no-such-limit',
  'gate/first-step',
  'command/needs-budget',
  'command/no-plate',
  'command/no-such-node',
  'command/global-by-input',
  'study/no-study-file',
  'reach/no-such-limiter',
  'reach/no-auto',
  'reach/needs-reach',
  'procedure/nothing-to-do',
  'procedure/no-such-item',
  'procedure/bad-power',
  'procedure/no-such-form',
  'undo/not-before',
  'undo/nothing-to-undo',
  'compare/samples-missing',
  'compare/two-ways',
  'compare/two-runs',
  'compare/no-such-channel',
  'record/no-such-source',
  'record/bad-hold',
  'record/bad-load',
  'calc/unknown-formula',
  'calc/bad-assignment',
  'calc/given-twice',
  'calc/unknown-input',
  'calc/missing-inputs',
  'calc/output-given',
  'calc/unknown-unknown',
  'calc/unknown-given',
  'calc/one-target',
  'run/no-such-run',
  'run/no-file',
  'run/no-plain-file',
  'run/one-id',
  'run/bad-id',
  'run/bad-delimiter',
  'run/bad-unit',
  'run/bad-unit-assignment',
  'run/no-such-column',
]);

/** Says why a command ended early, in words; the stack only for who asked for it. */
export function tellError(error: unknown, streams: Streams): void {
  tellStack(error, streams);
  streams.err(printable(`${faultsOf(error).map(writeFault).join('\n\n')}\n`));
}

function tellStack(error: unknown, streams: Streams): void {
  if (streams.debug && error instanceof Error) streams.err(`${error.stack}\n`);
}

function faultsOf(error: unknown): readonly Fault[] {
  return error instanceof Refusal ? error.faults : [namedFault(error)];
}

/** Text without the control characters by which a title or a heading could steer a terminal. */
function printable(text: string): string {
  return text.replace(/[^\P{Cc}\n\t]/gu, '\ufffd');
}

function endLine(text: string): string {
  return text === '' || text.endsWith('\n') ? text : `${text}\n`;
}

/** An exception that isn't a refusal, as a fault: those of the operating system that a person can mend, by name. */
function namedFault(error: unknown): Fault {
  const { code, path = '', port = '', message = String(error) } = error as NodeJS.ErrnoException & { port?: number };
  switch (code) {
    case 'ENOENT':
      return refuse('command/no-file', { path });
    case 'EACCES':
    case 'EPERM':
    case 'EROFS':
      return refuse('command/not-permitted', { path });
    case 'ENOSPC':
      return refuse('command/no-space');
    case 'EADDRINUSE':
      return refuse('command/port-taken', { port });
    default:
      return refuse('command/unexpected', { message });
  }
}
