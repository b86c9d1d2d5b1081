import {
  footprint,
  isOutputLost,
  lostRegions,
  mannerShares,
  type Portion,
  type Primal,
  type SideFacts,
  type Species,
  splitExactly,
  type ZoneShape,
} from '@flitchbook/carcass';
import {
  acceptable,
  askedGrams,
  askedPieces,
  type BarPlan,
  type CarcassShare,
  type CuttingDay,
  type CuttingPlan,
  type ItemPiece,
  type LineFill,
  type Owner,
  type RunPlan,
  type SidePlan,
  type SinglePiece,
  type SpanPiece,
  sheetFor,
} from '@flitchbook/plan';
import type {
  BarNode,
  Decision,
  PrimalNode,
  Problem,
  RunChoice,
  RunOption,
  UnitDecision,
} from './problem.ts';
import { releasesOf } from './tree.ts';

/** Who is still to be served from each product, in the order of the book. */
class Queue {
  readonly #waiting = new Map<number, { lineId: string; cut: string; portion: Portion }[]>();

  constructor(problem: Problem, decision: Decision) {
    for (const [index, demand] of problem.demands.entries()) {
      const given = decision.assignment.pieces.filter((entry) => entry.demand === index);
      const slots = given.flatMap((entry) => Array<number>(entry.count).fill(entry.option));
      for (const line of demand.lines) {
        for (const option of slots.splice(0, askedPieces(line))) {
          const { product, step } = demand.options[option] as { product: number; step: number };
          const wanted = acceptable(line)[step];
          if (!wanted) continue;
          const waiting = this.#waiting.get(product) ?? [];
          waiting.push({ lineId: line.lineId, cut: wanted.cut, portion: wanted.portion });
          this.#waiting.set(product, waiting);
        }
      }
    }
  }

  next(product: number): { lineId: string; cut: string; portion: Portion } | undefined {
    return this.#waiting.get(product)?.shift();
  }
}

interface LaidPiece {
  readonly cut: string;
  readonly portion: Portion;
  readonly pieceUm: number;
  readonly takesUm: number;
  readonly owner: Owner;
}

const layingOrder: Record<Portion['by'], number> = { ribs: 0, thickness: 1, weight: 2, whole: 3, bulk: 4 };

/** Pieces counted in ribs lie first, so that they start and end between bones; then slices, then joints by weight. */
const byLayingOrder = (left: LaidPiece, right: LaidPiece): number =>
  layingOrder[left.portion.by] - layingOrder[right.portion.by] || right.pieceUm - left.pieceUm;

class SideDecoder {
  readonly #problem: Problem;
  readonly #decision: UnitDecision;
  readonly #queue: Queue;
  readonly #side: SideFacts;
  readonly #species: Species;
  readonly #lost: ReadonlySet<string>;
  readonly #items: ItemPiece[] = [];
  readonly #bars: BarPlan[] = [];
  readonly #operations: Record<string, string> = {};
  readonly #bulkMg: Record<string, number> = {};
  #minutes = 0;

  constructor(problem: Problem, decision: UnitDecision, queue: Queue) {
    this.#problem = problem;
    this.#decision = decision;
    this.#queue = queue;
    this.#side = decision.unit.side as SideFacts;
    this.#species = problem.day.species[this.#group.speciesId] as Species;
    this.#lost = lostRegions(this.#species, this.#side.lostParts);
  }

  decode(): SidePlan {
    this.#visit(0, this.#side.massMg);
    return {
      sideId: this.#side.sideId,
      animalId: this.#side.animalId,
      shareId: this.#decision.share?.shareId ?? null,
      massMg: this.#side.massMg,
      operations: this.#operations,
      items: this.#items,
      bars: this.#bars,
      bulkMg: this.#bulkMg,
      minutes: this.#minutes,
    };
  }

  get #group() {
    return this.#problem.classes[this.#decision.classIndex] as Problem['classes'][number];
  }

  #visit(index: number, massMg: number): void {
    const node = this.#group.nodes[index];
    if (node?.kind === 'primal') this.#primal(node, index, massMg);
    else if (node?.kind === 'bar') this.#bar(node, index, massMg);
    else this.#addBulk('lost', massMg);
  }

  #primal(node: PrimalNode, index: number, massMg: number): void {
    const choice = node.choices[this.#decision.choices.get(index) ?? 0] as PrimalNode['choices'][number];
    const masses = splitExactly(
      massMg,
      choice.operation.outputs.map((output) => output.parts),
    );
    const part = this.#species.parts[node.partId] as Primal;
    this.#operations[node.partId] = choice.operation.id;
    this.#minutes += choice.operation.minutes;
    let opened = 0;
    choice.operation.outputs.forEach((output, at) => {
      const mine = masses[at] as number;
      if (output.to === 'part') this.#visit(choice.opens[opened++] as number, mine);
      else if (isOutputLost(this.#species, part, choice.operation, output, this.#lost))
        this.#addBulk('lost', mine);
      else if (output.to === 'item') this.#addItem(index, node.partId, output.id, mine);
      else this.#addBulk(output.id, mine);
    });
  }

  #addItem(node: number, from: string, item: string, massMg: number): void {
    const label = this.#decision.labels.get(`${node}/${item}`);
    const served = label === undefined ? undefined : this.#queue.next(label);
    const owner: Owner = this.#decision.share
      ? { shareId: this.#decision.share.shareId }
      : served
        ? { lineId: served.lineId }
        : null;
    this.#items.push({ pieceId: `${this.#side.sideId}:${from}:${item}`, item, from, massMg, owner });
  }

  #addBulk(bulk: string, massMg: number): void {
    if (massMg > 0) this.#bulkMg[bulk] = (this.#bulkMg[bulk] ?? 0) + massMg;
  }

  #bar(node: BarNode, index: number, massMg: number): void {
    const layout = node.layouts[this.#decision.choices.get(index) ?? 0] as BarNode['layouts'][number];
    const runs = layout.runs.map((run) => node.runs[run] as RunChoice);
    const shapes = new Map<string, ZoneShape>(
      runs.flatMap(({ run }) =>
        run.stretches.map((stretch) => [stretch.zone.zone.id, stretch.zone] as const),
      ),
    );
    const zoneShapes = node.zones.map((zone) => shapes.get(zone) as ZoneShape);
    const zoneMg = splitExactly(
      massMg,
      zoneShapes.map((zone) => zone.zone.mass.parts),
    );
    const keptMg = new Map<string, number>();
    layout.ways.forEach((way, at) => {
      const { zone } = zoneShapes[at] as ZoneShape;
      const stretchMg = splitExactly(
        zoneMg[at] as number,
        way.map((stretch) => stretch.toStation - stretch.fromStation),
      );
      way.forEach((stretch, which) => {
        const shares = splitExactly(
          stretchMg[which] as number,
          mannerShares(stretch.manner).map((share) => share.parts),
        );
        keptMg.set(`${zone.id}${stretch.fromStation}`, shares[0] as number);
        releasesOf({ ...stretch, zone: zoneShapes[at] as ZoneShape }).forEach((release, nth) => {
          if (release.to === 'item') this.#addItem(index, node.partId, release.id, shares[nth + 1] as number);
          else this.#addBulk(release.id, shares[nth + 1] as number);
        });
        this.#minutes += stretch.manner.minutes;
      });
    });
    const plans = runs.map((choice, at): RunPlan => {
      const runMg = choice.run.stretches.reduce(
        (sum, stretch) => sum + (keptMg.get(`${stretch.zone.zone.id}${stretch.fromStation}`) as number),
        0,
      );
      return this.#run(node, choice, runMg, this.#pieces(index, layout.runs[at] as number, choice));
    });
    this.#bars.push({ bar: node.partId, runs: plans });
  }

  #pieces(node: number, run: number, choice: RunChoice): LaidPiece[] {
    const share = this.#decision.share;
    if (share) return piecesOfShare(this.#problem.day, this.#side, share, choice);
    const counts = this.#decision.pieces.get(node)?.get(run) ?? new Map<number, number>();
    const laid: LaidPiece[] = [];
    for (const [product, count] of counts) {
      const option = choice.options.find((candidate) => candidate.product === product) as RunOption;
      for (let nth = 0; nth < count; nth++) {
        const served = this.#queue.next(product);
        if (served)
          laid.push({
            ...option,
            cut: served.cut,
            portion: served.portion,
            owner: { lineId: served.lineId },
          });
      }
    }
    return laid;
  }

  #run(node: BarNode, { run }: RunChoice, runMg: number, pieces: readonly LaidPiece[]): RunPlan {
    const ordered = [...pieces].sort(byLayingOrder);
    const takenUm = ordered.reduce((sum, piece) => sum + piece.takesUm, 0);
    const kerfUm = ordered.reduce((sum, piece) => sum + piece.takesUm - piece.pieceUm, 0);
    const freeUm = run.usableUm - takenUm;
    const masses = splitExactly(runMg, [...ordered.map((piece) => piece.pieceUm), kerfUm, freeUm]);
    this.#addBulk('loss', masses[ordered.length] as number);
    let atUm = run.fromUm;
    const spans = ordered.map(({ cut, portion, pieceUm, takesUm, owner }, nth): SpanPiece => {
      const piece = {
        pieceId: `${this.#side.sideId}:${node.partId}:${atUm}`,
        cut,
        portion,
        fromUm: atUm,
        toUm: atUm + pieceUm,
        massMg: masses[nth] as number,
        owner,
      };
      atUm += takesUm;
      return piece;
    });
    return {
      stock: run.stock,
      stretches: run.stretches.map(({ zone, manner, fromStation, toStation }) => ({
        zone: zone.zone.id,
        manner: manner.id,
        fromStation,
        toStation,
      })),
      fromUm: run.fromUm,
      toUm: run.toUm,
      usableUm: run.usableUm,
      pieces: spans,
      freeUm,
      freeMg: masses[ordered.length + 1] as number,
    };
  }
}

/** A run of a customer's own side: as many of the asked portion as fit, or left whole. */
function piecesOfShare(
  day: CuttingDay,
  side: SideFacts,
  share: CarcassShare,
  { run }: RunChoice,
): LaidPiece[] {
  const portion = sheetFor(share, side.hand).portions[run.stock];
  if (!portion) return [];
  const cuts = Object.values(day.species[share.speciesId]?.cuts ?? {});
  const cut = cuts.find(
    (candidate) =>
      candidate.sources.some((source) => source.from === 'stock' && source.id === run.stock) &&
      candidate.portions.some((rule) => rule.by === portion.by),
  );
  const print = footprint(
    { tool: run.tool, pitchUm: run.pitchUm, densityMgPerUm: run.massMg / run.usableUm },
    portion,
    day.tools,
  );
  if (!cut || !print || print.pieceUm <= 0 || side.massMg <= 0) return [];
  const count = Math.floor(run.usableUm / print.takesUm);
  return Array.from({ length: count }, () => ({
    ...print,
    cut: cut.id,
    portion,
    owner: { shareId: share.shareId },
  }));
}

function decodeSingles(problem: Problem, decision: UnitDecision, queue: Queue): SinglePiece[] {
  const group = problem.classes[decision.classIndex];
  const species = problem.day.species[group?.speciesId ?? ''];
  const grams = new Map(
    (species?.singles ?? [])
      .flatMap((single) => [single, ...(single.apart ?? [])])
      .map(({ item, meanGrams }) => [item, meanGrams]),
  );
  return (group?.nodes ?? []).flatMap((node, index) => {
    const chosen = node.kind === 'primal' ? node.choices[decision.choices.get(index) ?? 0]?.items : undefined;
    const items = node.kind === 'singles' ? node.items : (chosen ?? []);
    return items.map(({ item }): SinglePiece => {
      const label = decision.labels.get(`${index}/${item}`);
      const served = label === undefined || decision.share ? undefined : queue.next(label);
      return {
        pieceId: `${decision.unit.animalId}:${item}`,
        animalId: decision.unit.animalId,
        item,
        massMg: (grams.get(item) ?? 0) * 1000,
        owner: decision.share
          ? { shareId: decision.share.shareId }
          : served
            ? { lineId: served.lineId }
            : null,
      };
    });
  });
}

function ownedPieces(
  sides: readonly SidePlan[],
  singles: readonly SinglePiece[],
): ReadonlyMap<string, string[]> {
  const owned = new Map<string, string[]>();
  const note = ({ pieceId, owner }: { readonly pieceId: string; readonly owner: Owner }): void => {
    if (owner && 'lineId' in owner) owned.set(owner.lineId, [...(owned.get(owner.lineId) ?? []), pieceId]);
  };
  for (const side of sides) {
    side.items.forEach(note);
    for (const bar of side.bars) for (const run of bar.runs) run.pieces.forEach(note);
  }
  singles.forEach(note);
  return owned;
}

/** Grams of bulk for each line, never more than the sides without a share weigh: shares of masses round to milligrams. */
function giveBulk(
  problem: Problem,
  decision: Decision,
  sides: readonly SidePlan[],
): ReadonlyMap<string, number> {
  const speciesOf = new Map(problem.day.animals.map((animal) => [animal.animalId, animal.speciesId]));
  const leftMg = new Map<string, number>();
  for (const side of sides) {
    if (side.shareId !== null) continue;
    for (const [bulk, mg] of Object.entries(side.bulkMg)) {
      const key = `${speciesOf.get(side.animalId)}:${bulk}`;
      leftMg.set(key, (leftMg.get(key) ?? 0) + mg);
    }
  }
  const given = new Map<string, number>();
  for (const { demand, grams } of decision.assignment.bulk) {
    const { line, bulk } = problem.bulkDemands[demand] as Problem['bulkDemands'][number];
    const key = problem.outlets.bulks[bulk]?.key ?? '';
    const mine = Math.min(grams, Math.floor((leftMg.get(key) ?? 0) / 1000));
    leftMg.set(key, (leftMg.get(key) ?? 0) - mine * 1000);
    given.set(line.lineId, mine);
  }
  return given;
}

/** Turns what a solver decided into a plan. Shortfalls are left for the explanation to fill in. */
export function decode(problem: Problem, decision: Decision): CuttingPlan {
  const queue = new Queue(problem, decision);
  const sides = decision.units
    .filter(({ unit }) => unit.side !== null)
    .map((unit) => new SideDecoder(problem, unit, queue).decode());
  const singles = decision.units
    .filter(({ unit }) => unit.side === null)
    .flatMap((unit) => decodeSingles(problem, unit, queue));
  const owned = ownedPieces(sides, singles);
  const bulkGiven = giveBulk(problem, decision, sides);
  const lines = problem.day.lines.map((line): LineFill => {
    const pieceIds = owned.get(line.lineId) ?? [];
    const bulkGrams = bulkGiven.get(line.lineId) ?? 0;
    const asked = askedPieces(line) || askedGrams(line);
    return {
      lineId: line.lineId,
      asked,
      filled: askedPieces(line) > 0 ? pieceIds.length : bulkGrams,
      pieceIds,
      bulkGrams,
      shortfall: null,
    };
  });
  const shares = problem.day.shares.map(({ shareId }) => ({
    shareId,
    sideIds: sides.filter((side) => side.shareId === shareId).map(({ sideId }) => sideId),
    shortfall: null,
  }));
  return { dayId: problem.day.dayId, sides, singles, lines, shares, proof: null };
}
