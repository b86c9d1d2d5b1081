import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import axe from 'axe-core';
import type { Browser, BrowserContext, Locator, Page } from 'playwright-core';
import type { RunningShop } from './running-service.ts';

export interface Seen {
  readonly context: BrowserContext;
  readonly page: Page;
  /** what the browser complained about, without the refusals a test brings about on purpose */
  readonly complaints: string[];
}

export interface Screen {
  readonly width: number;
  readonly height: number;
  readonly touch?: boolean;
  readonly dark?: boolean;
}

export const telephone: Screen = { width: 360, height: 740, touch: true };
export const tablet: Screen = { width: 820, height: 1180, touch: true };
export const desk: Screen = { width: 1440, height: 1000 };

/** A refusal that the page expects and words for people: the browser lists it as an error all the same. */
const expectedRefusal =
  /Failed to load resource: .* (401|403|404|409|412|422)|net::ERR_INTERNET_DISCONNECTED/;

/** A fresh browser profile on the shop's door. */
export async function open(browser: Browser, shop: RunningShop, screen: Screen): Promise<Seen> {
  const context = await browser.newContext({
    viewport: { width: screen.width, height: screen.height },
    hasTouch: screen.touch ?? false,
    isMobile: screen.touch ?? false,
    colorScheme: screen.dark ? 'dark' : 'light',
    reducedMotion: 'reduce',
    baseURL: shop.address,
    locale: 'en-US',
  });
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('console', (message) => {
    const bad = message.type() === 'error' || message.type() === 'warning';
    if (bad && !expectedRefusal.test(message.text())) complaints.push(message.text());
  });
  await page.goto('/');
  await page.getByRole('heading', { name: 'Sign in' }).waitFor();
  return { context, page, complaints };
}

/** Signs in as somebody of the demo shop, by the button that the door shows for them. */
export async function enter({ page }: Seen, role: 'owner' | 'butcher' | 'counter hand'): Promise<void> {
  await page.getByRole('button', { name: new RegExp(`, ${role}$`) }).click();
  await page.getByRole('heading', { name: 'Cutting days' }).waitFor();
}

/** Goes to the one cutting day of the demo and waits for its plan. */
export async function openDay({ page }: Seen): Promise<void> {
  await page.locator('.day-card a').first().click();
  await page.locator('.bar svg').first().waitFor({ timeout: 60_000 });
  await page.locator('.stale').waitFor({ state: 'detached', timeout: 60_000 });
}

/** The page's own policy lets no script in; the browser's debugger may put one there all the same. */
async function putAxe(page: Page): Promise<void> {
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(axe.source);
}

/** Violations of WCAG 2.2 A and AA and of the checker's own good practice, one line each. */
export async function violations(page: Page): Promise<string[]> {
  await putAxe(page);
  const found = await page.evaluate(async () => {
    const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
    const checker = (globalThis as unknown as { axe: typeof axe }).axe;
    return (await checker.run({ runOnly: tags, resultTypes: ['violations'] })).violations;
  });
  return found.flatMap(({ id, nodes }) =>
    nodes.map((node) => `${id}: ${node.html.slice(0, 160)} ${node.failureSummary ?? ''}`),
  );
}

/** How far the page can be pushed sideways: 0 when everything fits. */
export const overflowPx = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/** Things to touch that are smaller than `px` either way. Pieces on a bar are left out: the whole bar takes the finger. */
export const smallTargets = (page: Page, px: number): Promise<string[]> =>
  page.evaluate((least) => {
    const seen = [...document.querySelectorAll<HTMLElement>('a, button, input, select, summary')];
    return seen.flatMap((element) => {
      const { width, height } = element.getBoundingClientRect();
      const shown = width > 1 && height > 1 && !element.closest('.skip, .visually-hidden');
      const label = element.closest('label');
      const box = label ? label.getBoundingClientRect() : { width, height };
      const fits = box.height >= least - 0.5 && box.width >= least - 0.5;
      return !shown || fits
        ? []
        : [`${element.tagName} "${element.textContent?.slice(0, 40)}" ${box.width} x ${box.height}`];
    });
  }, px);

/** Words cut off by the box they stand in. */
export const clippedWords = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [
      ...document.querySelectorAll<HTMLElement>('h1, h2, h3, h4, h5, p, span, th, td, button, a, label'),
    ].flatMap((element) => {
      const hidden =
        getComputedStyle(element).overflowX !== 'visible' &&
        !element.closest('.visually-hidden, .column-head h2');
      return hidden && element.scrollWidth > element.clientWidth + 1
        ? [element.textContent?.slice(0, 60) ?? '']
        : [];
    }),
  );

/** Keeps a picture where PICTURES_DIR says, for the documents; without it nothing is written. */
export async function picture(what: Page | Locator, name: string): Promise<void> {
  const folder = process.env['PICTURES_DIR'];
  if (folder === undefined) return;
  mkdirSync(folder, { recursive: true });
  await what.screenshot({ path: join(folder, `${name}.png`) });
}
