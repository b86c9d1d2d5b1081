import {
  asPublished,
  type ChainStep,
  cautiousHigh,
  cautiousLow,
  checkKnown,
  type FarmFigures,
  type KnownCarcass,
  type Learned,
  learnYields,
  predictYields,
  type RibChance,
  readingToGrams,
  sources,
  type TakeHome,
  takeHome,
  usualRows,
  type YieldModel,
  yieldModelOf,
} from '@flitchbook/carcass';
import { parseMeasuredFile } from '@flitchbook/contracts';
import { words } from '../words/english.ts';

/** What the form holds, as typed. */
export interface YieldDraft {
  readonly speciesId: string;
  readonly weight: string;
  readonly unit: 'lb' | 'kg';
  readonly stage: 'live' | 'hot' | 'cold';
  readonly dressing: Readonly<Record<string, boolean>>;
  /** millimetres over the last rib; may be empty */
  readonly fat: string;
}

export interface ShownRow {
  readonly id: string;
  readonly name: string;
  readonly depth: number;
  readonly percent: number;
  readonly meanMg: number;
  readonly leastMg: number;
  /** where the figure comes from */
  readonly from: string;
  /** what was learned of it, when it was */
  readonly learned: string | null;
}

export interface ShownYields {
  readonly chain: readonly (ChainStep & { readonly lowMg: number; readonly highMg: number })[];
  readonly rows: readonly ShownRow[];
  readonly ribs: readonly RibChance[];
  readonly homes: readonly TakeHome[];
  readonly warnings: readonly string[];
}

export type YieldAnswer =
  | ShownYields
  | { readonly faults: readonly { readonly at: string; readonly says: string }[] };

export const firstDraft = (unit: 'lb' | 'kg'): YieldDraft => ({
  speciesId: 'hog',
  weight: unit === 'lb' ? '184' : '83.5',
  unit,
  stage: 'cold',
  dressing: dressingOf('hog'),
  fat: '',
});

/** Everything as the species' data describe it. */
export function dressingOf(speciesId: string): Record<string, boolean> {
  const elements = yieldModelOf(speciesId)?.yields.dressing ?? [];
  return Object.fromEntries(elements.map(({ id, usuallyOn }) => [id, usuallyOn]));
}

function readNumber(text: string): number | undefined {
  return /^\d{1,7}(\.\d{1,6})?$/.test(text.trim()) ? Number(text) : undefined;
}

function knownOf(draft: YieldDraft): KnownCarcass | { readonly at: string; readonly says: string } {
  const text = draft.weight.trim();
  if (readNumber(text) === undefined) return { at: 'weight', says: words.yields.badWeight };
  const fat = draft.fat.trim() === '' ? undefined : readNumber(draft.fat);
  if (draft.fat.trim() !== '' && fat === undefined) return { at: 'fat', says: words.yields.badFat };
  const grams = readingToGrams({ text, unit: draft.unit });
  return {
    [`${draft.stage}Grams`]: grams,
    dressing: draft.dressing,
    ...(fat === undefined ? {} : { lastRibFatMm: fat }),
  };
}

const fieldOf = (at: string): string =>
  at.endsWith('Grams') ? 'weight' : at === 'lastRibFatMm' ? 'fat' : at;

function shownRows(model: YieldModel, known: KnownCarcass, figures: FarmFigures | null) {
  const prediction = predictYields(model.breakdown, model.yields, known, figures?.belief ?? asPublished);
  const learnedOf = (id: string): string | null =>
    figures?.figures.find((figure) => figure.kind === 'share' && figure.id === id)?.says ?? null;
  const rows = usualRows(model.breakdown, prediction).map(
    ({ id, name, depth, percent, massMg, source }): ShownRow => ({
      id,
      name,
      depth,
      percent,
      meanMg: massMg.mean,
      leastMg: cautiousLow(massMg),
      from: source === null ? '' : (sources[source] ?? source),
      learned: learnedOf(id),
    }),
  );
  return { prediction, rows };
}

/** What an animal gives, or what is wrong with what is known of it. */
export function answerDraft(draft: YieldDraft, figures: FarmFigures | null): YieldAnswer {
  const model = yieldModelOf(draft.speciesId);
  const known = knownOf(draft);
  if (!model) return { faults: [{ at: 'species', says: words.yields.badSpecies }] };
  if ('at' in known) return { faults: [known] };
  const { faults, warnings } = checkKnown(model.species, model.yields, known);
  if (faults.length > 0) return { faults: faults.map(({ at, says }) => ({ at: fieldOf(at), says })) };
  const { prediction, rows } = shownRows(model, known, figures);
  return {
    chain: prediction.chain.map((step) => {
      const mg = { mean: step.grams.mean * 1000, sd: step.grams.sd * 1000 };
      return { ...step, lowMg: cautiousLow(mg), highMg: cautiousHigh(mg) };
    }),
    rows,
    ribs: prediction.ribs.filter(({ chance }) => chance >= 0.005),
    homes: model.takeHome.styles.map((style) => takeHome(model, prediction, style, 1)),
    warnings: warnings.map(({ says }) => says),
  };
}

export type LearnedFrom =
  | { readonly learned: Learned; readonly speciesId: string }
  | { readonly faults: readonly string[] };

/** What a file of measured sides teaches. */
export function learnFromFile(text: string): LearnedFrom {
  const parsed = parseMeasuredFile(text);
  if ('faults' in parsed)
    return { faults: parsed.faults.map(({ at, says, line }) => words.yields.fileFault(at, says, line)) };
  const model = yieldModelOf(parsed.species);
  if (!model) return { faults: [words.yields.badSpecies] };
  return { learned: learnYields(model.breakdown, model.yields, parsed.sides), speciesId: parsed.species };
}
