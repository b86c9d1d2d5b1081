import { randomUUID } from 'node:crypto';
import { sql } from 'drizzle-orm';
import { beforeAll, expect, it } from 'vitest';
import { forShop } from './engines/engine.ts';
import type { TraceFrom } from './queries/book-shapes.ts';
import { listPacks } from './queries/packs.ts';
import { trace } from './queries/trace.ts';
import { describeOnServer, statement } from './testing/both-engines.ts';
import { inTransaction } from './transaction.ts';

const shopId = randomUUID();
const [days, animalsADay, packsAnAnimal] = [250, 4, 200];

/** Ids that statements can count out: the same for the same kind and number. */
const idOf = (kind: string, number: string): string => `md5('${kind}' || ${number})::uuid`;

/** A year of a shop, written by the server itself: 1 000 animals of 20 farms, 200 000 packs, most of them fetched. */
const year = [
  `insert into shops (shop_id, name, currency, time_zone, weight_unit, length_unit) values ('${shopId}', 'Tallow Lane Butchery', 'USD', 'America/New_York', 'lb', 'in')`,
  `insert into farms (shop_id, farm_id, name) select '${shopId}', ${idOf('farm', 'n')}, 'Farm ' || n from generate_series(0, 19) n`,
  `insert into cutting_days (shop_id, day_id, date, state, tools, counter) select '${shopId}', ${idOf('day', 'n')}, date '2026-01-01' + n, 'closed', '{}', '{}' from generate_series(0, ${days - 1}) n`,
  `insert into animals (shop_id, animal_id, day_id, farm_id, name, species_id, ribs, hanging_text, hanging_unit, hanging_grams, hot_or_cold, facts, lost_items)
    select '${shopId}', ${idOf('animal', 'n')}, ${idOf('day', `n / ${animalsADay}`)}, ${idOf('farm', 'n % 20')}, 'Hog ' || n, 'hog', 15, '184', 'lb', 83461, 'cold', '{}', '{}'
    from generate_series(0, ${days * animalsADay - 1}) n`,
  `insert into orders (shop_id, order_id, day_id, number, owner, note) select '${shopId}', ${idOf('order', 'n')}, ${idOf('day', 'n / 20')}, n + 1, 'Customer ' || n % 900, '' from generate_series(0, ${days * 20 - 1}) n`,
  `insert into order_lines (shop_id, line_id, order_id, place, species_id, cut, portion, ask_pieces, rank, price_minor_per_kg, same_animal, substitutes)
    select '${shopId}', ${idOf('line', 'n')}, ${idOf('order', 'n')}, 0, 'hog', 'rib-chop', '{}', 4, 'promised', 1890, false, '[]' from generate_series(0, ${days * 20 - 1}) n`,
  `insert into packs (shop_id, pack_id, serial, day_id, animal_id, legal_mode, lot, foreseen, thing, what, name, pieces, order_id, line_id, gross_text, tare_text, tare_unit, net_text, unit, net_grams, expected_mg, price_minor, price_per, amount_minor, tax_class, frozen, packed_on)
    select '${shopId}', ${idOf('pack', 'n')}, n + 1, ${idOf('day', 'day')}, ${idOf('animal', 'animal')}, 'for-sale', 'LOT-' || animal || case when n % 2 = 0 then 'L' else 'R' end, 'pack ' || n, 'cut', 'rib-chop', 'Rib chop', 2,
      case when isfor then ${idOf('order', 'o')} end, case when isfor then ${idOf('line', 'o')} end, '0.95', '0.04', 'lb', '0.91', 'lb', 413, 415000, 599, 'lb', 545, 'food', false, date '2026-01-01' + day
    from (select n, n / ${packsAnAnimal} as animal, n / ${packsAnAnimal * animalsADay} as day, n % 4 <> 0 as isfor, (n / ${packsAnAnimal * animalsADay}) * 20 + n % 20 as o from generate_series(0, ${days * animalsADay * packsAnAnimal - 1}) n) made`,
  `insert into hand_overs (shop_id, hand_over_id, order_id, taken_by, proof, note) select '${shopId}', ${idOf('given', 'n')}, ${idOf('order', 'n')}, 'Customer ' || n % 900, 'known', '' from generate_series(0, ${days * 20 - 1}) n`,
  `insert into hand_over_packs (shop_id, pack_id, hand_over_id) select shop_id, pack_id, ${idOf('given', 'number - 1')} from packs join orders using (shop_id, order_id) where number <= ${days * 19}`,
  'analyze',
];

const percentile = (times: readonly number[], share: number): number =>
  times.toSorted((one, other) => one - other)[Math.floor(times.length * share)] ?? 0;

describeOnServer(
  'a year of packs',
  (db) => {
    beforeAll(async () => {
      // As the owner of the tables: the walls between shops stand for the units of the service below.
      for (const text of year) await statement(db(), sql.raw(text));
    }, 300_000);

    /** Milliseconds of a read in a unit of its own, and what it gave. */
    async function timed(from: TraceFrom): Promise<{ ms: number; packs: number }> {
      const start = performance.now();
      const rows = await inTransaction(forShop(db(), shopId), (tx) => trace(tx, shopId, from), {
        reading: true,
      });
      return { ms: performance.now() - start, packs: rows.length };
    }

    it('is traced one step back and forward, and called back, in less than a second', async () => {
      const ids = await inTransaction(
        forShop(db(), shopId),
        (tx) => listPacks(tx, shopId, { serial: 77_777 }),
        {
          reading: true,
        },
      );
      const [sample] = ids;
      if (!sample) throw new Error('the year has no pack 77 777');
      const serials: number[] = [];
      for (let turn = 0; turn < 200; turn++) {
        const { ms, packs } = await timed({ serial: 1 + ((turn * 99_991) % 200_000) });
        expect(packs).toBe(1);
        serials.push(ms);
      }
      const lots: number[] = [];
      for (let animal = 0; animal < 100; animal++) {
        const { ms, packs } = await timed({ lot: `LOT-${animal * 9}L` });
        expect(packs).toBe(packsAnAnimal / 2);
        lots.push(ms);
      }
      const animal = await timed({ animalId: sample.animalId });
      expect(animal.packs).toBe(packsAnAnimal);
      const [farm] = await statement<{ farm_id: string }>(
        db(),
        sql.raw("select farm_id from farms where name = 'Farm 7'"),
      );
      const ofFarm = await timed({ farmId: farm?.farm_id ?? '', from: '2026-01-01', to: '2026-12-31' });
      expect(ofFarm.packs).toBe((days * animalsADay * packsAnAnimal) / 20);
      const left = await timed({ stillHere: true });
      process.stdout.write(
        [
          '200 000 packs, 1 000 animals, 5 000 orders:',
          `  a pack by its serial   p95 ${percentile(serials, 0.95).toFixed(1)} ms of ${serials.length}`,
          `  recall of a lot        p95 ${percentile(lots, 0.95).toFixed(1)} ms of ${lots.length}, 100 packs each`,
          `  recall of an animal    ${animal.ms.toFixed(1)} ms, ${animal.packs} packs`,
          `  recall of a farm       ${ofFarm.ms.toFixed(1)} ms, ${ofFarm.packs} packs`,
          `  what is in the house   ${left.ms.toFixed(1)} ms, ${left.packs} packs`,
          '',
        ].join('\n'),
      );
      expect(percentile(serials, 0.95)).toBeLessThan(300);
      expect(percentile(lots, 0.95)).toBeLessThan(300);
      for (const { ms } of [animal, ofFarm]) expect(ms).toBeLessThan(1000);
    });
  },
  { limits: { deadlineMs: 200_000, statementMs: 200_000 } },
);
