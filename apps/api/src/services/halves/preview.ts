import {
  type Estimate,
  type HalfLine,
  type HalfSide,
  previewShare,
  type SharePreview,
  type SideFacts,
  type YieldModel,
  yieldModelOf,
} from '@flitchbook/carcass';
import type { HalfAsked, HalfPreviewOnWire } from '@flitchbook/contracts';
import { type CarcassShare, lineWorth } from '@flitchbook/plan';
import { done, type Outcome, refused } from '../../refusals.ts';
import type { TravellingDay } from '../../solve/day-solver.ts';
import { checkAgainstDay } from '../check-against-day.ts';
import type { Ctx } from '../ctx.ts';
import { usualSharePrice } from '../orders/fill-in.ts';
import { type DayInView, mayAsk, readDayIn } from '../reservations/read-day.ts';
import { depositOf, expectedMinor } from '../reservations/shop-rules.ts';
import { authorise } from '../roles.ts';
import { look } from '../transact.ts';

/** Mean and spread of the sides; no spread where there is one animal, or all weigh the same. */
function spreadOf(masses: readonly number[]): Estimate {
  const mean = masses.reduce((sum, mass) => sum + mass, 0) / masses.length;
  const squares = masses.reduce((sum, mass) => sum + (mass - mean) ** 2, 0) / masses.length;
  return { mean: Math.round(mean), sd: Math.round(Math.sqrt(squares)) };
}

/** A side of which nothing is said that not every animal of the day has. */
function anySide(sides: readonly SideFacts[]): HalfSide | undefined {
  const [first, ...others] = sides;
  if (!first) return undefined;
  const carcass = sides.reduce((sum, { carcassGrams }) => sum + carcassGrams, 0) / sides.length;
  return {
    massMg: spreadOf(sides.map(({ massMg }) => massMg)),
    carcassGrams: Math.round(carcass),
    ribs: Math.min(...sides.map(({ ribs }) => ribs)),
    facts: first.facts.filter((fact) => others.every(({ facts }) => facts.includes(fact))),
  };
}

const onWire = ({ kind, id, name, massMg, lowMg, highMg, ...portioned }: HalfLine) => ({
  kind,
  id,
  name,
  lowMg,
  highMg,
  ...portioned,
});

interface Asked {
  readonly model: YieldModel;
  readonly side: HalfSide;
}

function sideAsked(day: TravellingDay, { speciesId }: HalfAsked): Outcome<Asked> {
  const wanted = speciesId ?? day.animals[0]?.speciesId;
  const animals = day.animals.filter((animal) => animal.speciesId === wanted);
  const side = anySide(animals.flatMap(({ sides }) => sides));
  const model = wanted === undefined ? undefined : yieldModelOf(wanted);
  if (!side || !model)
    return refused(
      'half.no-animal',
      `The day has no animal of that kind: ${wanted ?? 'it has none at all'}.`,
    );
  return done({ model, side });
}

function sidesOnWire({ sides }: SharePreview): HalfPreviewOnWire['sides'] {
  return sides.map(({ hand, preview }) => ({
    hand,
    primals: preview.steps.map(({ part, name, lowMg, highMg, gives }) => ({
      part,
      name,
      lowMg,
      highMg,
      gives: gives.map(onWire),
    })),
    stays: preview.stays.map(onWire),
    lost: preview.lost.map(onWire),
  }));
}

function priceOf(
  { stored, rules }: DayInView,
  { size, hangingMg }: Pick<HalfPreviewOnWire, 'size' | 'hangingMg'>,
): HalfPreviewOnWire['price'] {
  const share = { size, priceMinorPerKg: usualSharePrice };
  const expected = expectedMinor(stored.cuttingDay, { lines: [], shares: [share] });
  const worth = (mg: number): number => lineWorth(Math.round(mg / 1000), usualSharePrice);
  return {
    fromMinor: worth(hangingMg.low),
    toMinor: worth(hangingMg.high),
    expectedMinor: expected,
    depositMinor: depositOf(rules, expected),
  };
}

/** What is wrong with the instructions, in the request's own words. */
function faultsOf(day: TravellingDay, speciesId: string, { size, instructions }: HalfAsked) {
  const share: CarcassShare = {
    shareId: 'asked',
    orderId: 'asked',
    owner: 'asked',
    speciesId,
    size,
    rank: 'promised',
    priceMinorPerKg: usualSharePrice,
    instructions,
  };
  const place = { inDay: `shares[${day.shares.length}]`, inRequest: '' };
  return checkAgainstDay(day, { ...day, shares: [...day.shares, share] }, [place]);
}

/** What a half or a whole animal of the day would come to, cut as asked. Stores nothing, promises nothing. */
export async function previewHalves(
  ctx: Ctx,
  dayId: string,
  input: HalfAsked,
): Promise<Outcome<HalfPreviewOnWire>> {
  const refusal = authorise(ctx, 'halves.preview');
  if (refusal) return refusal;
  const view = await look(ctx.db, (tx) => readDayIn(tx, ctx, dayId));
  if (!view.ok) return view;
  const may = mayAsk(ctx, view.value);
  if (!may.ok) return may;
  const { cuttingDay, day } = view.value.stored;
  const asked = sideAsked(cuttingDay, input);
  if (!asked.ok) return asked;
  const { model, side } = asked.value;
  const { tools } = cuttingDay;
  const { size, instructions } = input;
  const faults = faultsOf(cuttingDay, model.species.id, input);
  if (faults.length > 0)
    return refused('order.invalid', 'The instructions do not fit the animal; errors says why.', { faults });
  const seen = previewShare(model, side, instructions, { tools, size });
  const { hangingMg, boxedMg, freezerLitres, coolBoxes } = seen;
  const speciesId = model.species.id;
  return done({
    dayId,
    date: day.date,
    speciesId,
    size,
    side,
    tools,
    hangingMg,
    boxedMg,
    freezerLitres,
    coolBoxes,
    priceMinorPerKg: usualSharePrice,
    price: priceOf(view.value, { size, hangingMg }),
    sides: sidesOnWire(seen),
  });
}
