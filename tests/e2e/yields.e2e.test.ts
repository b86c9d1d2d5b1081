import { describeInBrowser } from '@flitchbook/test-harness/vitest';
import { expect, it } from 'vitest';
import {
  clippedWords,
  desk,
  enter,
  overflowPx,
  smallTargets,
  telephone,
  violations,
} from './board-screen.ts';
import { shopInBrowser } from './shop-in-browser.ts';

describeInBrowser('what an animal gives, in a browser, on a running shop', () => {
  const shopped = shopInBrowser();

  it.each([
    ['telephone', telephone],
    ['desk', desk],
  ])('shows tree, sources and learned figures on a %s, and breaks no rule of access', async (_, screen) => {
    const seen = await shopped.seen(screen);
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
