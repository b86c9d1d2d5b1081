import type { NewAnimal, NewLine, NewOrder, NewShare, ParsedDay } from '@flitchbook/contracts';
import { findSignIn, forShop, type Shop } from '@flitchbook/db';
import type { CarcassShare, DayAnimal, DemandLine } from '@flitchbook/plan';
import { done, type Outcome, refusals } from '../../refusals.ts';
import { bookAnimal } from '../animals/book.ts';
import { actAs, type Ctx, type Services } from '../ctx.ts';
import { openDay } from '../days/open.ts';
import type { OnceKey } from '../once.ts';
import { takeOrder } from '../orders/take.ts';
import { addPerson } from '../people/add.ts';
import { openShop } from '../shops/open.ts';
import { theShop } from '../shops/the-shop.ts';
import { look } from '../transact.ts';
import type { DemoSignIn } from './sign-ins.ts';

export interface DemoDay {
  readonly parsed: ParsedDay;
  /** IANA name */
  readonly timeZone: string;
}

/** Steps have names of their own, so that a seed that was cut short goes on where it stopped. */
const step = (name: string): OnceKey => ({ key: name, route: 'seed', request: name, status: 201 });

function must<T>(outcome: Outcome<T>): T {
  if (outcome.ok) return outcome.value;
  const faults = (outcome.faults ?? []).map(({ at, says }) => `${at}: ${says}`).join(' ');
  throw new Error(`the demo was refused: ${refusals[outcome.type].title}. ${outcome.says} ${faults}`);
}

/** Tomorrow in the shop's own time zone, yyyy-mm-dd. */
function tomorrow(now: Date, timeZone: string): string {
  const local = new Intl.DateTimeFormat('en-CA', {
    timeZone,
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
  });
  const [year = 0, month = 1, date = 1] = local.format(now).split('-').map(Number);
  return new Date(Date.UTC(year, month - 1, date + 1)).toISOString().slice(0, 10);
}

function animalOnWire({ weighed }: ParsedDay, animal: DayAnimal): NewAnimal {
  const { name, speciesId, lostItems, sides } = animal;
  const scale = weighed.find(({ animalId }) => animalId === animal.animalId);
  if (!scale) throw new Error(`animal ${name} of the demo was never weighed`);
  return {
    name,
    speciesId,
    lostItems,
    ...(sides[0] && { ribs: sides[0].ribs }),
    facts: sides[0]?.facts ?? [],
    hanging: scale.hanging,
    hotOrCold: scale.hotOrCold,
    sides: sides.map(({ sideId, hand, lostParts }) => {
      const weight = scale.sides.find((side) => side.sideId === sideId)?.weight;
      return { hand, lostParts, ...(weight && { weight }) };
    }),
  };
}

type Renamed = ReadonlyMap<string, string>;

const onAnimal = (onlyAnimal: string | undefined, animals: Renamed) => {
  const animalId = onlyAnimal === undefined ? undefined : animals.get(onlyAnimal);
  return animalId === undefined ? {} : { onlyAnimal: animalId };
};

function lineOnWire({ lineId, orderId, owner, onlyAnimal, ...line }: DemandLine, animals: Renamed): NewLine {
  return { ...line, ...onAnimal(onlyAnimal, animals) };
}

function shareOnWire(
  { shareId, orderId, owner, onlyAnimal, ...share }: CarcassShare,
  animals: Renamed,
): NewShare {
  return { ...share, ...onAnimal(onlyAnimal, animals) };
}

function ordersOnWire({ day, orders }: ParsedDay, animals: Renamed): readonly NewOrder[] {
  return orders.map(({ orderId, owner, note }) => ({
    owner,
    note,
    lines: day.lines.filter((line) => line.orderId === orderId).map((line) => lineOnWire(line, animals)),
    shares: day.shares
      .filter((share) => share.orderId === orderId)
      .map((share) => shareOnWire(share, animals)),
  }));
}

async function fillShop(
  ctx: Ctx,
  { parsed, timeZone }: DemoDay,
  signIns: readonly DemoSignIn[],
): Promise<void> {
  const date = tomorrow(ctx.clock(), timeZone);
  const { dayId } = must(await openDay(ctx, { date }, step('demo-day'))).body;
  const animals = new Map<string, string>();
  for (const animal of parsed.day.animals) {
    const key = step(`demo-animal-${animal.animalId}`);
    const booked = must(await bookAnimal(ctx, dayId, animalOnWire(parsed, animal), key));
    animals.set(animal.animalId, booked.body.animalId);
  }
  for (const [index, order] of ordersOnWire(parsed, animals).entries()) {
    must(await takeOrder(ctx, dayId, order, step(`demo-order-${index}`)));
  }
  for (const person of signIns) {
    if (!(await isThere(ctx, ctx.actor.shopId, person))) must(await addPerson(ctx, person));
  }
}

async function isThere(services: Services, shopId: string, { email }: DemoSignIn): Promise<boolean> {
  const found = await look(forShop(services.db, shopId), async (tx) =>
    done(await findSignIn(tx, shopId, email)),
  );
  return must(found) !== undefined;
}

async function isFilled(services: Services, shop: Shop, signIns: readonly DemoSignIn[]): Promise<boolean> {
  const last = signIns.at(-1);
  return last === undefined || isThere(services, shop.shopId, last);
}

/**
 * Opens the invented shop in an empty database, with its day, animals, orders and people, all through the services. With
 * any shop there it does nothing, except that it finishes a seed of its own that was cut short: its people come last.
 * @returns false when there was nothing to do
 */
export async function seedDemo(
  services: Services,
  demo: DemoDay,
  signIns: readonly DemoSignIn[],
): Promise<boolean> {
  const { name, currency, weightUnit, lengthUnit } = demo.parsed.shop;
  const first = must(await theShop(services));
  if (first && (first.name !== name || (await isFilled(services, first, signIns)))) return false;
  const shop =
    first ??
    must(await openShop(services, { name, currency, weightUnit, lengthUnit, timeZone: demo.timeZone }));
  const actor = { shopId: shop.shopId, personId: null, role: 'owner' } as const;
  // Nothing is planned while orders are still being taken: once at the end is enough.
  await fillShop(actAs({ ...services, dayChanged: () => undefined }, actor), demo, signIns);
  return true;
}
