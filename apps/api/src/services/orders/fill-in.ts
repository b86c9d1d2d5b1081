import type {
  NewLine as LineOnWire,
  NewOrder as OrderOnWire,
  NewShare as ShareOnWire,
} from '@flitchbook/contracts';
import { entryOf, knownSpecies } from '@flitchbook/contracts';
import type { NewLine, NewOrder, NewShare } from '@flitchbook/db';
import { type CuttingDay, counterWorth } from '@flitchbook/plan';
import type { TravellingDay } from '../../solve/day-solver.ts';

/** Minor units a kilogram of hanging weight. Invented default; the shop sets its own with the order. */
export const usualSharePrice = 800;

const tables = { item: 'items', stock: 'stocks', bulk: 'bulks' } as const;

/** The species that is meant where none is named: one of the day's that has the cut, or any that has it. */
function speciesMeant(day: TravellingDay, cut: string): string {
  const booked = day.animals.map(({ speciesId }) => speciesId);
  const has = (speciesId: string): boolean =>
    Object.hasOwn(entryOf(knownSpecies, speciesId)?.cuts ?? {}, cut);
  return (
    booked.find(has) ?? Object.keys(knownSpecies).find(has) ?? booked[0] ?? Object.keys(knownSpecies)[0] ?? ''
  );
}

/** What the counter would ask for the cut: worth of what it comes from. */
function usualPrice(day: CuttingDay, speciesId: string, cut: string): number {
  const [source] = entryOf(entryOf(day.species, speciesId)?.cuts ?? {}, cut)?.sources ?? [];
  return source ? counterWorth(day, speciesId, tables[source.from], source.id) : 0;
}

function fillInLine(day: CuttingDay, line: LineOnWire, newId: () => string): NewLine {
  const { lineId, priceMinorPerKg, sameAnimal = false, substitutes = [], ...rest } = line;
  const speciesId = line.speciesId ?? speciesMeant(day, line.cut);
  return {
    ...rest,
    lineId: lineId ?? newId(),
    speciesId,
    priceMinorPerKg: priceMinorPerKg ?? usualPrice(day, speciesId, line.cut),
    sameAnimal,
    substitutes,
  };
}

function fillInShare(day: CuttingDay, share: ShareOnWire, newId: () => string): NewShare {
  const { shareId, speciesId, priceMinorPerKg = usualSharePrice, ...rest } = share;
  const meant = speciesId ?? day.animals[0]?.speciesId ?? Object.keys(knownSpecies)[0] ?? '';
  return { ...rest, shareId: shareId ?? newId(), speciesId: meant, priceMinorPerKg };
}

/** The order as it will be stored, with what was left out filled in. */
export function fillIn(
  day: TravellingDay,
  input: OrderOnWire,
  { orderId, newId }: { readonly orderId: string; readonly newId: () => string },
): NewOrder {
  const known = { ...day, species: knownSpecies };
  return {
    orderId,
    owner: input.owner,
    personId: null,
    note: input.note ?? '',
    lines: input.lines.map((line) => fillInLine(known, line, newId)),
    shares: input.shares.map((share) => fillInShare(known, share, newId)),
  };
}
