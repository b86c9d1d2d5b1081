import type { Breakdown } from '../yield/breakdown.ts';
import type { KnownCarcass, KnownFault } from '../yield/known-carcass.ts';
import { checkKnown } from '../yield/known-carcass.ts';
import type { YieldProfile } from '../yield/yield-profile.ts';

/** A side as it was weighed on the bench. */
export interface MeasuredSide {
  readonly sideId: string;
  readonly farm: string;
  readonly known: KnownCarcass;
  readonly sideGrams: number;
  /** parts, items and bulk by id, any of them; a part may stand beside what was made of it */
  readonly weighed: readonly { readonly id: string; readonly grams: number }[];
  /** everything else of the side, loss included; left out where not all was weighed */
  readonly restGrams?: number;
  /** pieces that a whole stock was cut into */
  readonly slices: readonly {
    readonly stock: string;
    readonly thicknessUm: number;
    readonly kerfUm: number;
    readonly pieces: number;
  }[];
}

/** How far a fully weighed side may be off: scales, drip and scraps on the block. */
const toleratedPercent = 1;
/** A side of a carcass weighs half of it, give or take the split. */
const sidePercent = { min: 40, max: 60 } as const;

/** Ids that lie inside a part, on any way of cutting. */
type Insides = ReadonlyMap<string, ReadonlySet<string>>;

/** What lies inside each part of a species: worked out once, used for each side. */
export function insidesOf({ parts, outputs, partAt }: Breakdown): Insides {
  const inside = new Map<string, Set<string>>();
  const look = (index: number): ReadonlySet<string> => {
    const { id, operations } = parts[index] as Breakdown['parts'][number];
    const seen = inside.get(id);
    if (seen) return seen;
    const mine = new Set<string>();
    inside.set(id, mine);
    for (const { from, to } of operations) {
      for (const output of outputs.slice(from, to)) {
        // Trim and fat come from everywhere: a pool of them is never a piece of one part.
        if (output.to === 'bulk') continue;
        mine.add(output.id);
        const made = partAt.get(output.id);
        if (made !== undefined) for (const deeper of look(made)) mine.add(deeper);
      }
    }
    return mine;
  };
  parts.forEach((_, index) => {
    look(index);
  });
  return inside;
}

const kg = (grams: number): string => `${(grams / 1000).toFixed(2)} kg`;

function weightFaults(breakdown: Breakdown, side: MeasuredSide): KnownFault[] {
  const faults: KnownFault[] = [];
  const ids = new Set(breakdown.outputs.map(({ id }) => id));
  const seen = new Set<string>();
  for (const { id, grams } of side.weighed) {
    const at = `weighed.${id}`;
    if (!ids.has(id)) faults.push({ at, value: id, says: `a ${breakdown.species.name} has no ${id}` });
    if (seen.has(id)) faults.push({ at, value: id, says: 'is weighed twice: add the weights up' });
    if (!Number.isSafeInteger(grams) || grams <= 0)
      faults.push({ at, value: grams, says: 'must be a whole number of grams above 0' });
    seen.add(id);
  }
  for (const [turn, { pieces, thicknessUm, kerfUm }] of side.slices.entries()) {
    const whole = Number.isInteger(pieces) && pieces > 0 && thicknessUm > 0 && kerfUm >= 0;
    if (!whole)
      faults.push({
        at: `slices[${turn}].pieces`,
        value: pieces,
        says: 'must be a number of whole pieces above 0',
      });
  }
  return faults;
}

function carcassFaults(side: MeasuredSide): KnownFault[] {
  const { coldGrams, hotGrams } = side.known;
  const hanging = coldGrams ?? hotGrams;
  if (!Number.isSafeInteger(side.sideGrams) || side.sideGrams <= 0)
    return [{ at: 'sideGrams', value: side.sideGrams, says: 'must be a whole number of grams above 0' }];
  if (hanging === undefined) return [];
  const percent = (100 * side.sideGrams) / hanging;
  if (percent >= sidePercent.min && percent <= sidePercent.max) return [];
  const says = `a side of ${kg(side.sideGrams)} is ${percent.toFixed(0)} % of its carcass: one of the weights is wrong`;
  return [{ at: 'sideGrams', value: side.sideGrams, says }];
}

/** What was weighed against the side: inner pieces against the part they came from, the rest against the whole. */
function balanceFaults(inside: Insides, side: MeasuredSide): KnownFault[] {
  const faults: KnownFault[] = [];
  for (const { id, grams } of side.weighed) {
    const inner = side.weighed.filter((other) => inside.get(id)?.has(other.id));
    const heaviest = inner.find((other) => other.grams > grams * (1 + toleratedPercent / 100));
    if (heaviest)
      faults.push({
        at: heaviest.id,
        value: heaviest.grams,
        says: `weighs more than ${id}, of which it is a piece (${kg(grams)})`,
      });
  }
  const outer = side.weighed.filter(({ id }) => !side.weighed.some((other) => inside.get(other.id)?.has(id)));
  const sum = outer.reduce((running, { grams }) => running + grams, 0) + (side.restGrams ?? 0);
  const percent = (100 * sum) / side.sideGrams;
  const over = percent > 100 + toleratedPercent;
  const short = side.restGrams !== undefined && percent < 100 - toleratedPercent;
  if (over || short)
    faults.push({
      at: 'weighed',
      value: sum,
      says: `the side does not balance: ${kg(sum)} of ${kg(side.sideGrams)} is ${percent.toFixed(1)} %`,
    });
  return faults;
}

/** Why nothing may be learned from a side; empty where something may. */
export function checkMeasured(
  breakdown: Breakdown,
  profile: YieldProfile,
  side: MeasuredSide,
  inside: Insides = insidesOf(breakdown),
): readonly KnownFault[] {
  const known = { ...side.known, coldGrams: side.known.coldGrams ?? 2 * side.sideGrams };
  const faults = [
    ...checkKnown(breakdown.species, profile, known).faults,
    ...weightFaults(breakdown, side),
    ...carcassFaults(side),
  ];
  return faults.length > 0 ? faults : balanceFaults(inside, side);
}
