import { describeInBrowser } from '@flitchbook/test-harness/vitest';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import {
  clippedWords,
  desk,
  overflowPx,
  picture,
  type Seen,
  smallTargets,
  violations,
} from './board-screen.ts';
import { dayInBrowser } from './shop-in-browser.ts';

const widths = [360, 820, 1440];

/** The page has nothing to say against itself, as wide as a telephone, a tablet and a desk. */
async function expectSound({ page, complaints }: Seen, name: string): Promise<void> {
  for (const width of widths) {
    await page.setViewportSize({ width, height: 900 });
    expect(await violations(page), `${name} at ${width}`).toEqual([]);
    expect(await overflowPx(page), `${name} at ${width}`).toBe(0);
    expect(await clippedWords(page), `${name} at ${width}`).toEqual([]);
    expect(await smallTargets(page, 44), `${name} at ${width}`).toEqual([]);
    await picture(page, `${name}-${width}`);
  }
  expect(complaints).toEqual([]);
}

/** What the service says, asked by the browser as whoever is signed in. */
const ask = <T>(page: Page, path: string): Promise<T> =>
  page.evaluate(async (at) => (await fetch(at)).json(), path) as Promise<T>;

interface Packs {
  readonly toMake: readonly { readonly expectedMg: number }[];
  readonly packs: readonly {
    readonly serial: number;
    readonly orderId: string | null;
    readonly animalId: string;
    readonly netGrams: number;
    readonly soldMinor: number | null;
  }[];
}

interface Closing {
  readonly isClosed: boolean;
  readonly hangingGrams: number;
  readonly apartGrams: number;
  readonly packedGrams: number;
  readonly namedGrams: number;
  readonly restGrams: number;
  readonly margin: { readonly soldMinor: number };
}

describeInBrowser('the demo day, from the block to the last hand-over', () => {
  const day = dayInBrowser('owner', desk);

  const packs = (): Promise<Packs> => ask<Packs>(day.seen.page, `/api${day.dayPath}/packs`);

  it('weighs every pack by the keyboard, and says what is wrong with a weight', async () => {
    const { page } = day.seen;
    await page.getByRole('link', { name: 'Weigh and label' }).click();
    await page.getByRole('heading', { name: 'Weigh and label' }).waitFor();
    await expectSound(day.seen, 'weigh');
    const gross = page.getByLabel(/On the scale/);
    await gross.fill('0.01');
    await gross.press('Enter');
    await page.getByText('tare.text').waitFor();
    const { toMake } = await packs();
    for (const [index, { expectedMg }] of toMake.entries()) {
      await gross.fill((expectedMg / 453_592.37 + 0.04).toFixed(2));
      await gross.press('Enter');
      await page.getByText(`Pack ${index + 1}:`).waitFor();
    }
    await page.getByText('Everything that the plan foresees is weighed.').waitFor();
    await expectSound(day.seen, 'weighed');
  }, 240_000);

  it('prints the labels of a batch, and goes on where a printer stopped', async () => {
    const { page } = day.seen;
    await page.getByRole('button', { name: /^Print \d+ labels$/ }).click();
    const pdf = page.getByRole('link', { name: 'Open the rest as PDF' });
    const address = await pdf.getAttribute('href');
    const head = await page.evaluate(async (at) => {
      const answer = await fetch(at);
      return {
        status: answer.status,
        type: answer.headers.get('content-type'),
        start: (await answer.text()).slice(0, 5),
      };
    }, address ?? '');
    expect(head).toEqual({ status: 200, type: 'application/pdf', start: '%PDF-' });
    await page.getByRole('button', { name: 'All of these came out' }).click();
    await pdf.waitFor({ state: 'detached' });
  }, 120_000);

  it('settles each order, takes the money and hands its packs over', async () => {
    const { page } = day.seen;
    await page.getByRole('link', { name: 'Hand over' }).click();
    const order = page.getByLabel('Order');
    await order.waitFor();
    const values = await order
      .locator('option')
      .evaluateAll((options) =>
        options.map((option) => (option as HTMLOptionElement).value).filter((value) => value !== ''),
      );
    const all = (await packs()).packs;
    let isLookedAt = false;
    for (const orderId of values) {
      await order.selectOption(orderId);
      const settle = page.getByRole('button', { name: 'Settle the bill' });
      await settle.click();
      await page.getByText(/^Bill \d+$/).waitFor();
      if (!isLookedAt) await expectSound(day.seen, 'hand-over');
      isLookedAt = true;
      const pay = page.getByRole('button', { name: 'Take the payment' });
      if (await pay.isVisible()) await pay.click();
      await pay.waitFor({ state: 'detached' });
      const mine = all.filter((pack) => pack.orderId === orderId);
      for (const { serial } of mine) {
        await page.getByLabel(/Scan a label/).fill(String(serial));
        await page.getByLabel(/Scan a label/).press('Enter');
      }
      if (mine.length === 0) continue;
      await page
        .getByRole('button', {
          name: mine.length === 1 ? 'Hand over 1 pack' : `Hand over ${mine.length} packs`,
        })
        .click();
      await page.getByText('has left').first().waitFor();
    }
  }, 240_000);

  it('sells what is left over the counter', async () => {
    const { page } = day.seen;
    await page.getByRole('link', { name: 'Counter' }).click();
    await page.getByRole('heading', { name: 'What is left' }).waitFor();
    const boxes = page.getByRole('checkbox', { name: /^Sell pack/ });
    await boxes.first().waitFor();
    for (const box of await boxes.all()) await box.check();
    await expectSound(day.seen, 'counter');
    await page.getByRole('button', { name: /^Sell \d+ packs? for/ }).click();
    await page.getByText(/^Sold for/).waitFor();
    await page.getByText('Nothing is free.').waitFor();
  }, 120_000);

  it('closes each animal, and every gram and every cent balances', async () => {
    const { page } = day.seen;
    await page.goto(`${day.dayPath}/closing`);
    const { packs: all } = await packs();
    const animalIds = [...new Set(all.map(({ animalId }) => animalId))];
    const forms = page.locator('.animal-closing');
    await forms.nth(animalIds.length - 1).waitFor();
    await expectSound(day.seen, 'closing');
    for (let at = 0; at < animalIds.length; at++) {
      const form = forms.nth(at);
      const rest = form.getByRole('button', { name: 'All of the rest was drip and drying' });
      if (await rest.isVisible()) await rest.click();
      await form.getByRole('button', { name: /^Close / }).click();
      await form.getByText('Closed.').waitFor();
    }
    let soldMinor = 0;
    for (const animalId of animalIds) {
      const { isClosed, hangingGrams, apartGrams, packedGrams, namedGrams, restGrams, margin } =
        await ask<Closing>(page, `/api/animals/${animalId}/closing`);
      expect(isClosed).toBe(true);
      expect(hangingGrams + apartGrams).toBe(packedGrams + namedGrams + restGrams);
      expect(packedGrams).toBe(
        all.filter((pack) => pack.animalId === animalId).reduce((sum, { netGrams }) => sum + netGrams, 0),
      );
      soldMinor += margin.soldMinor;
    }
    let takenMinor = all.reduce((sum, pack) => sum + (pack.soldMinor ?? 0), 0);
    for (const orderId of new Set(all.flatMap((pack) => pack.orderId ?? []))) {
      const account = await ask<{ bill: { totalMinor: number }; dueMinor: number }>(
        page,
        `/api/orders/${orderId}/account`,
      );
      expect(account.dueMinor).toBe(0);
      takenMinor += account.bill.totalMinor;
    }
    expect(soldMinor).toBe(takenMinor);
    await picture(page, 'closed-1440');
  }, 120_000);
});
