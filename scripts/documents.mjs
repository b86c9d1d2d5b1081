// npm run documents: writes the files anew that are made by the program and kept beside it. Tests fail where they differ.
import { runNode } from './process.mjs';
import { install } from './ready.mjs';

const tests = [
  'tests/examples/examples.test.ts',
  'tests/architecture/open-api.test.ts',
  'tests/reference/published-carcasses.test.ts',
];

await install();
process.exit(await runNode(['node_modules/vitest/vitest.mjs', 'run', ...tests, '--update']));
