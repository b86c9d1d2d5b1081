// By name: npx tsx tests/faults/run-faults.ts [fault] [rounds] [seed]; prints one line of JSON.
import { faults, runFaults } from './fault-rounds.ts';

const [name = 'kill-service', rounds = '200', seed = '1'] = process.argv.slice(2);
const fault = faults.find((known) => known === name);
if (!fault) throw new Error(`There is no fault "${name}". Maybe one of: ${faults.join(', ')}.`);
const report = await runFaults({ fault, rounds: Number(rounds), seed: Number(seed) });
process.stdout.write(`${JSON.stringify({ test: 'faults', ...report })}\n`);
if (report.faults.length > 0 || report.exits > 0) process.exitCode = 1;
