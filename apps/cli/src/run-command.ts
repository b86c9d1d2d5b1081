import { parseArgs } from 'node:util';
import { knownSpecies } from '@flitchbook/contracts';
import { checkPlan, cutList, fillReport } from '@flitchbook/plan';
import { planDay } from '@flitchbook/solver';
import { splitCommand, splitUsage } from './advice/split-command.ts';
import { auditCommand, auditUsage } from './audit-command.ts';
import { kitchenCommand, kitchenUsage } from './kitchen-command.ts';
import { readDay } from './read-day.ts';
import { reportText } from './report-text.ts';
import { exitStatus, readNumber, type Surroundings } from './surroundings.ts';
import { yieldCommand } from './yield-command.ts';
import { yieldUsage } from './yield-request.ts';

const usage = `Usage: flitchbook plan FILE [--json] [--deadline SECONDS] [--gap SHARE] [--seed NUMBER] [--method columns|plain]
       flitchbook check FILE
       flitchbook cuts [--species hog]
${splitUsage}
${yieldUsage}
${auditUsage}
${kitchenUsage}
FILE is a day file (docs/day-file.md), of audit and --measured one of docs/yields.md, of kitchen one of
docs/kitchen-file.md; - reads standard input.
Exit status: 0 everything is filled or balances, 1 something is short, flagged, refused or does not balance, 2 bad input, 3 no plan.`;

function options(args: readonly string[]) {
  return parseArgs({
    args: [...args],
    allowPositionals: true,
    options: {
      json: { type: 'boolean', default: false },
      deadline: { type: 'string', default: '5' },
      gap: { type: 'string', default: '0.005' },
      seed: { type: 'string', default: '1' },
      method: { type: 'string', default: 'columns' },
      species: { type: 'string', default: 'hog' },
      help: { type: 'boolean', default: false },
    },
  });
}

type Options = ReturnType<typeof options>['values'];

async function plan(name: string, values: Options, around: Surroundings): Promise<number> {
  const parsed = readDay(name, around);
  if (!parsed) return exitStatus.badInput;
  const method = values.method === 'plain' ? 'plain' : 'columns';
  if (values.method !== method)
    throw new RangeError(`--method must be columns or plain, got "${values.method}"`);
  const made = await planDay(parsed.day, {
    deadlineSeconds: readNumber('deadline', values.deadline, 0, 3600),
    gap: readNumber('gap', values.gap, 0, 1),
    seed: readNumber('seed', values.seed, 0, 2 ** 31 - 1),
    method,
  });
  const faults = checkPlan(parsed.day, made);
  if (faults.length > 0) {
    for (const { rule, at, says } of faults) around.complain(`the plan breaks ${rule} at ${at}: ${says}`);
    return exitStatus.fault;
  }
  const shown = { lengthUnit: parsed.shop.lengthUnit, weightUnit: parsed.shop.weightUnit };
  const report = fillReport(parsed.day, made, shown);
  if (values.json) around.print(JSON.stringify({ plan: made, report }));
  else around.print(reportText(cutList(parsed.day, made, shown), report, made.proof));
  return report.short.promised + report.short.wished > 0 ? exitStatus.short : exitStatus.fine;
}

function cuts(speciesId: string, around: Surroundings): number {
  const species = Object.hasOwn(knownSpecies, speciesId) ? knownSpecies[speciesId] : undefined;
  if (!species) {
    around.complain(
      `--species: no species called "${speciesId}". Known: ${Object.keys(knownSpecies).join(', ')}`,
    );
    return exitStatus.badInput;
  }
  for (const { id, name, says } of Object.values(species.cuts))
    around.print(`${id.padEnd(20)} ${name}. ${says}`);
  return exitStatus.fine;
}

async function run(
  [command, file, ...rest]: readonly string[],
  values: Options,
  around: Surroundings,
): Promise<number> {
  if (values.help) {
    around.print(usage);
    return exitStatus.fine;
  }
  if (command === 'cuts' && file === undefined) return cuts(values.species, around);
  if (file === undefined || rest.length > 0 || (command !== 'plan' && command !== 'check')) {
    around.complain(usage);
    return exitStatus.badInput;
  }
  if (command === 'plan') return plan(file, values, around);
  if (!readDay(file, around)) return exitStatus.badInput;
  around.print(`${file} is a good day file.`);
  return exitStatus.fine;
}

const isTheirs = (fault: unknown): boolean =>
  fault instanceof RangeError ||
  (fault instanceof Error &&
    'code' in fault &&
    /^(ERR_PARSE_ARGS|ENOENT|EISDIR|EACCES)/.test(String(fault.code)));

/** Runs one command. @returns its exit status; never throws */
export async function runCommand(args: readonly string[], around: Surroundings): Promise<number> {
  try {
    const [verb, ...rest] = args;
    if (verb === 'yield') return yieldCommand(rest, around);
    if (verb === 'split') return await splitCommand(rest, around);
    if (verb === 'audit') return auditCommand(rest, around);
    if (verb === 'kitchen') return await kitchenCommand(rest, around);
    const { positionals, values } = options(args);
    return await run(positionals, values, around);
  } catch (fault) {
    around.complain(fault instanceof Error ? fault.message : String(fault));
    return isTheirs(fault) ? exitStatus.badInput : exitStatus.fault;
  }
}
