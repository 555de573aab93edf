#!/usr/bin/env node
import { runCommand } from './command.ts';
import { type Streams, tellError } from './door.ts';

const streams: Streams = {
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
  progress: process.stderr.isTTY ? (text) => process.stderr.write(text) : undefined,
  debug: process.env.UPRATE_DEBUG === '1',
};

// The reader of a pipe may leave early (`uprate runs | head`): that is not an error.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(0);
  leave(error);
});
process.on('uncaughtException', leave);

process.exitCode = await runCommand(process.argv.slice(2), streams);

function leave(error: unknown): void {
  tellError(error, streams);
  process.exit(1);
}
