import { launchBrowser } from '@flitchbook/test-harness';
import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll } from 'vitest';
import { enter, open, openDay, type Screen, type Seen } from './board-screen.ts';
import { type RunningShop, startShop } from './running-service.ts';

export interface ShopInBrowser {
  shop(): RunningShop;
  /** a fresh profile at the shop's door, closed after the test */
  seen(screen: Screen): Promise<Seen>;
  /** a fresh profile for all tests of the group */
  kept(screen: Screen): Promise<Seen>;
}

/** A running shop and a browser for the tests of a group. Call it in the group, before its own hooks. */
export function shopInBrowser(): ShopInBrowser {
  let browser: Browser;
  let shop: RunningShop;
  const opened: Seen[] = [];
  beforeAll(async () => {
    shop = await startShop();
    browser = await launchBrowser();
  }, 240_000);
  afterAll(async () => {
    await browser?.close();
    await shop?.stop();
  });
  afterEach(async () => {
    for (const { context } of opened.splice(0)) await context.close();
  });
  const kept = (screen: Screen): Promise<Seen> => open(browser, shop, screen);
  return {
    shop: () => shop,
    kept,
    async seen(screen) {
      const it = await kept(screen);
      opened.push(it);
      return it;
    },
  };
}

/** As `shopInBrowser`, with somebody signed in at the demo's day for all tests of the group. */
export function dayInBrowser(role: Parameters<typeof enter>[1], screen: Screen) {
  const { kept } = shopInBrowser();
  const found = { seen: undefined as unknown as Seen, dayPath: '' };
  beforeAll(async () => {
    const seen = await kept(screen);
    await enter(seen, role);
    await openDay(seen);
    Object.assign(found, { seen, dayPath: new URL(seen.page.url()).pathname });
  }, 240_000);
  return found;
}
