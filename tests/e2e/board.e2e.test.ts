import { describeInBrowser } from '@flitchbook/test-harness/vitest';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import {
  clippedWords,
  desk,
  enter,
  openDay,
  overflowPx,
  picture,
  type Screen,
  type Seen,
  smallTargets,
  tablet,
  telephone,
  violations,
} from './board-screen.ts';
import { shopInBrowser } from './shop-in-browser.ts';

const screens: readonly (readonly [string, Screen])[] = [
  ['telephone', telephone],
  ['tablet', tablet],
  ['desk', desk],
];

/** The page has nothing to say against itself. */
async function expectSound({ page, complaints }: Seen): Promise<void> {
  expect(await violations(page)).toEqual([]);
  expect(await overflowPx(page)).toBe(0);
  expect(await clippedWords(page)).toEqual([]);
  expect(complaints).toEqual([]);
}

const focused = (page: Page): Promise<string> =>
  page.evaluate(
    () => document.activeElement?.getAttribute('aria-label') ?? document.activeElement?.textContent ?? '',
  );

async function tabUntil(page: Page, isThere: (name: string) => boolean, most = 120): Promise<string> {
  for (let turn = 0; turn < most; turn++) {
    await page.keyboard.press('Tab');
    const name = await focused(page);
    if (isThere(name)) return name;
  }
  throw new Error(`not reached by ${most} presses of the tab key`);
}

/** Opens a choice on the first side that nobody owns. */
const choice = (page: Page, name: string) => page.locator('.choice').filter({ hasText: name }).first();

/** One of the answers to the choice that is open. */
const option = (page: Page, name: string) => page.locator('.option').filter({ hasText: name });

async function tried(page: Page): Promise<void> {
  await page.locator('.trial .told').waitFor({ timeout: 60_000 });
  await page.locator('.is-busy').waitFor({ state: 'detached', timeout: 60_000 });
}

describeInBrowser('the day board in a browser, on a running shop', () => {
  const shopped = shopInBrowser();
  const { seen } = shopped;

  async function board(screen: Screen, role: 'owner' | 'butcher' | 'counter hand' = 'owner'): Promise<Seen> {
    const it = await seen(screen);
    await enter(it, role);
    await openDay(it);
    return it;
  }

  describe('signing in', () => {
    it('takes an e-mail address and a password by keyboard alone, and refuses a wrong one in words', async () => {
      const it = await seen(desk);
      const { page } = it;
      const butcher = shopped.shop().keys.find(({ role }) => role === 'butcher');
      await expectSound(it);
      await page.keyboard.press('Tab');
      await page.keyboard.type(butcher?.email ?? '');
      await page.keyboard.press('Tab');
      await page.keyboard.type('not the password');
      await page.keyboard.press('Enter');
      await page.getByRole('alert').getByText(/./).waitFor();
      await expectSound(it);
      await page.getByLabel('Password').fill(butcher?.password ?? '');
      await page.keyboard.press('Enter');
      await page.getByRole('heading', { name: 'Cutting days' }).waitFor();
      await expectSound(it);
    });

    it('ends by signing out', async () => {
      const { page } = await board(desk, 'butcher');
      await page.getByRole('button', { name: 'Sign out' }).click();
      await page.getByRole('heading', { name: 'Sign in' }).waitFor();
    });
  });

  describe.each(screens)('on a %s', (name, screen) => {
    it('shows every side, what is short and why', async () => {
      const it = await board(screen);
      const { page } = it;
      await picture(page, `board-${name}`);
      await expectSound(it);
      if (screen.touch) await page.getByRole('button', { name: 'Orders', exact: true }).click();
      const short = page.locator('.line.short');
      expect(await short.count()).toBeGreaterThan(0);
      expect(await short.locator('.reason p').first().textContent()).toMatch(/\.$/);
      expect(await page.locator('.line.short:not(:has(.reason))').count()).toBe(0);
      await picture(page, `orders-${name}`);
      await expectSound(it);
      await page.getByRole('button', { name: 'Short only' }).click();
      expect(await page.locator('.order:not(.short)').count()).toBe(0);
      if (screen.touch) await page.getByRole('button', { name: 'Left over', exact: true }).click();
      expect(await page.getByRole('rowheader', { name: 'Leaf fat' }).count()).toBe(1);
      expect(await page.getByRole('rowheader', { name: 'Hard back fat' }).count()).toBe(1);
      await picture(page, `left-over-${name}`);
      await expectSound(it);
    });

    it('tells of a piece that is touched, and lights what else is that customer’s', async () => {
      const it = await board(screen);
      const { page } = it;
      // Not on a side that is one customer's whole: there every piece is theirs.
      const block = page.locator('.side:not(:has(.stamp)) g.block[aria-label*="order"]').first();
      const box = await block.boundingBox();
      if (!box) throw new Error('no piece is drawn');
      await block.scrollIntoViewIfNeeded();
      await block.click();
      const tray = page.getByRole('complementary', { name: 'Under the knife' });
      const [label] = ((await block.getAttribute('aria-label')) ?? '').split(',');
      expect(await tray.textContent()).toContain(label);
      expect(await page.locator('.block.lit, .block.chosen').count()).toBeGreaterThan(0);
      await picture(page, `piece-${name}`);
      await expectSound(it);
      await tray.getByRole('button', { name: 'Close' }).click();
      await tray.waitFor({ state: 'detached' });
    });

    it('has targets big enough for a thumb', async () => {
      const it = await board({ ...screen, touch: true });
      await choice(it.page, 'Fresh ham').click();
      expect(await smallTargets(it.page, 44)).toEqual([]);
    });
  });

  describe('splitting a side', () => {
    it('tries a choice out, says who gains and loses, puts it back', async () => {
      const it = await board(desk, 'butcher');
      const { page } = it;
      const before = await page.locator('.summary').textContent();
      const middles = page.locator('.choice').filter({ hasText: /^Middle, tenderloin (in|out)/ });
      await middles.filter({ hasNotText: 'Porchetta' }).first().click();
      await option(page, 'Porchetta of the whole middle').click();
      await tried(page);
      expect(await page.locator('.trial .told').textContent()).toMatch(
        /\d+ lines? loses?,|No order gains or loses/,
      );
      await picture(page, 'trying-desk');
      await expectSound(it);
      await page.getByRole('button', { name: 'Put back' }).click();
      await page.locator('.trial').waitFor({ state: 'detached' });
      expect(await page.locator('.summary').textContent()).toBe(before);
    });

    it('keeps a choice, locked, for whoever looks next; then frees it', async () => {
      const it = await board(tablet, 'butcher');
      const { page } = it;
      await choice(page, 'Boston butt').click();
      await option(page, 'Keep the butt whole').click();
      await tried(page);
      await page.getByRole('button', { name: 'Keep it' }).click();
      await page.getByText('Kept, and the day is planned again.').waitFor({ timeout: 60_000 });
      await expectSound(it);
      await page.reload();
      await page.locator('.bar svg').first().waitFor();
      const kept = page
        .locator('.choice', { hasText: 'Boston butt' })
        .filter({ has: page.locator('.lock-sign') });
      expect(await kept.first().textContent()).toContain('Locked: Keep the butt whole');
      await kept.first().click();
      await page.getByRole('button', { name: 'Unlock: Boston butt' }).click();
      await page.getByText('Kept, and the day is planned again.').waitFor({ timeout: 60_000 });
      expect(await page.locator('.choice .lock-sign').count()).toBe(0);
    });

    it('when someone else was faster, shows their day and tries the same choice on it', async () => {
      const [mine, theirs] = [await board(desk, 'butcher'), await board(desk, 'owner')];
      await choice(mine.page, 'Picnic').click();
      await option(mine.page, 'Bone the picnic for the grinder').click();
      await tried(mine.page);
      await choice(theirs.page, 'Fresh ham').click();
      await option(theirs.page, 'Halve the leg').click();
      await tried(theirs.page);
      await theirs.page.getByRole('button', { name: 'Keep it' }).click();
      await theirs.page.getByText('Kept, and the day is planned again.').waitFor({ timeout: 60_000 });
      await mine.page.getByRole('button', { name: 'Keep it' }).click();
      await mine.page.getByText('Someone else changed this day meanwhile.').waitFor({ timeout: 60_000 });
      await tried(mine.page);
      await expectSound(mine);
      await mine.page.getByRole('button', { name: 'Keep it' }).click();
      await mine.page.getByText('Kept, and the day is planned again.').waitFor({ timeout: 60_000 });
      expect(await mine.page.locator('.choice .lock-sign').count()).toBe(2);
    });

    it('loses nothing when the network goes', async () => {
      const it = await board(desk, 'butcher');
      const { page, context } = it;
      await choice(page, 'Boston butt').click();
      await option(page, 'Seam out the coppa').click();
      await tried(page);
      await context.setOffline(true);
      await page.getByRole('button', { name: 'Keep it' }).click();
      await page.getByText('cannot be reached').waitFor();
      await expectSound(it);
      await context.setOffline(false);
      await page.getByRole('button', { name: 'Keep it' }).click();
      await page.getByText('Kept, and the day is planned again.').waitFor({ timeout: 60_000 });
    });
  });

  describe('by keyboard alone', () => {
    it('reaches a bar, goes along its pieces, opens a choice and tries it', async () => {
      const it = await board(desk, 'butcher');
      const { page } = it;
      await page.locator('body').press('Home');
      await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
      const first = await tabUntil(page, (name) => name.includes('about'));
      await page.keyboard.press('ArrowRight');
      const second = await focused(page);
      expect(second).toContain('about');
      const ring = await page.evaluate(
        () =>
          getComputedStyle(document.activeElement?.querySelector('.edge, .free-edge') as Element).strokeWidth,
      );
      expect(Number.parseFloat(ring)).toBeGreaterThanOrEqual(3);
      await page.keyboard.press('Home');
      expect(await focused(page)).toBe(first);
      await page.keyboard.press('Escape');
      expect(await page.locator('.tray').count()).toBe(0);
      await tabUntil(page, (name) => name.startsWith('Fresh ham'));
      await page.keyboard.press('Enter');
      await tabUntil(page, (name) => name.startsWith('Keep the leg whole'), 5);
      await page.keyboard.press('Enter');
      await Promise.race([
        tried(page),
        page.locator('.trial').waitFor({ state: 'detached', timeout: 60_000 }),
      ]);
      await expectSound(it);
    });
  });

  describe('taking an order at the telephone', () => {
    it('puts it on the book, plans it, and shows it with its letter', async () => {
      const it = await board(telephone, 'counter hand');
      const { page } = it;
      const before = await page.locator('.order').count();
      await page.getByRole('link', { name: 'Add an order' }).click();
      await page.getByRole('heading', { name: 'Add an order' }).waitFor();
      await expectSound(it);
      await page.getByRole('button', { name: 'Put it on the book' }).click();
      await page.getByText('Write whose order it is.').first().waitFor();
      await expectSound(it);
      await page.getByLabel('Name').fill('Bess Harlow');
      await page.getByLabel('Add a cut').selectOption('hind-hock');
      await page.getByRole('button', { name: 'Pieces: One more' }).click();
      await page.getByLabel('Add a cut').selectOption('butt-roast');
      await page.getByLabel('From, lb').fill('x');
      await page.getByRole('button', { name: 'Put it on the book' }).click();
      await page.getByText('A weight is a number above 0').first().waitFor();
      await page.getByLabel('From, lb').fill('3');
      await page.getByRole('radio', { name: 'Wished' }).last().check({ force: true });
      await page.locator('summary').first().click();
      expect(await smallTargets(page, 44)).toEqual([]);
      await picture(page, 'order-telephone');
      await expectSound(it);
      await page.getByRole('button', { name: 'Put it on the book' }).click();
      await page.getByText('The day is planned again.').waitFor({ timeout: 60_000 });
      await page.getByRole('button', { name: 'Orders', exact: true }).click();
      expect(await page.locator('.order').count()).toBe(before + 1);
      const mine = page.locator('.order', { hasText: 'Bess Harlow' });
      expect(await mine.textContent()).toMatch(/2 × Hind hock[12] of 2/);
    });
  });

  describe('on paper', () => {
    it.each(['A4', 'Letter'])('prints on %s: orders, one sheet an animal, what is left', async (format) => {
      const { page } = await board(desk, 'butcher');
      const pdf = (await page.pdf({ format, preferCSSPageSize: true })).toString('latin1');
      const sheets = pdf.match(/\/Type\s*\/Page[^s]/g)?.length ?? 0;
      const animals = await page.locator('.animal').count();
      expect(sheets).toBeGreaterThanOrEqual(animals + 2);
      expect(sheets).toBeLessThanOrEqual(animals * 2 + 6);
    });

    it('leaves out what cannot be pressed on paper, and cuts nothing off', async () => {
      const { page } = await board(desk, 'butcher');
      await page.setViewportSize({ width: 718, height: 1000 });
      await page.emulateMedia({ media: 'print' });
      for (const name of ['Plan again', 'Sign out', 'Short only']) {
        expect(await page.getByRole('button', { name }).isVisible()).toBe(false);
      }
      expect(await page.locator('.orders').isVisible()).toBe(true);
      expect(await page.locator('.totals').isVisible()).toBe(true);
      expect(await overflowPx(page)).toBe(0);
      const widest = await page.evaluate(() =>
        Math.max(
          ...[...document.querySelectorAll('.bar svg')].map((bar) => bar.getBoundingClientRect().right),
        ),
      );
      expect(widest).toBeLessThanOrEqual(718);
      await picture(page.locator('.animal').first(), 'paper');
    });
  });

  it('reads in the dark of a cold room too', async () => {
    const it = await board({ ...desk, dark: true }, 'butcher');
    await picture(it.page, 'board-dark');
    await expectSound(it);
    await choice(it.page, 'Fresh ham').click();
    await expectSound(it);
  });

  it('says that a page or a day is not there', async () => {
    const it = await board(telephone);
    await it.page.goto('/nowhere');
    await it.page.getByText('This page does not exist.').waitFor();
    await expectSound(it);
  });

  it('is light to fetch: the first page stays under 100 kB on the wire', async () => {
    const { page, context } = await seen(telephone);
    const wire = await context.newCDPSession(page);
    let bytes = 0;
    await wire.send('Network.enable');
    await wire.send('Network.setCacheDisabled', { cacheDisabled: true });
    wire.on('Network.loadingFinished', ({ encodedDataLength }) => {
      bytes += encodedDataLength;
    });
    await page.reload({ waitUntil: 'networkidle' });
    expect(bytes).toBeGreaterThan(10_000);
    expect(bytes).toBeLessThan(100_000);
  });
});
