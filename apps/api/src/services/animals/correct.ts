import type { AnimalEdit, NewAnimal as AnimalOnWire } from '@flitchbook/contracts';
import {
  type AnimalRecord,
  appendAudit,
  appendLedger,
  findAnimal,
  loadCuttingDay,
  type TouchedDay,
  type Tx,
  updateAnimal,
} from '@flitchbook/db';
import { done, type Outcome, type Refusal, refused } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { authorise } from '../roles.ts';
import { dayUnknown, touch, transact } from '../transact.ts';
import { checkAnimal, checkFarm } from './check-animal.ts';
import { animalToStore } from './weigh.ts';

export interface Correction {
  readonly animalId: string;
  readonly ifVersion: number;
  readonly edit: AnimalEdit;
}

const unknown = (animalId: string): Refusal =>
  refused('animal.unknown', `The shop has no animal ${animalId}.`);

const stale = (version: number): Refusal =>
  refused('edit.version-stale', `The animal is at version ${version} now. Read it again, then decide.`);

/** The animal as it would be written down today: what is known, with the changes over it. */
function rewritten(known: AnimalRecord, edit: AnimalEdit): AnimalOnWire {
  const { animalId, name, speciesId, farmId, ribs, hanging, hotOrCold, legalMode, facts, lostItems } = known;
  const sides = known.sides.map(({ hand, weight, lostParts }) => ({
    hand,
    lostParts,
    ...(weight && { weight }),
  }));
  const { text, unit } = hanging;
  const before = {
    animalId,
    name,
    speciesId,
    ribs,
    hanging: { text, unit },
    hotOrCold,
    legalMode,
    facts,
    lostItems,
    sides,
  };
  return { ...before, ...(farmId !== null && { farmId }), ...edit };
}

async function correctIn(
  tx: Tx,
  ctx: Ctx,
  day: TouchedDay,
  known: AnimalRecord,
  input: Correction,
): Promise<Outcome<AnimalRecord>> {
  const { shopId, personId } = ctx.actor;
  const { animalId, ifVersion, edit } = input;
  const before = await loadCuttingDay(tx, shopId, day.dayId);
  if (!before) return dayUnknown(day.dayId);
  const idOf = (hand: 'left' | 'right'): string =>
    known.sides.find((side) => side.hand === hand)?.sideId ?? ctx.ids.newId();
  const sideIds = { left: idOf('left'), right: idOf('right') };
  const written = rewritten(known, edit);
  const animal = animalToStore(written, { animalId, sideIds });
  if (!animal.ok) return animal;
  const checked = checkAnimal(before.cuttingDay, animal.value, written);
  if (!checked.ok) return checked;
  const farm = await checkFarm(tx, shopId, animal.value);
  if (!farm.ok) return farm;
  const outcome = await updateAnimal(tx, day, { animal: animal.value, version: ifVersion });
  if (outcome === 'unknown') return unknown(animalId);
  if (outcome === 'stale') return stale(known.version);
  const facts = { animalId, grams: animal.value.hanging.grams, changed: Object.keys(edit) };
  await appendLedger(tx, {
    shopId,
    kind: 'animal.corrected',
    dayId: day.dayId,
    orderId: null,
    personId,
    facts,
  });
  await appendAudit(tx, { shopId, personId, action: 'animal.correct', subject: animalId, facts });
  return done({ ...animal.value, dayId: day.dayId, version: ifVersion + 1 });
}

/** Puts right what is known of an animal: the scale's weight, ribs, what was lost. The day is planned again afterwards. */
export async function correctAnimal(ctx: Ctx, input: Correction): Promise<Outcome<AnimalRecord>> {
  const refusal = authorise(ctx, 'animals.correct');
  if (refusal) return refusal;
  const { shopId } = ctx.actor;
  const corrected = await transact(ctx.db, async (tx) => {
    const seen = await findAnimal(tx, shopId, input.animalId);
    if (!seen) return unknown(input.animalId);
    const touched = await touch(tx, { shopId, dayId: seen.dayId, evenClosed: true });
    if (!touched.ok) return touched;
    // Read again under the day's lock.
    const known = (await findAnimal(tx, shopId, input.animalId)) ?? seen;
    if (known.version !== input.ifVersion) return stale(known.version);
    return correctIn(tx, ctx, touched.value, known, input);
  });
  if (corrected.ok) ctx.dayChanged(shopId, corrected.value.dayId);
  return corrected;
}
