import {
  cautiousHigh,
  cautiousLow,
  type FarmFigures,
  type PieceForecast,
  predictPieces,
  type SideShape,
  type TakeHome,
  type TakeHomeLine,
  usualRows,
  type YieldModel,
  type YieldPrediction,
} from '@flitchbook/carcass';
import { lengthText, type ShownIn, weightText } from '@flitchbook/plan';
import { rule, wrap } from './lines.ts';

export interface YieldAnswer {
  readonly model: YieldModel;
  readonly prediction: YieldPrediction;
  /** the side at its mean */
  readonly shape: SideShape;
  readonly homes: readonly TakeHome[];
  readonly confidence: number;
  readonly sides: 1 | 2;
}

const inch = 25_400;
/** A saw and its usual kerf (common practice, no source). */
const tools = { saw: true, kerfUm: 2000 };

const span = (low: number, high: number, shown: ShownIn): string =>
  `${weightText(low, shown)} to ${weightText(high, shown)}`;

function chainText({ prediction, confidence }: YieldAnswer, shown: ShownIn): string[] {
  const names = { live: 'live', hot: 'hanging, hot', cold: 'hanging, cold', side: 'one side' } as const;
  return prediction.chain.map(({ stage, weighed, grams, loses }) => {
    const mg = { mean: grams.mean * 1000, sd: grams.sd * 1000 };
    const range =
      weighed || mg.sd === 0
        ? ''
        : ` (${span(cautiousLow(mg, confidence), cautiousHigh(mg, confidence), shown)})`;
    const off = loses === '' ? [] : [wrap(`off: ${loses}`, ' '.repeat(17))];
    return [`  ${names[stage].padEnd(14)} ${weightText(mg.mean, shown)}${range}`, ...off].join('\n');
  });
}

function partsText({ model, prediction, confidence }: YieldAnswer, shown: ShownIn): string[] {
  return usualRows(model.breakdown, prediction).map(({ name, depth, massMg, percent }) => {
    const label = `${'  '.repeat(depth + 1)}${name}`.padEnd(40);
    const least = weightText(cautiousLow(massMg, confidence), shown);
    return `${label}${percent.toFixed(1).padStart(5)} %  ${weightText(massMg.mean, shown)}, at least ${least}`;
  });
}

function slicesText({ model, prediction, shape, confidence }: YieldAnswer, shown: ShownIn): string[] {
  const portion = { by: 'thickness', um: inch } as const;
  return Object.values(model.species.stocks).flatMap(({ id, name }) => {
    const wanted = { stock: id, portion, tools };
    const forecast: PieceForecast | undefined = predictPieces(
      model.yields,
      prediction,
      shape,
      wanted,
      confidence,
    );
    if (!forecast) return [];
    const { usableUm, pieces, cautiousPieces, pieceMg } = forecast;
    return [
      `  ${name.padEnd(39)} ${lengthText(usableUm.mean, shown)}: ${pieces} of ${lengthText(inch, shown)}, ${cautiousPieces} to promise, ${weightText(pieceMg.mean, shown)} each`,
    ];
  });
}

const listText = (lines: readonly TakeHomeLine[], shown: ShownIn): string =>
  lines.map(({ name, massMg }) => `${name} ${weightText(massMg.mean, shown)}`).join('; ') || 'nothing';

function homeText(home: TakeHome, shown: ShownIn): string[] {
  const { style, boxed, percent, declined, lost, servings, freezerCubicFeet } = home;
  const litres = (cubicFeet: number): string => (cubicFeet * 28.316_846_592).toFixed(0);
  const eaten = servings.high === 0 ? '' : `about ${servings.low} to ${servings.high} servings; `;
  const size = (cubicFeet: number): string => `${cubicFeet.toFixed(1)} cu ft (${litres(cubicFeet)} l)`;
  return [
    wrap(
      `${style.name}: ${span(boxed.low, boxed.high, shown)} boxed, ${percent.low.toFixed(0)} to ${percent.high.toFixed(0)} % of what hangs cold`,
      '  ',
    ),
    wrap(style.says, '    '),
    wrap(`stays behind: ${listText(declined, shown)}`, '    '),
    wrap(`lost: ${listText(lost, shown)}`, '    '),
    wrap(`${eaten}a freezer of ${size(freezerCubicFeet.low)} to ${size(freezerCubicFeet.high)}`, '    '),
  ];
}

/** Length of one rib or vertebra of each zone that has several, on the bars of the usual way. */
function pitchText({ model, shape }: YieldAnswer, shown: ShownIn): string {
  const usual = model.breakdown.parts.filter(({ compartments }) => compartments !== undefined);
  const zones = usual.flatMap(({ id }) => shape.bars.get(id)?.zones ?? []);
  const each = zones
    .filter(({ stations }) => stations > 1)
    .map(({ zone, stations, pitchUm }) => `${zone.name} ${stations} of ${lengthText(pitchUm, shown)}`);
  return wrap(`Bones along the bars: ${each.join('; ')}`, '');
}

/** What an animal gives, for people. */
export function yieldText(answer: YieldAnswer, shown: ShownIn): string {
  const { model, prediction, homes, confidence, sides } = answer;
  const likely = prediction.ribs.filter(({ chance }) => chance >= 0.005);
  const ribs = likely
    .map(({ ribs: count, chance }) => `${count} (${(100 * chance).toFixed(0)} %)`)
    .join(', ');
  const many = `${(100 * confidence).toFixed(0)} of 100 animals`;
  return [
    `${model.species.name}: the way to one side`,
    ...chainText(answer, shown),
    rule,
    `What one side gives the usual way: share, mean, and what ${many} reach`,
    ...partsText(answer, shown),
    rule,
    `Ribs: ${ribs}`,
    pitchText(answer, shown),
    `Slices of one inch, if the whole stretch is cut into them`,
    ...slicesText(answer, shown),
    rule,
    `Taken home of ${sides === 1 ? 'one side' : 'both sides'}; curing and smoking not counted`,
    ...homes.flatMap((home) => homeText(home, shown)),
  ].join('\n');
}

/** What is believed of a farm, and why. */
export function beliefText({ farm, figures }: FarmFigures): string {
  const head =
    farm === null ? 'What is believed of a farm that nothing was weighed of' : `What is believed of ${farm}`;
  const lines =
    figures.length === 0
      ? ['  As published: nothing was weighed yet.']
      : figures.map(({ says }) => wrap(says, '  '));
  return [rule, head, ...lines].join('\n');
}
