import { launchBrowser } from '@flitchbook/test-harness';
import { describeInBrowser } from '@flitchbook/test-harness/vitest';
import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest';
import {
  clippedWords,
  desk,
  enter,
  open,
  overflowPx,
  type Seen,
  smallTargets,
  telephone,
  violations,
} from './board-screen.ts';
import { type RunningShop, startShop } from './running-service.ts';

describeInBrowser('what an animal gives, in a browser, on a running shop', () => {
  let browser: Browser;
  let shop: RunningShop;
  const opened: Seen[] = [];

  beforeAll(async () => {
    shop = await startShop();
    browser = await launchBrowser();
  }, 180_000);
  afterAll(async () => {
    await browser?.close();
    await shop?.stop();
  });
  afterEach(async () => {
    for (const { context } of opened.splice(0)) await context.close();
  });

  it.each([
    ['telephone', telephone],
    ['desk', desk],
  ])('shows tree, sources and learned figures on a %s, and breaks no rule of access', async (_, screen) => {
    const seen = await open(browser, shop, screen);
    opened.push(seen);
    await enter(seen, 'butcher');
    const { page, complaints } = seen;
    await page.getByRole('link', { name: 'What an animal gives' }).click();
    await page.getByRole('rowheader', { name: 'Fresh ham' }).waitFor();
    await page.locator('#measured').setInputFiles('examples/yields/measured-sides.json');
    await page.getByText('from 9 sides').first().waitFor();
    await page.locator('#weight').fill('184');
    expect(await page.getByRole('row', { name: /Belly, sheeted/ }).textContent()).toMatch(
      /heavier than published/,
    );
    expect(await violations(page)).toEqual([]);
    expect(await overflowPx(page)).toBe(0);
    expect(await clippedWords(page)).toEqual([]);
    expect(await smallTargets(page, 44)).toEqual([]);
    expect(complaints).toEqual([]);
  });
});
