import { regionsOf } from '../regions.ts';
import type { Tools } from '../runs.ts';
import { type SideShape, shapeSide } from '../side-shape.ts';
import type { Portion, Species } from '../species.ts';
import { type Ending, StyleWalk, type Within } from '../take-home/kept-share.ts';
import { type TakeHome, takeHome } from '../take-home/take-home.ts';
import type { YieldModel } from '../take-home/yield-models.ts';
import { cautiousHigh, cautiousLow, type Estimate, product, rounded } from '../yield/estimate.ts';
import { predictYields, type YieldPrediction } from '../yield/predict-yields.ts';
import type { CutSheet, HalfSide } from './cut-sheet.ts';
import { countOf, type PieceRange, runsOfSheet } from './half-counts.ts';
import {
  cutOfPortion,
  type HalfAnswer,
  type HalfQuestion,
  leftWhole,
  questionsOnTheWay,
} from './half-questions.ts';

/** One thing that a side gives when it is cut so. */
export interface HalfLine extends Ending {
  readonly name: string;
  readonly massMg: Estimate;
  readonly lowMg: number;
  readonly highMg: number;
  /** of a stretch that is portioned: the cut, the portion, how many, and the share of its length they take up */
  readonly cut?: string;
  readonly portion?: Portion;
  readonly pieces?: PieceRange;
  readonly usedPercent?: number;
}

interface AnswerShown extends HalfAnswer {
  /** what comes of the part, zone or stretch that is asked about */
  readonly gives: readonly HalfLine[];
}

export interface QuestionShown extends Omit<HalfQuestion, 'answers'> {
  readonly answers: readonly AnswerShown[];
}

/** What becomes of a primal. */
interface HalfStep {
  readonly part: string;
  readonly name: string;
  readonly regions: readonly string[];
  readonly lowMg: number;
  readonly highMg: number;
  readonly questions: readonly QuestionShown[];
  readonly gives: readonly HalfLine[];
}

export interface HalfPreview {
  /** how the whole side is broken, where there is more than one way */
  readonly first: readonly QuestionShown[];
  readonly steps: readonly HalfStep[];
  readonly home: TakeHome;
  /** what stays with the shop, and what nobody has */
  readonly stays: readonly HalfLine[];
  readonly lost: readonly HalfLine[];
  readonly hangingMg: { readonly low: number; readonly high: number };
}

const spanOf = (massMg: Estimate): { lowMg: number; highMg: number } =>
  massMg.mean <= 0 || massMg.sd === 0
    ? { lowMg: massMg.mean, highMg: massMg.mean }
    : { lowMg: Math.round(cautiousLow(massMg)), highMg: Math.round(cautiousHigh(massMg)) };

/** The figures of a side in the dressing of the species' data: what is not there is counted as the data says. */
function predictHalf({ breakdown, yields }: YieldModel, side: HalfSide): YieldPrediction {
  const dressing = Object.fromEntries(yields.dressing.map(({ id, usuallyOn }) => [id, usuallyOn]));
  const known = { coldGrams: side.carcassGrams, ribs: side.ribs, dressing };
  return { ...predictYields(breakdown, yields, known), sideMg: side.massMg };
}

interface Basis {
  readonly model: YieldModel;
  readonly side: HalfSide;
  readonly tools: Tools;
  readonly prediction: YieldPrediction;
  readonly shape: SideShape;
}

const tableOf = ({ items, stocks, bulks }: Species, kind: Ending['kind']) =>
  ({ item: items, stock: stocks, bulk: bulks })[kind];

/** One sheet laid over one side. */
class CutSide {
  readonly walk: StyleWalk;
  readonly #basis: Basis;
  readonly #sheet: CutSheet;
  readonly #runs: ReturnType<typeof runsOfSheet>;

  constructor(basis: Basis, sheet: CutSheet) {
    const { model, side, prediction, shape } = basis;
    this.#basis = basis;
    this.#sheet = sheet;
    this.walk = new StyleWalk(model.breakdown, model.yields, prediction.shares, sheet, side);
    this.#runs = runsOfSheet(shape, sheet, this.walk.parts());
  }

  lines(within: Within): readonly HalfLine[] {
    return this.walk.endings(within).map((ending) => this.line(ending, within));
  }

  line(ending: Ending, within: Within | null): HalfLine {
    const { model, side } = this.#basis;
    const { species } = model;
    const share = this.walk.shareOf(({ kind, id }) => kind === ending.kind && id === ending.id, within);
    const massMg = rounded(product(side.massMg, share));
    const name = tableOf(species, ending.kind)[ending.id]?.name ?? ending.id;
    return { ...ending, name, massMg, ...spanOf(massMg), ...this.#portioned(ending) };
  }

  #portioned({ kind, id }: Ending): Pick<HalfLine, 'cut' | 'portion' | 'pieces' | 'usedPercent'> {
    const portion = kind === 'stock' ? this.#sheet.portions[id] : undefined;
    const runs = this.#runs.get(id);
    if (!portion || !runs) return {};
    const { model, tools } = this.#basis;
    const counted = countOf(model.yields, runs, portion, tools);
    const cut = cutOfPortion(model.species, id, portion);
    if (!counted || !cut || counted.usableUm === 0) return {};
    const { pieces, usedUm, usableUm } = counted;
    return { cut: cut.id, portion, pieces, usedPercent: Math.round((100 * usedUm) / usableUm) };
  }
}

function withAnswer(sheet: CutSheet, { about, id }: HalfQuestion, answer: HalfAnswer): CutSheet {
  if (about !== 'portions') return { ...sheet, [about]: { ...sheet[about], [id]: answer.id } };
  const { [id]: _, ...others } = sheet.portions;
  return {
    ...sheet,
    portions: answer.id === leftWhole || !answer.portion ? others : { ...others, [id]: answer.portion },
  };
}

function showQuestion(basis: Basis, sheet: CutSheet, question: HalfQuestion): QuestionShown {
  const answers = question.answers.map((answer): AnswerShown => {
    if (answer.lacks.length > 0) return { ...answer, gives: [] };
    const cut = new CutSide(basis, withAnswer(sheet, question, answer));
    const gives =
      question.about === 'portions'
        ? [cut.line({ kind: 'stock', id: question.id }, null)]
        : cut.lines(question.within);
    return { ...answer, gives };
  });
  return { ...question, answers };
}

/** The side itself, if it may be broken in more than one way, then each part it is broken into. */
function stepParts({ model: { species } }: Basis, sheet: CutSheet): readonly string[] {
  const root = species.parts[species.sideRoot];
  if (root?.kind !== 'primal') return [];
  const said = sheet.operations[root.id];
  const operation = root.operations.find(({ id }) => id === said) ?? root.operations[0];
  return (operation?.outputs ?? []).filter(({ to }) => to === 'part').map(({ id }) => id);
}

/** Parts on the way below one part of it. */
function partsBelow(basis: Basis, walk: StyleWalk, top: string): ReadonlySet<string> {
  const onTheWay = new Set(walk.parts());
  const found = new Set([top]);
  for (const part of onTheWay) {
    const data = basis.model.species.parts[part];
    if (!found.has(part) || data?.kind !== 'primal') continue;
    for (const { outputs } of data.operations)
      for (const { to, id } of outputs) if (to === 'part' && onTheWay.has(id)) found.add(id);
  }
  return found;
}

/**
 * What one side comes to, primal by primal, cut as a sheet says: what each answer gives, takes away and leaves; what goes
 * home and what stays. Pure, and from the species' data alone.
 * @param leaves items and bulk that stay with the shop
 */
export function previewHalf(
  model: YieldModel,
  side: HalfSide,
  wish: { readonly sheet: CutSheet; readonly leaves: readonly string[] },
  tools: Tools,
): HalfPreview {
  const { sheet, leaves } = wish;
  const { species } = model;
  const prediction = predictHalf(model, side);
  const { mean } = side.massMg;
  const facts = { sideId: '', animalId: '', hand: 'left', massMg: Math.round(mean), lostParts: [] } as const;
  const shape = shapeSide(species, { ...side, ...facts });
  const basis: Basis = { model, side, tools, prediction, shape };
  const cut = new CutSide(basis, sheet);
  const questions = questionsOnTheWay(species, side.facts, sheet, cut.walk);
  const stepOf = (part: string): HalfStep => {
    const below = partsBelow(basis, cut.walk, part);
    const massMg = rounded(
      product(
        side.massMg,
        cut.walk.shareOf(() => true, { part }),
      ),
    );
    const data = species.parts[part];
    return {
      part,
      name: data?.name ?? part,
      regions: data ? regionsOf(data) : [],
      ...spanOf(massMg),
      questions: questions
        .filter(({ within }) => below.has(within.part))
        .map((question) => showQuestion(basis, sheet, question)),
      gives: cut.lines({ part }),
    };
  };
  const own = { id: 'own', name: '', says: '', ...sheet, declines: leaves };
  const home = takeHome(model, prediction, own, 1, { animal: side });
  const asLine = ({ kind, id }: Ending): HalfLine => cut.line({ kind, id }, null);
  const { lowMg, highMg } = spanOf(side.massMg);
  return {
    first: questions
      .filter(({ within }) => within.part === species.sideRoot)
      .map((question) => showQuestion(basis, sheet, question)),
    steps: stepParts(basis, sheet).map(stepOf),
    home,
    stays: home.declined.map(asLine),
    lost: home.lost.map(asLine),
    hangingMg: { low: Math.round(lowMg), high: Math.round(highMg) },
  };
}
