// npm run bench:solver and its like: runs tests/bench/<name>.ts, what stands after -- handed on.
import { join } from 'node:path';
import { root, runNode } from './process.mjs';
import { install } from './ready.mjs';

const [name, ...options] = process.argv.slice(2);
await install();
process.exit(
  await runNode(
    ['--expose-gc', '--import', import.meta.resolve('tsx'), join(root, `tests/bench/${name}.ts`), ...options],
    { cwd: root },
  ),
);
