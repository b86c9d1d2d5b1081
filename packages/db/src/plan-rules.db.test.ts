import { sql } from 'drizzle-orm';
import { beforeAll, describe, expect, it } from 'vitest';
import { handleOf } from './engines/engine.ts';
import { loadCuttingDay } from './queries/days.ts';
import { loadPlan, storePlan } from './queries/plans.ts';
import { describeOnBoth, statement, type Use } from './testing/both-engines.ts';
import { type InventedShop, inventShop, newId, planOf } from './testing/invented-shop.ts';
import { inTransaction } from './transaction.ts';

const store = (db: Use, shop: InventedShop, plan = planOf(shop), madeFor = shop.version) =>
  inTransaction(db(), (tx) => storePlan(tx, { shopId: shop.shopId, planId: newId(), madeFor, plan }));

const stored = (db: Use, { shopId, dayId }: InventedShop) =>
  inTransaction(db(), (tx) => loadPlan(tx, shopId, dayId), { reading: true });

const broken = (constraint: string) => expect.objectContaining({ name: 'ConstraintViolation', constraint });

describeOnBoth('a stored plan', (db) => {
  let shop: InventedShop;
  let planId: string;

  beforeAll(async () => {
    shop = await inventShop(db());
    await store(db, shop);
    planId = (await stored(db, shop))?.planId ?? '';
  });

  it('comes back as it was stored, with the version that the day got', async () => {
    const found = await stored(db, shop);
    expect(found?.plan).toEqual(planOf(shop));
    expect(found?.dayVersion).toBe(shop.version + 1);
    expect(found?.madeAt).toMatch(/^\d{4}-\d\d-\d\dT.*Z$/);
  });

  it('has one operation for each part of a side', async () => {
    const second = sql`insert into plan_operations (shop_id, plan_id, side_id, part, operation)
      values (${shop.shopId}, ${planId}, ${shop.left}, 'middle', 'porchetta-whole')`;
    await expect(statement(db(), second)).rejects.toEqual(broken('plan_operations_one_per_part'));
  });

  it('has one share for each side', async () => {
    const second = sql`insert into plan_sides (shop_id, plan_id, side_id, share_id, mass_mg)
      values (${shop.shopId}, ${planId}, ${shop.right}, ${shop.half}, 1)`;
    await expect(statement(db(), second)).rejects.toEqual(broken('plan_sides_one_share'));
  });

  it('has one line for each piece', async () => {
    const pieceId = `${shop.left}:middle:tenderloin`;
    const second = sql`insert into plan_pieces (shop_id, plan_id, piece_id, kind, side_id, origin, what, mass_mg, line_id)
      values (${shop.shopId}, ${planId}, ${pieceId}, 'item', ${shop.left}, 'middle', 'tenderloin', 1, ${shop.chops})`;
    await expect(statement(db(), second)).rejects.toEqual(broken('plan_pieces_one_line'));
    const both = sql`update plan_pieces set share_id = ${shop.half} where shop_id = ${shop.shopId} and piece_id = ${pieceId}`;
    await expect(statement(db(), both)).rejects.toEqual(broken('plan_pieces_one_owner'));
  });

  describe('on a bar', () => {
    const piece = (id: string, span: string, bar = 'loin-front') =>
      sql`insert into plan_pieces (shop_id, plan_id, piece_id, kind, side_id, bar, span, what, mass_mg)
        values (${shop.shopId}, ${planId}, ${id}, 'span', ${shop.left}, ${bar}, ${span}::int4range, 'rib-chop', 1)`;

    it('has no two pieces over each other, not even by one micrometre', async () => {
      await expect(statement(db(), piece('a', '[64999,65001)'))).rejects.toEqual(
        broken('plan_pieces_no_overlap'),
      );
      await expect(statement(db(), piece('b', '[0,31750)'))).rejects.toEqual(
        broken('plan_pieces_no_overlap'),
      );
    });

    it('has room for a piece that only touches, and for the same span of another bar', async () => {
      await statement(db(), piece('touches', '[65000,65001)'));
      await statement(db(), piece('elsewhere', '[0,31750)', 'belly-slab'));
    });

    it.each(['[5,5)', '[-1,4)', '(,4)', '[4,)'])('takes no span like %s', async (span) => {
      await expect(statement(db(), piece('odd', span))).rejects.toEqual(broken('plan_pieces_span_within'));
    });

    it('lets two pieces change places in one transaction', async () => {
      const move = (from: string, to: string) =>
        sql`update plan_pieces set span = ${to}::int4range where shop_id = ${shop.shopId} and bar = 'loin-front' and span = ${from}::int4range and what = 'rib-chop'`;
      await inTransaction(db(), async (tx) => {
        const handle = handleOf(tx);
        await handle.execute(sql`set constraints plan_pieces_no_overlap deferred`);
        await handle.execute(
          sql`update plan_pieces set what = 'moved' where shop_id = ${shop.shopId} and span = '[33250,65000)'::int4range`,
        );
        await handle.execute(move('[0,31750)', '[33250,65000)'));
        await handle.execute(
          sql`update plan_pieces set span = '[0,31750)'::int4range, what = 'rib-chop' where shop_id = ${shop.shopId} and what = 'moved'`,
        );
      });
      const half = inTransaction(db(), async (tx) => {
        await handleOf(tx).execute(sql`set constraints plan_pieces_no_overlap deferred`);
        await handleOf(tx).execute(move('[0,31750)', '[33250,65000)'));
      });
      await expect(half).rejects.toEqual(broken('plan_pieces_no_overlap'));
    });
  });

  it('has no piece that is of no kind or half of one', async () => {
    const piece = sql`insert into plan_pieces (shop_id, plan_id, piece_id, kind, side_id, what, mass_mg)
      values (${shop.shopId}, ${planId}, 'half', 'span', ${shop.left}, 'rib-chop', 1)`;
    await expect(statement(db(), piece)).rejects.toEqual(broken('plan_pieces_kind_shape'));
  });
});

describeOnBoth('storing a plan', (db) => {
  it('swaps the old one whole', async () => {
    const shop = await inventShop(db());
    const first = await store(db, shop);
    const plan = planOf(shop);
    const [left, right] = plan.sides;
    // The same places on the bar, for somebody else.
    const swapped = { ...plan, sides: [{ ...left!, items: [], operations: { side: 'break' } }, right!] };
    expect(await store(db, shop, swapped, first)).toBe(shop.version + 2);
    expect((await stored(db, shop))?.plan).toEqual(swapped);
    const kept = await statement(
      db(),
      sql`select count(*)::int as pieces from plan_pieces where shop_id = ${shop.shopId}`,
    );
    expect(kept).toEqual([{ pieces: 3 }]);
  });

  it('changes nothing when the day has moved on', async () => {
    const shop = await inventShop(db());
    await store(db, shop);
    const before = await stored(db, shop);
    expect(await store(db, shop, { ...planOf(shop), sides: [] })).toBeUndefined();
    expect(await stored(db, shop)).toEqual(before);
    const day = await inTransaction(db(), (tx) => loadCuttingDay(tx, shop.shopId, shop.dayId), {
      reading: true,
    });
    expect(day?.day.version).toBe(shop.version + 1);
  });

  it('changes nothing when the plan breaks a rule', async () => {
    const shop = await inventShop(db());
    await store(db, shop);
    const before = await stored(db, shop);
    const plan = planOf(shop);
    const [left] = plan.sides;
    const [bar] = left!.bars;
    const [run] = bar!.runs;
    const over = { ...run!.pieces[0]!, pieceId: 'over', fromUm: 100, toUm: 200 };
    const sides = [{ ...left!, bars: [{ ...bar!, runs: [{ ...run!, pieces: [...run!.pieces, over] }] }] }];
    await expect(store(db, shop, { ...plan, sides }, shop.version + 1)).rejects.toEqual(
      broken('plan_pieces_no_overlap'),
    );
    expect(await stored(db, shop)).toEqual(before);
  });

  it('takes no piece for a line of another shop', async () => {
    const [shop, other] = [await inventShop(db()), await inventShop(db())];
    const plan = planOf({ ...shop, chops: other.chops });
    await expect(store(db, shop, plan)).rejects.toEqual(broken('plan_pieces_line_known'));
  });
});
