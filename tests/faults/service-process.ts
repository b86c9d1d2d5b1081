import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const readyWithinMs = 90_000;

export interface Ended {
  readonly code: number | null;
  readonly signal: NodeJS.Signals | null;
  readonly printed: string;
  readonly complained: string;
}

/** The service as a shop runs it: a process of its own, set up by its environment alone. */
export class ServiceProcess {
  readonly child: ChildProcess;
  #printed = '';
  #complained = '';
  readonly ended: Promise<Ended>;

  constructor(environment: Readonly<Record<string, string>>, args: readonly string[] = []) {
    this.child = spawn(process.execPath, ['--import', 'tsx', 'apps/api/src/main.ts', ...args], {
      cwd: root,
      env: { PATH: process.env['PATH'], HOST: '127.0.0.1', PORT: '0', SOLVER_SECONDS: '1', ...environment },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    this.child.stdout?.setEncoding('utf8').on('data', (text: string) => {
      this.#printed += text;
    });
    this.child.stderr?.setEncoding('utf8').on('data', (text: string) => {
      this.#complained += text;
    });
    this.ended = once(this.child, 'close').then(([code, signal]) => ({
      code,
      signal,
      printed: this.#printed,
      complained: this.#complained,
    }));
  }

  /** Its address, once it answers. */
  async ready(): Promise<string> {
    const deadline = performance.now() + readyWithinMs;
    for (;;) {
      const [, address] = /Flitchbook is at (http:\/\/\S+)/.exec(this.#printed) ?? [];
      if (address !== undefined) return address;
      const gone = this.child.exitCode !== null || this.child.signalCode !== null;
      if (gone || performance.now() > deadline)
        throw new Error(`the service is not ready:\n${this.#printed}${this.#complained}`);
      await new Promise((resolve) => setTimeout(resolve, 20));
    }
  }

  async end(signal: NodeJS.Signals): Promise<Ended> {
    if (this.child.exitCode === null && this.child.signalCode === null) this.child.kill(signal);
    return this.ended;
  }
}
