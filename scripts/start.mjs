// npm start: installs what is missing, builds the web part if its sources changed, runs the API.
import { runNode } from './process.mjs';
import { buildWeb, install } from './ready.mjs';

await install();
await buildWeb();
process.exit(await runNode(['--import', 'tsx', 'apps/api/src/main.ts', ...process.argv.slice(2)]));
