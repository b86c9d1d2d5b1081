// npm run bench:kitchen: how long a large day of sausage takes.
import { join } from 'node:path';
import { root, runNode } from './process.mjs';
import { install } from './ready.mjs';

await install();
process.exit(
  await runNode(['--import', import.meta.resolve('tsx'), join(root, 'tests/bench/kitchen.ts')], {
    cwd: root,
  }),
);
