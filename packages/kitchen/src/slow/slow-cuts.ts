import { addDays, daysFromTo } from '../dates.ts';

const kg = 1_000_000;

/** A piece that nobody has bought. */
export interface UnsoldPiece {
  readonly pieceId: string;
  readonly cutId: string;
  readonly animalId: string;
  readonly massMg: number;
  readonly packedOn: string;
}

/** What a slow cut can become. Shares of its mass in millionths; what is not listed is lost. */
export interface Conversion {
  readonly conversionId: string;
  readonly name: string;
  readonly from: readonly string[];
  readonly into: readonly { readonly name: string; readonly ppm: number; readonly minorPerKg: number }[];
  readonly minutesPerKg: number;
  /** casing, spice, cure */
  readonly addedMinorPerKg: number;
}

export interface RankedConversion {
  readonly conversionId: string;
  readonly name: string;
  readonly salesMinor: number;
  readonly minutes: number;
  readonly labourMinor: number;
  /** after labour and additions, over what the pieces would bring as they are */
  readonly gainMinor: number;
}

export interface SlowGroup {
  readonly animalId: string;
  readonly cutId: string;
  /** the Monday of the week in which they were packed */
  readonly week: string;
  readonly pieces: number;
  readonly massMg: number;
  readonly oldestDays: number;
  /** best first; one that gains nothing is left out */
  readonly conversions: readonly RankedConversion[];
}

/** 2024-01-01 was a Monday. */
const aMonday = '2024-01-01';

export function weekOf(date: string): string {
  const days = daysFromTo(aMonday, date);
  return addDays(date, -(((days % 7) + 7) % 7));
}

/**
 * What a mass of a cut is worth turned into something else, best first.
 * @param nowMinorPerKg what it would bring as it is: the price, less what it takes to get rid of it
 */
export function rankConversions(
  cutId: string,
  massMg: number,
  nowMinorPerKg: number,
  conversions: readonly Conversion[],
  labourMinorPerHour: number,
): RankedConversion[] {
  const inKg = massMg / kg;
  return conversions
    .filter(({ from }) => from.includes(cutId))
    .map(({ conversionId, name, into, minutesPerKg, addedMinorPerKg }) => {
      const salesMinor = Math.round(
        inKg * into.reduce((sum, { ppm, minorPerKg }) => sum + (ppm / kg) * minorPerKg, 0),
      );
      const minutes = Math.ceil(inKg * minutesPerKg);
      const labourMinor = Math.round((minutes * labourMinorPerHour) / 60);
      const gainMinor = salesMinor - labourMinor - Math.round(inKg * (addedMinorPerKg + nowMinorPerKg));
      return { conversionId, name, salesMinor, minutes, labourMinor, gainMinor };
    })
    .sort((a, b) => b.gainMinor - a.gainMinor);
}

/** Unsold pieces by animal, cut and week, oldest first, each with what it could become. */
export function slowCuts(
  pieces: readonly UnsoldPiece[],
  today: string,
  nowMinorPerKg: Readonly<Record<string, number>>,
  conversions: readonly Conversion[],
  labourMinorPerHour: number,
): SlowGroup[] {
  const groups = new Map<string, UnsoldPiece[]>();
  for (const piece of pieces) {
    const key = `${piece.animalId}/${piece.cutId}/${weekOf(piece.packedOn)}`;
    groups.set(key, [...(groups.get(key) ?? []), piece]);
  }
  const slow = [...groups.values()].flatMap((group) => {
    const [first] = group;
    if (!first) return [];
    const massMg = group.reduce((sum, piece) => sum + piece.massMg, 0);
    const ranked = rankConversions(
      first.cutId,
      massMg,
      nowMinorPerKg[first.cutId] ?? 0,
      conversions,
      labourMinorPerHour,
    );
    return [
      {
        animalId: first.animalId,
        cutId: first.cutId,
        week: weekOf(first.packedOn),
        pieces: group.length,
        massMg,
        oldestDays: Math.max(...group.map(({ packedOn }) => daysFromTo(packedOn, today))),
        conversions: ranked.filter(({ gainMinor }) => gainMinor > 0),
      },
    ];
  });
  return slow.sort((a, b) => b.oldestDays - a.oldestDays || b.massMg - a.massMg);
}
