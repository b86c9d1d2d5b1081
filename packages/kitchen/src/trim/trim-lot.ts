import { readingToGrams, type ScaleReading, splitExactly } from '@flitchbook/carcass';
import { daysFromTo, isDate } from '../dates.ts';
import { FaultList, type KitchenFault } from '../faults.ts';

/** Millionths: 28 % fat is 280 000. */
const whole = 1_000_000;

/** A kind of trim, fat, bone or skin, as a cutting plan pools it. Kinds never mix by themselves. */
export interface TrimKind {
  readonly id: string;
  readonly name: string;
  /** where nobody has measured it */
  readonly fatPpm: number;
  readonly source: string;
  readonly standing: 'second-hand' | 'memory';
}

const forum = 'Sausage-making forum, measured samples';

/** Of a hog. Bone, cartilage and skin are no meat and have no place here. Leaf fat is a kind of its own. */
export const usualTrimKinds: readonly TrimKind[] = [
  {
    id: 'trim',
    name: 'Lean trim',
    fatPpm: 280_000,
    source: `${forum}: sorted by eye as four fifths lean, it was 28.0 %`,
    standing: 'second-hand',
  },
  {
    id: 'fat-trim',
    name: 'Fat trim',
    fatPpm: 600_000,
    source: 'From memory: measure your own',
    standing: 'memory',
  },
  {
    id: 'back-fat',
    name: 'Hard back fat',
    fatPpm: 786_000,
    source: `${forum}: 78.6 %`,
    standing: 'second-hand',
  },
  {
    id: 'leaf-fat',
    name: 'Leaf fat',
    fatPpm: 900_000,
    source: 'From memory: measure your own',
    standing: 'memory',
  },
];

/** Trim of one kind from one side, as it lies in its tub. */
export interface TrimLot {
  readonly lotId: string;
  readonly kind: string;
  readonly species: string;
  readonly animalId: string;
  /** the customer whose meat it is; null is the shop's */
  readonly ownerId: string | null;
  /** the owner agreed to have it ground with that of other owners who agreed */
  readonly mayPool: boolean;
  readonly massMg: number;
  readonly fatPpm: number;
  readonly fatFrom: 'book' | 'measured';
  /** local date on which it was cut */
  readonly cutOn: string;
  readonly weight: 'predicted' | 'scale';
  /** what it would bring otherwise, minor units a kilogram */
  readonly costMinorPerKg: number;
}

/** What the kitchen needs of a side in a cutting plan. */
export interface TrimmedSide {
  readonly sideId: string;
  readonly animalId: string;
  readonly species: string;
  readonly ownerId: string | null;
  readonly mayPool: boolean;
  /** bulk id to milligrams */
  readonly bulkMg: Readonly<Record<string, number>>;
}

/** The trim that tomorrow's plan will make: a lot for each side and kind. What is no kind of trim is left out. */
export function predictTrim(
  sides: readonly TrimmedSide[],
  kinds: readonly TrimKind[],
  cutOn: string,
  costMinorPerKg: Readonly<Record<string, number>>,
): TrimLot[] {
  return sides.flatMap(({ sideId, animalId, species, ownerId, mayPool, bulkMg }) =>
    kinds.flatMap(({ id, fatPpm }) => {
      const massMg = bulkMg[id] ?? 0;
      if (massMg === 0) return [];
      const lot: TrimLot = {
        lotId: `${sideId}/${id}`,
        kind: id,
        species,
        animalId,
        ownerId,
        mayPool,
        massMg,
        fatPpm,
        fatFrom: 'book',
        cutOn,
        weight: 'predicted',
        costMinorPerKg: costMinorPerKg[id] ?? 0,
      };
      return [lot];
    }),
  );
}

export interface TrimReading {
  readonly lotId: string;
  readonly reading: ScaleReading;
  /** where the fat was measured too */
  readonly fatPpm?: number;
}

/**
 * What the scale said in place of what the plan foretold.
 * @returns all lots, and by how much each weighed one differs; or faults, and then nothing is changed
 */
export function weighTrim(
  lots: readonly TrimLot[],
  readings: readonly TrimReading[],
):
  | {
      readonly lots: TrimLot[];
      readonly differences: readonly { readonly lotId: string; readonly byMg: number }[];
    }
  | { readonly faults: readonly KitchenFault[] } {
  const list = new FaultList();
  const read = new Map<string, { massMg: number; fatPpm: number | undefined }>();
  for (const [index, { lotId, reading, fatPpm }] of readings.entries()) {
    const at = `readings[${index}]`;
    list.need(
      lots.some((lot) => lot.lotId === lotId),
      `${at}.lotId`,
      lotId,
      'is no lot of this pool',
    );
    list.need(!read.has(lotId), `${at}.lotId`, lotId, 'is weighed twice');
    if (fatPpm !== undefined) list.whole(`${at}.fatPpm`, fatPpm, 0, whole);
    try {
      read.set(lotId, { massMg: readingToGrams(reading) * 1000, fatPpm });
    } catch (fault) {
      list.add(`${at}.reading`, reading, fault instanceof Error ? fault.message : String(fault));
    }
  }
  if (list.faults.length > 0) return { faults: list.faults };
  const weighed = lots.map((lot): TrimLot => {
    const found = read.get(lot.lotId);
    if (!found) return lot;
    const fat = found.fatPpm === undefined ? {} : { fatPpm: found.fatPpm, fatFrom: 'measured' as const };
    return { ...lot, ...fat, massMg: found.massMg, weight: 'scale' };
  });
  const differences = lots.flatMap((lot) => {
    const found = read.get(lot.lotId);
    return found ? [{ lotId: lot.lotId, byMg: found.massMg - lot.massMg }] : [];
  });
  return { lots: weighed, differences };
}

/** What is wrong with lots before anything is planned from them. */
export function checkLots(list: FaultList, at: string, lots: readonly TrimLot[]): void {
  const seen = new Set<string>();
  for (const [index, lot] of lots.entries()) {
    const place = `${at}[${index}]`;
    list.need(
      lot.lotId !== '' && !seen.has(lot.lotId),
      `${place}.lotId`,
      lot.lotId,
      'must be the only one of its name',
    );
    seen.add(lot.lotId);
    list.whole(`${place}.massMg`, lot.massMg, 0, 10_000_000_000);
    list.whole(`${place}.fatPpm`, lot.fatPpm, 0, whole);
    list.whole(`${place}.costMinorPerKg`, lot.costMinorPerKg, 0, 1_000_000_000);
    list.need(isDate(lot.cutOn), `${place}.cutOn`, lot.cutOn, 'must be a day that exists, as yyyy-mm-dd');
  }
}

export interface KindTotal {
  readonly kind: string;
  readonly massMg: number;
  readonly fatMg: number;
  readonly lots: number;
  readonly oldestDays: number;
}

/** The pool by kind: leaf fat stands apart from hard back fat, because it is another kind. */
export function poolByKind(lots: readonly TrimLot[], today: string): KindTotal[] {
  const kinds = [...new Set(lots.map(({ kind }) => kind))];
  return kinds.map((kind) => {
    const own = lots.filter((lot) => lot.kind === kind);
    return {
      kind,
      massMg: own.reduce((sum, { massMg }) => sum + massMg, 0),
      fatMg: Math.round(own.reduce((sum, { massMg, fatPpm }) => sum + (massMg * fatPpm) / whole, 0)),
      lots: own.length,
      oldestDays: Math.max(...own.map(({ cutOn }) => daysFromTo(cutOn, today))),
    };
  });
}

/** Whose share of what was made of a pool: own trim over all trim, to the milligram. */
export function shareOut(
  madeMg: number,
  given: readonly { readonly ownerId: string | null; readonly massMg: number }[],
): { readonly ownerId: string | null; readonly massMg: number }[] {
  const owners = [...new Set(given.map(({ ownerId }) => ownerId))];
  const weights = owners.map((owner) =>
    given.reduce((sum, { ownerId, massMg }) => sum + (ownerId === owner ? massMg : 0), 0),
  );
  const parts = splitExactly(madeMg, weights);
  return owners.map((ownerId, index) => ({ ownerId, massMg: parts[index] ?? 0 }));
}
