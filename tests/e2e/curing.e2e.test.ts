import { describeInBrowser } from '@flitchbook/test-harness/vitest';
import { expect, it } from 'vitest';
import {
  clippedWords,
  desk,
  enter,
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

describeInBrowser('the page on curing in a browser', () => {
  const shopped = shopInBrowser();

  async function curing(screen: Screen): Promise<Seen> {
    const seen = await shopped.seen(screen);
    await enter(seen, 'butcher');
    await seen.page.getByRole('link', { name: 'Curing' }).click();
    await seen.page.getByRole('heading', { name: 'Curing', level: 1 }).waitFor();
    return seen;
  }

  async function expectSound({ page, complaints }: Seen): Promise<void> {
    expect(await violations(page)).toEqual([]);
    expect(await overflowPx(page)).toBe(0);
    expect(await clippedWords(page)).toEqual([]);
    expect(complaints).toEqual([]);
  }

  it.each([
    ['telephone', telephone],
    ['tablet', tablet],
    ['desk', desk],
    ['desk in the dark', { ...desk, dark: true }],
  ] as const)('is sound on a %s: within, refused, flagged, and at fault', async (name, screen) => {
    const seen = await curing(screen);
    const { page } = seen;
    await page.getByText('Within the limits set here').waitFor();
    await picture(page, `curing-${name}`);
    await expectSound(seen);
    await page.getByLabel('Level to reach', { exact: true }).last().fill('201 ppm');
    await page.getByText('Above a limit: do not use').waitFor();
    await expectSound(seen);
    await page.getByLabel('One step of your scale').fill('1 kg');
    await page.getByLabel('Level to reach', { exact: true }).last().fill('120 ppm');
    await page.getByText('Look at this first').waitFor();
    await expectSound(seen);
    await page.getByLabel('Nitrite, as printed on the bag').fill('6.25');
    await page.getByText('must say that it is a percentage').waitFor();
    await expectSound(seen);
    if (screen.touch) expect(await smallTargets(page, 44)).toEqual([]);
  });

  it('works by keyboard alone', async () => {
    const { page } = await curing(desk);
    await page.getByLabel('Place').focus();
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Control+A');
    await page.keyboard.type('10 kg');
    await page.getByText('19.20 g').first().waitFor();
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('meat');
  });
});
