// npm run build: the web part, unless it is up to date.
import { buildWeb, install } from './ready.mjs';

await install();
await buildWeb();
