import { readFileSync } from 'node:fs';
import { runCommand } from './run-command.ts';

const readFile = (name: string): string => readFileSync(name === '-' ? 0 : name, 'utf8');

process.exitCode = await runCommand(process.argv.slice(2), {
  readFile,
  print: (text) => process.stdout.write(`${text}\n`),
  complain: (text) => process.stderr.write(`${text}\n`),
});
