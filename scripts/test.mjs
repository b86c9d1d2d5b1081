// npm test: every test that a fresh machine can run. Further arguments go to vitest.
import { runNode } from './process.mjs';
import { buildWeb, install } from './ready.mjs';

await install();
await buildWeb();
process.exit(await runNode(['node_modules/vitest/vitest.mjs', 'run', ...process.argv.slice(2)]));
