import { describe, inject } from 'vitest';
import { findBrowsers } from './browser.ts';
import type { SharedPostgres } from './global-setup.ts';

/**
 * A group of tests on the real server. Each makes its own databases there (createDatabase, freshName) and drops them.
 * Left out visibly when the machine has no server; with CI=true the run has failed before that.
 */
export function describeOnPostgres(name: string, body: (server: SharedPostgres) => void): void {
  const server = inject('realPostgres');
  if (server === undefined) throw new Error(`"${name}" needs the test project 'service' or 'tests'.`);
  if (server !== null) describe(name, () => body(server));
  else
    describe.skipIf(true)(`${name} (left out: no Postgres server found)`, () =>
      body({ url: '', version: '' }),
    );
}

/** A group of tests in a browser, from launchBrowser. Left out visibly when there is none, an error with CI=true. */
export function describeInBrowser(name: string, body: () => void): void {
  const found = findBrowsers().length > 0;
  if (!found && process.env['CI'] === 'true') {
    throw new Error('No browser was found. Maybe install Chromium, or set CHROMIUM_PATH.');
  }
  describe.skipIf(!found)(found ? name : `${name} (left out: no browser found)`, body);
}
