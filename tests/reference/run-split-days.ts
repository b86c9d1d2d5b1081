// By name: npx tsx tests/reference/run-split-days.ts [days] [first seed]; prints one line of JSON.
import { faultsOfAdvice, middleDay } from './split-days.ts';

const [days = 200, first = 1] = process.argv.slice(2).map(Number);
const began = performance.now();
const faults: string[] = [];
for (let seed = first; seed < first + days; seed++)
  for (const fault of await faultsOfAdvice(middleDay(seed))) faults.push(`${seed}: ${fault}`);
const seconds = Math.round((performance.now() - began) / 1000);
process.stdout.write(`${JSON.stringify({ test: 'split-advice', days, first, seconds, faults })}\n`);
process.exitCode = faults.length === 0 ? 0 : 1;
