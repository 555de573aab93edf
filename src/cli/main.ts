#!/usr/bin/env node
import { runCommand } from './command.ts';

// The reader of a pipe may leave early (`uprate runs | head`): that is not an error.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit(0);
});

process.exitCode = await runCommand(process.argv.slice(2), {
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
  debug: process.env.UPRATE_DEBUG === '1',
});
