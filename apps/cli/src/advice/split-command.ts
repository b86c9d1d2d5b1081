import { parseArgs } from 'node:util';
import { type CuttingDay, checkPlan, type ShownIn, sidesOf, weightText } from '@flitchbook/plan';
import { compareSplits, planDay, type SplitAdvice, type SplitOption } from '@flitchbook/solver';
import { rule, wrap } from '../lines.ts';
import { moneyIn } from '../money-in.ts';
import { readDay } from '../read-day.ts';
import { exitStatus, readNumber, type Surroundings } from '../surroundings.ts';

export const splitUsage =
  '       flitchbook split FILE --side SIDE [--part PART] [--free] [--json] [--deadline SECONDS] [--seed NUMBER]';

interface Shown extends ShownIn {
  readonly money: ReturnType<typeof moneyIn>;
}

const readArguments = (args: readonly string[]) =>
  parseArgs({
    args: [...args],
    allowPositionals: true,
    options: {
      side: { type: 'string' },
      part: { type: 'string' },
      free: { type: 'boolean', default: false },
      json: { type: 'boolean', default: false },
      deadline: { type: 'string', default: '5' },
      seed: { type: 'string', default: '1' },
    },
  });

function tippingText({ tipping }: SplitOption, { money }: Shown): string[] {
  if (tipping === null) return [];
  const { kinds, nowMinorPerKg, tipsAtMinorPerKg, againstWay } = tipping;
  const [now, tips] = [money(nowMinorPerKg), money(tipsAtMinorPerKg)];
  return [`${kinds.join(', ')}: ${now} a kg now, as good as ${againstWay} from ${tips} a kg`];
}

function optionText(day: CuttingDay, option: SplitOption, shown: Shown): string {
  const owners = new Map(day.lines.map(({ lineId, owner, cut }) => [lineId, `${owner}: ${cut}`]));
  const { says, inForce, gainMinor, fills, gains, losses, minutes, bulkGrams, rest, proven } = option;
  const marks = [
    ...(inForce ? ['as planned'] : []),
    ...(rest === 'planned-anew' ? ['the day planned anew'] : []),
    ...(proven ? [] : ['not proven the best']),
  ];
  const filled = fills.map(({ lineId, pieces }) => `${pieces} for ${owners.get(lineId) ?? lineId}`);
  const loose = Object.entries(bulkGrams)
    .filter(([, grams]) => grams > 0)
    .map(([bulk, grams]) => `${bulk} ${weightText(grams * 1000, shown)}`);
  const sign = gainMinor > 0 ? '+' : '';
  return [
    [says, ...marks.map((mark) => `[${mark}]`)].join(' '),
    `  ${sign}${shown.money(gainMinor)} against the plan, ${Math.round(minutes)} min on this side`,
    ...(filled.length > 0 ? [wrap(filled.join('; '), '  ')] : []),
    ...losses.map((change) => wrap(`loses: ${change.says}`, '  ')),
    ...gains.map((change) => wrap(`gains: ${change.says}`, '  ')),
    ...(loose.length > 0 ? [wrap(`trim: ${loose.join(', ')}`, '  ')] : []),
    ...tippingText(option, shown).map((text) => wrap(text, '  ')),
  ].join('\n');
}

function adviceText(day: CuttingDay, advice: SplitAdvice, shown: Shown): string {
  const head = `${advice.sideId}, ${advice.part ?? 'nothing to choose'}`;
  const late = advice.undecided.map(({ says }) => `not looked at in time: ${says}`);
  return [
    head,
    ...(advice.says === null ? [] : [advice.says]),
    ...advice.options.flatMap((option) => [rule, optionText(day, option, shown)]),
    ...(late.length > 0 ? [rule, ...late] : []),
  ].join('\n');
}

/** Plans a day, then lays the ways to break one part of a side beside each other. */
export async function splitCommand(args: readonly string[], around: Surroundings): Promise<number> {
  const { positionals, values } = readArguments(args);
  const [file, ...rest] = positionals;
  if (file === undefined || rest.length > 0 || values.side === undefined) {
    around.complain(`Usage:\n${splitUsage}`);
    return exitStatus.badInput;
  }
  const deadlineSeconds = readNumber('deadline', values.deadline, 0, 3600);
  const seed = readNumber('seed', values.seed, 0, 2 ** 31 - 1);
  const parsed = readDay(file, around);
  if (!parsed) return exitStatus.badInput;
  const { day, shop } = parsed;
  const sides = sidesOf(day).map(({ sideId }) => sideId);
  if (!sides.includes(values.side))
    throw new RangeError(`--side must be one of ${sides.join(', ')}, got "${values.side}"`);
  const plan = await planDay(day, { deadlineSeconds, gap: 0.01, seed });
  const question = {
    sideId: values.side,
    ...(values.part !== undefined && { part: values.part }),
    rest: values.free ? ('free' as const) : ('held' as const),
  };
  const advice = await compareSplits(day, plan, question, { deadlineSeconds, seed });
  for (const option of advice.options) {
    const [fault] = checkPlan({ ...day, locks: [...advice.otherLocks, ...option.locks] }, option.plan);
    if (fault === undefined) continue;
    around.complain(`${option.wayId} breaks ${fault.rule} at ${fault.at}: ${fault.says}`);
    return exitStatus.fault;
  }
  const { lengthUnit, weightUnit, currency } = shop;
  const shown = { lengthUnit, weightUnit, money: moneyIn(currency) };
  if (values.json) around.print(JSON.stringify(advice));
  else around.print(adviceText(day, advice, shown));
  return advice.options.length === 0 ? exitStatus.short : exitStatus.fine;
}
