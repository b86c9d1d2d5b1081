import { parseArgs } from 'node:util';
import { parseKitchenFile, valueAt } from '@flitchbook/contracts';
import {
  type CureAnswer,
  type CureCalendar,
  type CureRequest,
  checkSausagePlan,
  cureCalendar,
  type GrindChoice,
  grindChoices,
  type KitchenFault,
  type MarginPrices,
  marginPrices,
  planSausages,
  reckonCure,
  type SausagePlan,
  usualCalendarRules,
} from '@flitchbook/kitchen';
import { kitchenText } from './kitchen-text.ts';
import { exitStatus, faultText, type Surroundings } from './surroundings.ts';

type Parsed = Extract<ReturnType<typeof parseKitchenFile>, { readonly file: unknown }>['file'];

export interface ReckonedCure {
  readonly name: string;
  readonly answer: CureAnswer;
  readonly calendar: CureCalendar | null;
}

/** All that a kitchen file asks for, reckoned. */
export interface KitchenReport {
  readonly cures: readonly ReckonedCure[];
  readonly sausage: { readonly plan: SausagePlan; readonly choices: readonly GrindChoice[] } | null;
  readonly prices: MarginPrices | null;
}

export const kitchenUsage = '       flitchbook kitchen FILE [--json]';

/** Names of fields as the kitchen has them, and as the file has them. */
const renamed: readonly (readonly [RegExp, string])[] = [
  [/^sausage\.lots\[/, 'sausage.trim['],
  [/\.(recipeId)$/, '.recipe'],
  [/\.(lotId|offerId|promiseId)$/, '.id'],
  [/^(sausage\.promises\[\d+\])\.massMg$/, '$1.amount'],
  [/\.massMg$/, '.weight'],
  [/\.fat(Least|Most)?Ppm$/, '.fat'],
  [/\.batch(Least|Most)Mg$/, '.batch'],
  [/\.costMinorPerKg$/, '.worth'],
  [/\.target\./, '.'],
  [/\.marginPpm$/, '.margin'],
  [/\.thicknessUm$/, '.thickness'],
];

const inFile = (at: string): string => renamed.reduce((path, [form, name]) => path.replace(form, name), at);

/** What went wrong with a part of the file, said where the part stands. */
class PartFaults extends Error {
  readonly faults: readonly KitchenFault[];

  constructor(part: string, faults: readonly KitchenFault[]) {
    super(part);
    this.faults = faults.map((fault) => ({ ...fault, at: `${part}.${fault.at}` }));
  }
}

function taken<T extends object>(part: string, answer: T | { readonly faults: readonly KitchenFault[] }): T {
  if ('faults' in answer) throw new PartFaults(part, answer.faults);
  return answer;
}

function reckon({ name, calendar, ...request }: Parsed['cures'][number], index: number): ReckonedCure {
  const part = `cures[${index}]`;
  const answer = taken(part, reckonCure(request as unknown as CureRequest));
  if (!calendar) return { name, answer, calendar: null };
  const rule = usualCalendarRules.find(({ id }) => id === calendar.rule);
  if (!rule) {
    const says = `must be one of ${usualCalendarRules.map(({ id }) => id).join(', ')}`;
    throw new PartFaults(part, [{ at: 'calendar.rule', value: calendar.rule, says }]);
  }
  return {
    name,
    answer,
    calendar: taken(`${part}.calendar`, cureCalendar(rule, calendar.start, calendar.thickness)),
  };
}

async function reckonAll(file: Parsed): Promise<KitchenReport> {
  const cures = file.cures.map(reckon);
  const prices = file.prices ? taken('prices', marginPrices(file.prices.cuts, file.prices.target)) : null;
  if (!file.sausage) return { cures, prices, sausage: null };
  // First without the offers: what is ground is the butcher's choice, and he is asked only when the pool is short.
  const plan = taken('sausage', await planSausages({ ...file.sausage, offers: [] }));
  const broken = checkSausagePlan(file.sausage, plan);
  if (broken.length > 0)
    throw new Error(
      broken.map(({ rule, at, says }) => `the plan breaks ${rule} at ${at}: ${says}`).join('\n'),
    );
  return { cures, prices, sausage: { plan, choices: await grindChoices(file.sausage, plan) } };
}

const isShort = ({ cures, sausage }: KitchenReport): boolean =>
  cures.some(({ answer }) => answer.outcome !== 'within') ||
  (sausage?.plan.fills.some(({ says }) => says !== '') ?? false);

/** Reckons a kitchen file: cures, sausage and prices. @returns the exit status: short where something is flagged or refused too */
export async function kitchenCommand(args: readonly string[], around: Surroundings): Promise<number> {
  const { positionals, values } = parseArgs({
    args: [...args],
    allowPositionals: true,
    options: { json: { type: 'boolean', default: false } },
  });
  const [name, ...rest] = positionals;
  if (name === undefined || rest.length > 0) {
    around.complain(`Usage:\n${kitchenUsage}`);
    return exitStatus.badInput;
  }
  const text = around.readFile(name);
  const refuse = (faults: readonly KitchenFault[]): number => {
    for (const fault of faults) around.complain(faultText(name, fault));
    return exitStatus.badInput;
  };
  const parsed = parseKitchenFile(text);
  if ('faults' in parsed) return refuse(parsed.faults);
  const written = ({ says, ...fault }: KitchenFault): KitchenFault => {
    const at = inFile(fault.at);
    return { at, says, value: valueAt(JSON.parse(text), at) };
  };
  try {
    const report = await reckonAll(parsed.file);
    around.print(values.json ? JSON.stringify(report) : kitchenText(report, parsed.file.currency ?? 'USD'));
    return isShort(report) ? exitStatus.short : exitStatus.fine;
  } catch (fault) {
    if (fault instanceof PartFaults) return refuse(fault.faults.map(written));
    throw fault;
  }
}
