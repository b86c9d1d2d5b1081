// npm run test:mutants [-- words of a name ...]: whether the tests see mistakes that are planted.
import { join } from 'node:path';
import { root, runNode } from './process.mjs';
import { install } from './ready.mjs';

await install();
const script = join(root, 'tests/mutants/run-mutants.ts');
process.exit(await runNode(['--import', import.meta.resolve('tsx'), script, ...process.argv.slice(2)]));
