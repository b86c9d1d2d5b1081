import { parseDayFile } from '@flitchbook/contracts';
import { faultText, type Surroundings } from './surroundings.ts';

/** A day file; undefined where it is not right, with every fault told. */
export function readDay(name: string, around: Surroundings) {
  const parsed = parseDayFile(around.readFile(name));
  if ('faults' in parsed) {
    for (const fault of parsed.faults) around.complain(faultText(name, fault));
    return undefined;
  }
  for (const { at, says } of parsed.warnings) around.complain(`${name}: note: ${at}: ${says}`);
  return parsed;
}
