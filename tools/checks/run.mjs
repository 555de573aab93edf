import { spawn } from 'node:child_process';

/** Runs a program of the development packages: its own exit code, and everything it printed. */
export function runTool(name, args) {
  return run(`node_modules/.bin/${name}`, args);
}

export function run(program, args) {
  return new Promise((resolve, reject) => {
    const child = spawn(program, args, { stdio: ['ignore', 'pipe', 'pipe'] });
    let output = '';
    const gather = (text) => {
      output += text;
    };
    child.stdout.setEncoding('utf8').on('data', gather);
    child.stderr.setEncoding('utf8').on('data', gather);
    child.on('error', reject);
    child.on('close', (code) => resolve({ code: code ?? 1, output }));
  });
}
