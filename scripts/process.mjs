// Child processes for the scripts in this folder. No dependency: this runs before anything is installed.
import { spawn } from 'node:child_process';
import { constants } from 'node:os';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('..', import.meta.url));

/**
 * Runs node with `args` in the root folder and resolves to its exit code, 128 + n after signal n.
 * Signals sent to this process are passed on, so that the child decides how to stop.
 */
export function runNode(args, { cwd = root, env = process.env, stdio = 'inherit' } = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, args, { cwd, env, stdio });
    const pass = (signal) => {
      // A terminal already sends Ctrl-C to the whole group; twice would mean "at once".
      if (signal !== 'SIGINT' || !process.stdin.isTTY) child.kill(signal);
    };
    const signals = ['SIGINT', 'SIGTERM', 'SIGHUP'];
    for (const signal of signals) process.on(signal, pass);
    child.once('error', reject);
    child.once('close', (code, signal) => {
      for (const name of signals) process.off(name, pass);
      resolve(code ?? 128 + (constants.signals[signal] ?? 0));
    });
  });
}

/** As runNode, but keeps what was printed: `{ code, output, stdout }`. */
export function captureNode(args, env = process.env) {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, args, { cwd: root, env, stdio: ['ignore', 'pipe', 'pipe'] });
    let output = '';
    let stdout = '';
    child.stdout.setEncoding('utf8').on('data', (text) => {
      stdout += text;
      output += text;
    });
    child.stderr.setEncoding('utf8').on('data', (text) => {
      output += text;
    });
    child.once('error', reject);
    child.once('close', (code) => resolve({ code: code ?? 1, output, stdout }));
  });
}
