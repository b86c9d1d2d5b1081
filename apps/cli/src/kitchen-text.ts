import type { KitchenReport, ReckonedCure } from './kitchen-command.ts';
import { moneyIn } from './money-in.ts';

const rule = '─'.repeat(78);
const grams = (mg: number): string => `${(mg / 1000).toFixed(2)} g`;
const kilos = (mg: number): string => `${(mg / 1_000_000).toFixed(2)} kg`;
const percent = (ppm: number): string => `${(ppm / 10_000).toFixed(1)} %`;
const ppm = (ppb: number): string => `${(ppb / 1000).toFixed(2)} ppm`;

const outcomes = { within: 'within its limits', flagged: 'FLAGGED', refused: 'REFUSED, do not use' } as const;

function cureText({ name, answer, calendar }: ReckonedCure): string[] {
  const { cureMg, mostCureMg, add, needs } = answer;
  return [
    `${name}: ${outcomes[answer.outcome]}`,
    cureMg === null
      ? '  no dose is given'
      : `  cure ${grams(cureMg)}, ${ppm(answer.nitritePpb)} as ${answer.nitriteAs}, ${ppm(answer.nitriteIonPpb)} as the ion`,
    ...(mostCureMg === null ? [] : [`  at most ${grams(mostCureMg)} of this cure`]),
    ...(add
      ? [`  salt ${grams(add.saltMg)}, sugar ${grams(add.sugarMg)}, with the cure ${grams(add.totalMg)}`]
      : []),
    ...needs.map(({ mg }) => `  needs ${grams(mg)} of ascorbate or erythorbate`),
    ...answer.says.map((says) => `  ${says}`),
    ...answer.judgements.map(
      ({ says, source, standing, checkedOn }) => `  ${says} ${source} (${standing}, ${checkedOn})`,
    ),
    ...(calendar?.stages.map(({ what, from, until }) => `  ${what}: ${from} to ${until} at the earliest`) ??
      []),
    ...(calendar ? [`  look at it on ${calendar.earliestReady} at the earliest (${calendar.source})`] : []),
    ...[...answer.cautions, ...(calendar?.cautions ?? [])].map(({ says }) => `  ! ${says}`),
  ];
}

function sausageText(
  { plan, choices }: NonNullable<KitchenReport['sausage']>,
  money: (minor: number) => string,
): string[] {
  return [
    `Sausage on ${plan.date}: ${plan.batches.length} batches, ${money(plan.costMinor)}${plan.proven ? ', proven cheapest' : ''}`,
    ...plan.batches.flatMap(({ batchId, meatMg, finishedMg, fatPpm, draws, additions }) => [
      `  ${batchId}: ${kilos(meatMg)} of meat at ${percent(fatPpm)} fat makes ${kilos(finishedMg)}`,
      ...draws.map(({ lotId, massMg }) => `     ${kilos(massMg)} of ${lotId}`),
      ...additions.map(({ name, massMg }) => `     ${grams(massMg)} of ${name}`),
    ]),
    ...plan.fills.map(
      ({ promiseId, filledMg, askedMg, says }) =>
        `  ${says === '' ? 'filled' : 'SHORT '} ${promiseId}: ${kilos(filledMg)} of ${kilos(askedMg)}${says === '' ? '' : `. ${says}`}`,
    ),
    ...choices.map(
      ({ names, extraMinor, missingMg }) =>
        `  could be ground: ${names.join(' and ')}, ${money(extraMinor)} more${missingMg === 0 ? '' : `, ${kilos(missingMg)} still missing`}`,
    ),
  ];
}

/** The report for people. */
export function kitchenText({ cures, sausage, prices }: KitchenReport, currency: string): string {
  const money = moneyIn(currency);
  const priced = prices
    ? [
        `Prices by ${prices.by}: ${money(prices.salesMinor)} in all, a margin of ${percent(prices.marginPpm)}`,
        ...prices.prices.map(
          ({ cutId, price }) => `  ${cutId.padEnd(24)} ${money(price.minor)}/${price.per}`,
        ),
      ]
    : [];
  const parts = [...cures.map(cureText), sausage ? sausageText(sausage, money) : [], priced];
  return parts
    .filter((part) => part.length > 0)
    .map((part) => part.join('\n'))
    .join(`\n${rule}\n`);
}
