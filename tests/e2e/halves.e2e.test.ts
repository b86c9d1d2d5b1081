import { describeInBrowser } from '@flitchbook/test-harness/vitest';
import type { APIRequestContext, Page } from 'playwright-core';
import { beforeAll, expect, it } from 'vitest';
import {
  clippedWords,
  desk,
  overflowPx,
  picture,
  type Screen,
  type Seen,
  smallTargets,
  telephone,
  violations,
} from './board-screen.ts';
import { shopInBrowser } from './shop-in-browser.ts';

describeInBrowser('half a hog, from the first choice to the reservation', () => {
  const shopped = shopInBrowser();
  let dayId: string;

  async function signIn(request: APIRequestContext, role: string): Promise<void> {
    const { email, password } = shopped.shop().keys.find((key) => key.role === role)!;
    const answer = await request.post('/api/session', { data: { email, password } });
    expect(answer.status()).toBe(200);
  }

  /** A day with one hog and nobody's order: it is planned in an instant. */
  async function openQuietDay(seen: Seen): Promise<string> {
    const { request } = seen.context;
    await signIn(request, 'owner');
    const keyed = (key: string) => ({ 'Idempotency-Key': key });
    const day = await request.post('/api/days', {
      data: { date: '2027-02-05' },
      headers: keyed('quiet-day'),
    });
    const { dayId: id } = (await day.json()) as { dayId: string };
    const hog = {
      name: 'Hog 31',
      speciesId: 'hog',
      hanging: { text: '184', unit: 'lb' },
      hotOrCold: 'cold',
      facts: ['skin-on', 'feet', 'organs'],
      lostItems: [],
    };
    const booked = await request.post(`/api/days/${id}/animals`, { data: hog, headers: keyed('quiet-hog') });
    expect(booked.status()).toBe(201);
    return id;
  }

  beforeAll(async () => {
    const seen = await shopped.kept(desk);
    dayId = await openQuietDay(seen);
    await seen.context.close();
  }, 180_000);

  async function atHalf(screen: Screen): Promise<Seen> {
    const seen = await shopped.seen(screen);
    await signIn(seen.context.request, 'customer');
    await seen.page.goto(`/yours/days/${dayId}/half-or-whole`);
    await seen.page.getByRole('heading', { name: /1 of 6/ }).waitFor();
    return seen;
  }

  async function expectSound({ page, complaints }: Seen): Promise<void> {
    expect(await violations(page)).toEqual([]);
    expect(await overflowPx(page)).toBe(0);
    expect(await clippedWords(page)).toEqual([]);
    expect(complaints).toEqual([]);
  }

  const next = (page: Page) => page.locator('.half-moves .main').click();

  it('on a telephone of 320 px: chooses, sees at once what it costs, resumes, and reserves', async () => {
    const seen = await atHalf({ ...telephone, width: 320 });
    const { page } = seen;
    await picture(page, 'half-start-telephone');
    await expectSound(seen);
    expect(await smallTargets(page, 44)).toEqual([]);
    await next(page);
    await next(page);
    await page.getByRole('heading', { name: /3 of 6/ }).waitFor();
    await page.locator('summary', { hasText: 'Rib end of the loin' }).first().click();
    const boned = page.locator('.option', { hasText: 'Boned, ribs apart' });
    await boned.getByText(/Back ribs, /).waitFor();
    expect(await boned.locator('.takes').textContent()).toContain('Bone-in rib chop');
    await picture(page, 'half-choice-telephone');
    await boned.getByRole('radio').check();
    await page.locator('summary', { hasText: 'Centre loin, boneless' }).waitFor();
    await expectSound(seen);
    expect(await smallTargets(page, 44)).toEqual([]);
    await page.reload();
    await page.getByText('We kept what you chose').waitFor();
    await page.getByRole('button', { name: 'What goes home' }).click();
    await page.getByRole('checkbox', { name: /Leaf fat/ }).check();
    await page.getByText('The animals of this day come without their head').waitFor();
    await picture(page, 'half-goes-home-telephone');
    await expectSound(seen);
    await next(page);
    await page.getByText('Back ribs,').first().waitFor();
    await page.getByLabel('Second name').fill('Ravi "Bo" <b>Finch</b> 🐖');
    await page.getByText(/The two piles differ by/).waitFor();
    await picture(page, 'half-review-telephone');
    await expectSound(seen);
    await page.getByRole('button', { name: 'Hold it for me' }).dblclick();
    await page.getByRole('timer').waitFor({ timeout: 30_000 });
    await expectSound(seen);
    await page.getByRole('button', { name: 'Reserve it' }).click();
    await page.getByText('Reserved. Every piece').waitFor();
    await expectSound(seen);
    const orders = (await (await seen.context.request.get('/api/my/orders')).json()) as {
      orders: { dayId: string; state: string }[];
    };
    expect(orders.orders.filter((order) => order.dayId === dayId).map(({ state }) => state)).toEqual([
      'standing',
    ]);
    await page.goto(`/yours/days/${dayId}/half-or-whole`);
    await page.getByRole('heading', { name: /1 of 6/ }).waitFor();
    expect(await page.getByText('We kept what you chose').count()).toBe(0);
  });

  it('at a desk, in Spanish, by keyboard alone', async () => {
    const seen = await atHalf(desk);
    const { page } = seen;
    await page.getByRole('button', { name: 'Español' }).click();
    await page.getByRole('heading', { name: /1 de 6/ }).waitFor();
    await page.getByRole('button', { name: 'Lomo y panceta' }).focus();
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: /3 de 6/ }).waitFor();
    await page.locator('summary', { hasText: 'El solomillo' }).focus();
    await page.keyboard.press('Enter');
    await page.keyboard.press('Tab');
    await page.keyboard.press('ArrowDown');
    await page.locator('summary', { hasText: 'Dejar el solomillo en las chuletas' }).waitFor();
    expect(
      await page.locator('.option', { hasText: 'Dejar el solomillo' }).locator('.takes').textContent(),
    ).toContain('Solomillo');
    await picture(page, 'half-choice-desk-spanish');
    await expectSound(seen);
    await page.getByRole('button', { name: 'Repasar' }).click();
    await page.getByText('Esto es lo que recibe').waitFor();
    await picture(page, 'half-review-desk-spanish');
    await expectSound(seen);
  });
});
