import { parseArgs } from 'node:util';
import { type AuditVerdict, auditSheet } from '@flitchbook/carcass';
import { parseAuditFile } from '@flitchbook/contracts';
import { type ShownIn, weightText } from '@flitchbook/plan';
import { wrap } from './lines.ts';
import { exitStatus, faultText, type Surroundings } from './surroundings.ts';

export const auditUsage = `       flitchbook audit FILE [--json] [--unit lb|kg]`;

export function readUnit(unit: string | undefined): ShownIn {
  if (unit === undefined) return {};
  if (unit !== 'lb' && unit !== 'kg') throw new RangeError(`--unit must be lb or kg, got "${unit}"`);
  return { weightUnit: unit, lengthUnit: unit === 'lb' ? 'in' : 'mm' };
}

function auditText(name: string, verdict: AuditVerdict, shown: ShownIn): string {
  const { carcassMg, otherMg, outMg, outPercent, lines, findings, balances } = verdict;
  const other = otherMg === 0 ? [] : [`  in, no carcass   ${weightText(otherMg, shown)}`];
  return [
    name,
    `  in, carcass      ${weightText(carcassMg, shown)}`,
    ...other,
    ...lines.map(
      (line) =>
        `  out ${line.percentOfIn.toFixed(1).padStart(6)} %     ${weightText(line.massMg, shown)}  ${line.name}`,
    ),
    `  out in all       ${weightText(outMg, shown)}, ${outPercent.toFixed(1)} %`,
    ...findings.map(({ kind, at, says }) =>
      wrap(
        [kind === 'rounding' ? 'remark' : 'WRONG', at, says].filter((text) => text !== '').join(': '),
        '  ',
      ),
    ),
    balances ? 'It balances.' : 'It does not balance.',
  ].join('\n');
}

/** Says whether a list of what goes in and what comes out balances. */
export function auditCommand(args: readonly string[], around: Surroundings): number {
  const { positionals, values } = parseArgs({
    args: [...args],
    allowPositionals: true,
    options: { json: { type: 'boolean', default: false }, unit: { type: 'string' } },
  });
  const [file, ...rest] = positionals;
  if (file === undefined || rest.length > 0) {
    around.complain(`Usage:\n${auditUsage}`);
    return exitStatus.badInput;
  }
  const parsed = parseAuditFile(around.readFile(file));
  if ('faults' in parsed) {
    for (const fault of parsed.faults) around.complain(faultText(file, fault));
    return exitStatus.badInput;
  }
  const verdict = auditSheet(parsed.sheet);
  if (values.json) around.print(JSON.stringify(verdict));
  else around.print(auditText(parsed.name, verdict, readUnit(values.unit)));
  return verdict.balances ? exitStatus.fine : exitStatus.short;
}
