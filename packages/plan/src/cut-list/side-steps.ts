import {
  allowedOperations,
  type Bar,
  isPartLost,
  lostRegions,
  type Output,
  type Primal,
  type SideFacts,
  type Species,
} from '@flitchbook/carcass';
import { lossBulk, lostBulk } from '../check-plan/walk-operations.ts';
import type { BarPlan, ItemPiece, RunPlan, SidePlan } from '../cutting-plan.ts';
import { lengthText, portionText, type ShownIn, weightText } from '../measures.ts';
import { listNames, type OwnerNames } from './owners.ts';

/** One piece as the bench and the counter read it. */
export interface CutListPiece {
  readonly pieceId: string;
  readonly name: string;
  readonly size: string;
  readonly massMg: number;
  /** null: nobody yet, for the counter */
  readonly owner: string | null;
  /** place on its bar, um from the head end; absent for pieces that leave whole */
  readonly fromUm?: number;
  readonly toUm?: number;
}

/** One thing to do, in its turn. */
export interface CutStep {
  /** null for what belongs to the animal and to no side */
  readonly sideId: string | null;
  /** 1, 2, 3 ... on each side */
  readonly order: number;
  /** part, bar or bulk id */
  readonly part: string;
  readonly action: string;
  readonly detail: string;
  readonly pieces: readonly CutListPiece[];
  /** where what comes off goes */
  readonly to: string;
}

type Draft = Omit<CutStep, 'sideId' | 'order'>;

export interface SideWork {
  readonly species: Species;
  readonly facts: SideFacts;
  readonly plan: SidePlan;
  readonly names: OwnerNames;
  readonly shown: ShownIn;
}

interface Place {
  readonly parts: string[];
  readonly lost: string[];
}

/** Parts that the chosen operations make, from the whole side down, and those set aside on the way. */
function walk(work: SideWork, partId: string, found: Place): Place {
  const { species, facts, plan } = work;
  const part = species.parts[partId];
  if (part && isPartLost(part, lostRegions(species, facts.lostParts))) {
    found.lost.push(partId);
    return found;
  }
  found.parts.push(partId);
  const operation =
    part?.kind === 'primal' ? part.operations.find(({ id }) => id === plan.operations[partId]) : undefined;
  for (const output of operation?.outputs ?? []) if (output.to === 'part') walk(work, output.id, found);
  return found;
}

const itemPiece = ({ species, names, shown }: SideWork, piece: ItemPiece): CutListPiece => ({
  pieceId: piece.pieceId,
  name: species.items[piece.item]?.name ?? piece.item,
  size: `about ${weightText(piece.massMg, shown)}`,
  massMg: piece.massMg,
  owner: names.of(piece.owner),
});

function nameOf(species: Species, { to, id }: Output): string {
  if (to === 'part') return species.parts[id]?.name ?? id;
  return (to === 'item' ? species.items[id]?.name : species.bulks[id]?.name) ?? id;
}

function operationStep(work: SideWork, part: Primal): Draft {
  const operation = allowedOperations(part, work.facts).find(
    ({ id }) => id === work.plan.operations[part.id],
  );
  const pieces = work.plan.items
    .filter(({ from }) => from === part.id)
    .map((piece) => itemPiece(work, piece));
  const others = (operation?.outputs ?? [])
    .filter(({ to, id }) => to !== 'item' && id !== lossBulk)
    .map((output) => nameOf(work.species, output));
  return {
    part: part.id,
    action: operation?.name ?? part.name,
    detail: operation?.says ?? '',
    pieces,
    to: others.join('; '),
  };
}

/** Neighbouring pieces alike are said once: "4 Bone-in rib chop of 1 in for Ann". */
function inGroups(pieces: readonly CutListPiece[]): string[] {
  const groups: { readonly first: CutListPiece; count: number }[] = [];
  for (const piece of pieces) {
    const last = groups.at(-1);
    if (
      last &&
      last.first.name === piece.name &&
      last.first.size === piece.size &&
      last.first.owner === piece.owner
    )
      last.count += 1;
    else groups.push({ first: piece, count: 1 });
  }
  return groups.map(
    ({ first, count }) => `${count} × ${first.name}, ${first.size}, for ${listNames([first.owner])}`,
  );
}

function placeText(run: RunPlan, { shown }: SideWork): string {
  const bones = run.stretches.reduce((sum, { fromStation, toStation }) => sum + toStation - fromStation, 0);
  const place = `From ${lengthText(run.fromUm, shown, 8)} to ${lengthText(run.toUm, shown, 8)} from the head end`;
  const drawsUp =
    run.usableUm < run.toUm - run.fromUm ? `; ${lengthText(run.usableUm, shown, 8)} once it is boned` : '';
  return `${place}, ${bones === 1 ? 'one block' : `${bones} bones`}${drawsUp}.`;
}

function runStep(work: SideWork, bar: Bar, run: RunPlan): Draft {
  const { species, names, shown, plan } = work;
  const cut = run.stretches.map((stretch) => {
    const zone = bar.zones.find(({ id }) => id === stretch.zone);
    const manner = zone?.manners.find(({ id }) => id === stretch.manner);
    return {
      zone: zone?.name ?? stretch.zone,
      manner: manner?.name ?? stretch.manner,
      releases: manner?.releases ?? [],
    };
  });
  const released = new Set(
    cut.flatMap(({ releases }) => releases.filter(({ to }) => to === 'item').map(({ id }) => id)),
  );
  const items = plan.items
    .filter(({ from, item }) => from === bar.id && released.has(item))
    .map((piece) => itemPiece(work, piece));
  const spans = run.pieces.map(
    (piece): CutListPiece => ({
      pieceId: piece.pieceId,
      name: species.cuts[piece.cut]?.name ?? piece.cut,
      size: portionText(piece.portion, shown),
      massMg: piece.massMg,
      owner: names.of(piece.owner),
      fromUm: piece.fromUm,
      toUm: piece.toUm,
    }),
  );
  const free =
    run.freeUm === 0
      ? []
      : [`Leave ${lengthText(run.freeUm, shown, 8)} whole, about ${weightText(run.freeMg, shown)}.`];
  const owners = [
    ...[...items, ...spans].map(({ owner }) => owner),
    ...(run.freeUm === 0 ? [] : [names.ofShare(plan.shareId)]),
  ];
  return {
    part: bar.id,
    action: `${cut.map(({ zone }) => zone).join(' and ')}: ${[...new Set(cut.map(({ manner }) => manner))].join(', ')}`,
    detail: [placeText(run, work), ...inGroups(spans).map((group) => `${group}.`), ...free].join(' '),
    pieces: [...items, ...spans],
    to: listNames(owners),
  };
}

const barSteps = (work: SideWork, plan: BarPlan): Draft[] => {
  const bar = work.species.parts[plan.bar];
  return bar?.kind === 'bar' ? plan.runs.map((run) => runStep(work, bar, run)) : [];
};

function lostStep({ species, shown, plan }: SideWork, lost: readonly string[]): Draft[] {
  if (lost.length === 0) return [];
  const names = lost.map((part) => species.parts[part]?.name ?? part).join(', ');
  return [
    {
      part: lost.join(' '),
      action: `Set aside: ${names}`,
      detail: `Lost: damaged or condemned, about ${weightText(plan.bulkMg[lostBulk] ?? 0, shown)}.`,
      pieces: [],
      to: 'what is set aside',
    },
  ];
}

/** Trim by kind, last: what is gathered in the tubs. Saw dust and shrink can't be gathered. */
function bulkSteps({ species, names, shown, plan }: SideWork): Draft[] {
  return Object.values(species.bulks)
    .filter(({ id }) => id !== lossBulk && id !== lostBulk && (plan.bulkMg[id] ?? 0) > 0)
    .map(({ id, name, says }) => ({
      part: id,
      action: `Gather ${name.toLowerCase()}`,
      detail: [`About ${weightText(plan.bulkMg[id] ?? 0, shown)}.`, says ?? []].flat().join(' '),
      pieces: [],
      to: names.ofShare(plan.shareId) ?? 'the pool of the day',
    }));
}

/** Parts of one side in the order of the bench. */
function inBenchOrder({ bench }: Species, parts: readonly string[]): string[] {
  const first = bench.filter((part) => parts.includes(part));
  return [...first, ...parts.filter((part) => !bench.includes(part))];
}

/** Everything to do on one side, in bench order. */
export function sideSteps(work: SideWork): CutStep[] {
  const { parts, lost } = walk(work, work.species.sideRoot, { parts: [], lost: [] });
  const cuts = inBenchOrder(work.species, parts).flatMap((partId): Draft[] => {
    const part = work.species.parts[partId];
    if (part?.kind === 'primal') return [operationStep(work, part)];
    return work.plan.bars.filter(({ bar }) => bar === partId).flatMap((bar) => barSteps(work, bar));
  });
  return [...cuts, ...lostStep(work, lost), ...bulkSteps(work)].map((draft, index) => ({
    sideId: work.plan.sideId,
    order: index + 1,
    ...draft,
  }));
}
