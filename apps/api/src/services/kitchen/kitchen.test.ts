import type { BatchOnWire, DayPacks, TrimPoolOnWire } from '@flitchbook/contracts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type DemoShop, openDemoShop } from '../../testing/demo-shop.ts';

let shop: DemoShop;
beforeAll(async () => {
  shop = await openDemoShop();
  const packs = `/api/days/${shop.dayId}/packs`;
  const { toMake } = (await shop.ask<DayPacks>('butcher', 'GET', packs)).body;
  const needed = toMake.filter(({ thing }) => thing.kind === 'bulk' || thing.id === 'slab-bacon');
  for (const { key, expectedMg } of needed) {
    const gross = { text: (expectedMg / 453_592.37 + 0.04).toFixed(2), unit: 'lb' };
    await shop.ask('butcher', 'POST', packs, { body: { key, gross, tare: { text: '0.04', unit: 'lb' } } });
  }
}, 120_000);
afterAll(() => shop.close());

const pool = async (): Promise<TrimPoolOnWire> =>
  (await shop.ask<TrimPoolOnWire>('butcher', 'GET', '/api/kitchen/trim')).body;
const make = (body: unknown, key?: string) =>
  shop.ask<BatchOnWire & { errors?: { at: string; value: unknown }[] }>(
    'butcher',
    'POST',
    '/api/kitchen/batches',
    {
      body,
      ...(key === undefined ? {} : { key }),
    },
  );

const largest = (lots: TrimPoolOnWire['lots']) =>
  lots.toSorted((a, b) => b.leftGrams - a.leftGrams)[0] as TrimPoolOnWire['lots'][number];

const recipe = {
  recipeId: 'mustard-links',
  name: 'Mustard links',
  meats: [{ kind: 'trim' }, { kind: 'fat-trim', mostPpm: 400_000 }],
  fatLeastPpm: 250_000,
  fatMostPpm: 320_000,
  additions: [
    { name: 'salt', ppmOfMeat: 18_000, allergens: [], costMinorPerKg: 0 },
    { name: 'milk powder', ppmOfMeat: 20_000, allergens: ['milk'], costMinorPerKg: 0 },
  ],
  batchLeastMg: 200_000,
  batchMostMg: 20_000_000,
  minutesPerBatch: 40,
  trimDaysMost: 3,
};
const sausage = (draws: readonly { packId: string; grams: number }[]) => ({
  kind: 'sausage',
  name: 'Mustard links',
  recipe,
  draws,
});

describe('trim from the block to a batch with its label', () => {
  it('lies in the pool by pack and kind, leaf fat apart; what a customer bought loose does not', async () => {
    const { lots, kinds } = await pool();
    expect(kinds.map(({ kind }) => kind)).toEqual(expect.arrayContaining(['trim', 'leaf-fat', 'back-fat']));
    for (const { kind, grams } of kinds)
      expect(lots.filter((lot) => lot.kind === kind).reduce((sum, lot) => sum + lot.leftGrams, 0)).toBe(
        grams,
      );
    expect(lots.some(({ orderId }) => orderId !== null)).toBe(true);
    expect(lots.some(({ orderId }) => orderId === null)).toBe(true);
  });

  it('is ground into a batch once, the allergen of its recipe on the label', async () => {
    const lot = largest((await pool()).lots.filter((each) => each.kind === 'trim' && each.orderId === null));
    const grams = 300;
    const draws = [{ packId: lot.packId, grams }];
    const made = await make(sausage(draws), 'links-1');
    expect(made.status).toBe(201);
    expect(made.body.label).toMatchObject({
      allergens: ['milk'],
      ingredients: ['pork', 'milk powder', 'salt'],
      notForSale: false,
    });
    expect((await make(sausage(draws), 'links-1')).headers.get('idempotency-replayed')).toBe('true');
    expect((await pool()).lots.find(({ packId }) => packId === lot.packId)?.leftGrams ?? 0).toBe(
      lot.leftGrams - grams,
    );
    expect((await make(sausage([{ packId: lot.packId, grams: lot.leftGrams }]))).refusal).toBe('batch.taken');
    expect((await shop.ask('butcher', 'DELETE', `/api/packs/${lot.packId}`)).refusal).toBe('pack.gone');
    const { batches } = (await shop.ask<{ batches: BatchOnWire[] }>('counter', 'GET', '/api/kitchen/batches'))
      .body;
    expect(batches).toEqual([made.body]);
  });

  it('is refused outside its fat range, below its least, and of a stranger’s pack', async () => {
    const { lots } = await pool();
    const lean = largest(lots.filter((lot) => lot.kind === 'trim' && lot.orderId === null));
    const fat = lots.find((lot) => lot.kind === 'fat-trim' && lot.orderId === null)!;
    const mixed = [
      { packId: lean.packId, grams: 160 },
      { packId: fat.packId, grams: 100 },
    ];
    const tooFat = await make(sausage(mixed));
    expect(tooFat).toMatchObject({ status: 422, refusal: 'batch.invalid' });
    expect(tooFat.body.errors?.map(({ value }) => value)).toEqual(['K2']);
    const small = await make(sausage([{ packId: lean.packId, grams: 150 }]));
    expect(small.body.errors?.map(({ value }) => value)).toEqual(['K3']);
    const unknown = [{ packId: '0190f1d2-6b7e-7c3a-9f00-2d6c1c7a4e51', grams: 500 }];
    expect((await make(sausage(unknown))).body.errors?.[0]?.at).toBe('draws[0].packId');
  });

  it('never mixes an owner’s trim with the shop’s, whatever he agreed to; his own batch is not for sale', async () => {
    const { lots } = await pool();
    const own = lots.find((lot) => lot.kind === 'trim' && lot.orderId !== null)!;
    const shops = largest(lots.filter((lot) => lot.kind === 'trim' && lot.orderId === null));
    const both = [own, shops].map(({ packId }) => ({ packId, grams: 150 }));
    expect((await make(sausage(both))).refusal).toBe('batch.invalid');
    const consent = await shop.ask('counter', 'PUT', `/api/orders/${own.orderId}/pool-consent`, {
      body: { mayPool: true },
    });
    expect(consent.status).toBe(204);
    expect((await pool()).lots.find(({ packId }) => packId === own.packId)?.mayPool).toBe(true);
    expect((await make(sausage(both))).refusal).toBe('batch.invalid');
    const alone = await make(sausage([{ packId: own.packId, grams: 400 }]));
    expect(alone.body.label.notForSale).toBe(true);
  });

  // Leaf lard only from leaf fat alone: 9 CFR 319.702.
  it('renders leaf fat to a kettle of its own', async () => {
    const leaf = (await pool()).lots.find((lot) => lot.kind === 'leaf-fat' && lot.orderId === null)!;
    const made = await make({
      kind: 'lard',
      name: 'Leaf lard',
      draws: [{ packId: leaf.packId, grams: leaf.leftGrams }],
    });
    expect(made.body.label.ingredients).toEqual(['pork fat']);
    expect((await pool()).lots.some(({ packId }) => packId === leaf.packId)).toBe(false);
  });

  it('keeps a cure within its limit, and none above it', async () => {
    const { packs } = (await shop.ask<DayPacks>('butcher', 'GET', `/api/days/${shop.dayId}/packs`)).body;
    const slab = packs.find(({ thing }) => thing.id === 'slab-bacon')!;
    const draws = [{ packId: slab.packId, grams: slab.netGrams }];
    const request = {
      jurisdiction: 'us',
      product: 'bacon',
      method: 'dry-rub',
      meat: `${slab.net.text} ${slab.net.unit}`,
      skin: 'off',
      bag: { nitrite: '6.25 %' },
      target: '120 ppm',
      scaleDivision: '0.1 g',
    };
    const cure = { kind: 'cure', name: 'Slab', cureLot: 'C-2207', request, draws };
    const over = await make({ ...cure, request: { ...request, target: '201 ppm' } });
    expect(over).toMatchObject({ status: 422, refusal: 'batch.over-limit' });
    const bare = await make({ ...cure, request: { ...request, bag: { nitrite: '6.25' } } });
    expect(bare.refusal).toBe('batch.invalid');
    expect(bare.body.errors?.[0]?.at).toMatch(/^request\.bag/);
    expect((await make(cure)).status).toBe(201);
    expect((await make(cure)).refusal).toBe('batch.taken');
  });
});
