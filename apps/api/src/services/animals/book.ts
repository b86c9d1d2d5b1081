import type { NewAnimal as AnimalOnWire } from '@flitchbook/contracts';
import { type AnimalRecord, addAnimal, appendAudit, appendLedger, loadCuttingDay } from '@flitchbook/db';
import { done, type Outcome, refused } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { type OnceAnswer, type OnceKey, once } from '../once.ts';
import { authorise } from '../roles.ts';
import { dayUnknown, touch, transact } from '../transact.ts';
import { checkAnimal, checkFarm } from './check-animal.ts';
import { animalToStore } from './weigh.ts';

/** Books an animal for a day. The day is planned again afterwards. */
export async function bookAnimal(
  ctx: Ctx,
  dayId: string,
  input: AnimalOnWire,
  key: OnceKey,
): Promise<Outcome<OnceAnswer<AnimalRecord>>> {
  const refusal = authorise(ctx, 'animals.book');
  if (refusal) return refusal;
  const { shopId, personId } = ctx.actor;
  const animalId = input.animalId ?? ctx.ids.newId();
  const animal = animalToStore(input, {
    animalId,
    sideIds: { left: ctx.ids.newId(), right: ctx.ids.newId() },
  });
  if (!animal.ok) return animal;
  const booked = await transact(ctx.db, (tx) =>
    once(tx, ctx.actor, key, async () => {
      const touched = await touch(tx, { shopId, dayId, evenClosed: true });
      if (!touched.ok) return touched;
      const before = await loadCuttingDay(tx, shopId, dayId);
      if (!before) return dayUnknown(dayId);
      if (before.animals.some((known) => known.animalId === animalId)) {
        return refused('animal.already-booked', 'There is an animal with this animalId already.');
      }
      const checked = checkAnimal(before.cuttingDay, animal.value, input);
      if (!checked.ok) return checked;
      const farm = await checkFarm(tx, shopId, animal.value);
      if (!farm.ok) return farm;
      await addAnimal(tx, touched.value, animal.value);
      const facts = { animalId, grams: animal.value.hanging.grams, speciesId: animal.value.speciesId };
      await appendLedger(tx, { shopId, kind: 'animal.booked', dayId, orderId: null, personId, facts });
      await appendAudit(tx, { shopId, personId, action: 'animal.book', subject: animalId, facts });
      return done({ ...animal.value, dayId, version: 1 });
    }),
  );
  if (booked.ok && !booked.value.replayed) ctx.dayChanged(shopId, dayId);
  return booked;
}
