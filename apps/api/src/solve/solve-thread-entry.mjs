// A thread does not take over the loader of the process that starts it: on Node 20 it must ask for TypeScript itself.
import { register } from 'tsx/esm/api';

register();
await import('./solve-thread.ts');
