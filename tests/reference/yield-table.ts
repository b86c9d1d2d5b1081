import {
  asPublished,
  believedSpecies,
  cautiousHigh,
  cautiousLow,
  type Estimate,
  predictPieces,
  predictYields,
  shapeSide,
  sources,
  takeHome,
  type YieldPrediction,
  yieldModelOf,
} from '@flitchbook/carcass';
import { type PublishedCarcass, type PublishedLine, publishedCarcasses } from './published-carcasses.ts';

const model = yieldModelOf('hog')!;
const { breakdown, species, yields } = model;
const mgPer = { lb: 453_592.37, kg: 1_000_000 } as const;
const tools = { saw: true, kerfUm: 2000 };

/** One line of print and what the model says of it, in the unit of the print; pieces for chops. */
export interface ComparedLine {
  readonly name: string;
  readonly printed: string;
  readonly mean: string;
  readonly span: string;
  /** whether the model's span, nine in ten either way, holds what was printed */
  readonly held: boolean;
  readonly because: string;
}

const added = (masses: readonly Estimate[]): Estimate => ({
  mean: masses.reduce((sum, { mean }) => sum + mean, 0),
  // As if they moved apart from each other: near enough for a table.
  sd: Math.hypot(...masses.map(({ sd }) => sd)),
});

/** A part, or an item or a bulk: all of it on the usual way, else where it is first made. Of one side, mg. */
function massOf(prediction: YieldPrediction, id: string): Estimate {
  const part = prediction.partMg.get(id);
  if (part) return part;
  const named = breakdown.outputs.filter((output) => output.id === id);
  const usual = named.filter(({ compartment }) => compartment >= 0);
  const masses = (usual.length > 0 ? usual : named.slice(0, 1)).map(({ key }) =>
    prediction.outputMg.get(key),
  );
  if (masses.length === 0) throw new Error(`no ${id} in a ${species.id}`);
  return added(masses.map((mass) => mass ?? { mean: 0, sd: 0 }));
}

function chopsOf(prediction: YieldPrediction, stocks: readonly string[], thicknessUm: number) {
  const shape = shapeSide(believedSpecies(breakdown, prediction.shares, asPublished), {
    sideId: 'side',
    animalId: 'animal',
    hand: 'left',
    massMg: prediction.sideMg.mean,
    carcassGrams: prediction.sideMg.mean / 500,
    ribs: species.ribs.usual,
    facts: [],
    lostParts: [],
  });
  const portion = { by: 'thickness', um: thicknessUm } as const;
  const found = stocks.map((stock) => predictPieces(yields, prediction, shape, { stock, portion, tools })!);
  const mean = found.reduce((sum, { pieces }) => sum + pieces, 0);
  return { mean, sd: (mean * yields.chopsCvPercent.value) / 100 };
}

function modelOf(carcass: PublishedCarcass, prediction: YieldPrediction, { asked }: PublishedLine): Estimate {
  const toUnit = ({ mean, sd }: Estimate, times: number = carcass.sides): Estimate => ({
    mean: (mean * times) / mgPer[carcass.unit],
    sd: (sd * times) / mgPer[carcass.unit],
  });
  if ('sum' in asked) return toUnit(added(asked.sum.map((id) => massOf(prediction, id))));
  if ('restOf' in asked) {
    const rest = added(asked.restOf.map((id) => massOf(prediction, id)));
    return toUnit({ mean: prediction.sideMg.mean - rest.mean, sd: rest.sd });
  }
  if ('boxed' in asked) {
    const style = model.takeHome.styles.find(({ id }) => id === asked.boxed)!;
    return toUnit(takeHome(model, prediction, style, carcass.sides).boxedMg, 1);
  }
  if ('chopsOf' in asked) return chopsOf(prediction, asked.chopsOf, asked.thicknessUm);
  const { grams } = prediction.chain.find(({ stage }) => stage === 'hot')!;
  return toUnit({ mean: grams.mean * 1000, sd: grams.sd * 1000 }, 1);
}

export function compareLines(carcass: PublishedCarcass): ComparedLine[] {
  const prediction = predictYields(breakdown, yields, { ...carcass.known, dressing: carcass.dressing });
  return carcass.lines.map((line) => {
    const estimate = modelOf(carcass, prediction, line);
    const digits = 'chopsOf' in line.asked ? 0 : carcass.unit === 'kg' ? 2 : 1;
    const [low, high] = [cautiousLow(estimate, 0.95), cautiousHigh(estimate, 0.95)];
    const [from, to = from] = line.printed;
    const half = 0.5 * 10 ** -digits;
    return {
      name: line.name,
      printed: line.printed.map((figure) => `${figure}`).join(' to '),
      mean: estimate.mean.toFixed(digits),
      span: `${low.toFixed(digits)} to ${high.toFixed(digits)}`,
      held: to >= low - half && from <= high + half,
      because: line.because ?? '',
    };
  });
}

/** A table of Markdown with its columns in line, as the formatter wants it. */
function tableText(rows: readonly (readonly string[])[]): string[] {
  const [first = []] = rows;
  const widths = first.map((_, at) => Math.max(3, ...rows.map((cells) => cells[at]?.length ?? 0)));
  const line = (cells: readonly string[]): string =>
    `| ${cells.map((cell, at) => cell.padEnd(widths[at] ?? 0)).join(' | ')} |`;
  const dashes = line(widths.map((width) => '-'.repeat(width)));
  const [head = '', ...body] = rows.map(line);
  return [head, dashes, ...body];
}

function carcassTable(carcass: PublishedCarcass): string[] {
  return [
    `## ${carcass.title}`,
    '',
    `${sources[carcass.source]}`,
    '',
    ...tableText([
      [`line, ${carcass.unit}`, 'printed', 'model', 'nine in ten', 'held', 'why not'],
      ...compareLines(carcass).map(({ name, printed, mean, span, held, because }) => [
        name,
        printed,
        mean,
        span,
        held ? 'yes' : 'no',
        held ? '' : because,
      ]),
    ]),
    '',
  ];
}

const head = `# Published carcasses

What the model of docs/yields.md says against what was printed, with nothing but the weight and the dressing told to it.
"Held" says whether its range (nine in ten lie inside) holds the printed figure; "why not" is our reading of the print.
Two things are behind most of it: the shares come from one breakdown (National Pork Producers Council), whose ham is whole
and whose loin still has its fat; and shops trim as they like, which no law of animals foretells. Modern carcasses have
heavier loins, butts and picnics and lighter bellies than that breakdown. So the first sides a shop weighs are worth more
than anything printed. Written by \`npm run documents\`.`;

/** The whole of docs/published-carcasses.md. */
export const publishedCarcassesText = (): string =>
  `${[head, '', ...publishedCarcasses.flatMap(carcassTable)].join('\n').trimEnd()}\n`;
