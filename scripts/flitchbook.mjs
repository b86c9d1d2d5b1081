// npm run -s flitchbook -- ...: the command line, in the folder where it was called, so that file names mean what they say.
import { join } from 'node:path';
import { root, runNode } from './process.mjs';
import { install } from './ready.mjs';

await install();
const main = join(root, 'apps/cli/src/main.ts');
process.exit(
  await runNode(['--import', import.meta.resolve('tsx'), main, ...process.argv.slice(2)], {
    cwd: process.env.INIT_CWD ?? process.cwd(),
  }),
);
