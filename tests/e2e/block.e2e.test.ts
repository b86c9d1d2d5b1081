import { describeInBrowser } from '@flitchbook/test-harness/vitest';
import { describe, expect, it } from 'vitest';
import {
  clippedWords,
  desk,
  overflowPx,
  picture,
  type Seen,
  smallTargets,
  violations,
} from './board-screen.ts';
import { lostOnPaper, papers, printedPages } from './paper.ts';
import { dayInBrowser } from './shop-in-browser.ts';

const widths = [360, 820, 1440];

/** The page has nothing to say against itself, as wide as a telephone, a tablet and a desk. */
async function expectSound({ page, complaints }: Seen, name: string, targetPx = 44): Promise<void> {
  for (const width of widths) {
    await page.setViewportSize({ width, height: 900 });
    expect(await violations(page), `${name} at ${width}`).toEqual([]);
    expect(await overflowPx(page), `${name} at ${width}`).toBe(0);
    expect(await clippedWords(page), `${name} at ${width}`).toEqual([]);
    expect(await smallTargets(page, targetPx), `${name} at ${width}`).toEqual([]);
    await picture(page, `${name}-${width}`);
  }
  expect(complaints).toEqual([]);
}

describeInBrowser('the block, in a browser', () => {
  const day = dayInBrowser('butcher', desk);

  describe('the cut list', () => {
    const list = (query: string): string => `/api${day.dayPath}/cut-list.html${query}`;

    it.each(['side', 'station', 'person'])(
      'by %s loses nothing on paper, and looks right on a screen',
      async (by) => {
        const { page } = day.seen;
        for (const size of ['', '&print=large']) {
          await page.goto(list(`?by=${by}${size}`));
          for (const paper of papers) {
            expect(await page.locator('tr').count()).toBeGreaterThan(30);
            expect(await lostOnPaper(page, paper), `${by}${size} on ${paper.format}`).toEqual([]);
          }
        }
        if (by === 'side') await expectSound(day.seen, 'cut-list');
      },
    );

    it('puts each side on pages of its own, and as many pages on either paper as the picture says', async () => {
      const { page } = day.seen;
      await page.goto(list(''));
      for (const paper of papers) {
        const parts = await page.locator('.part').count();
        const pages = await printedPages(page, paper);
        expect(pages).toBeGreaterThanOrEqual(parts);
        expect(pages).toBeLessThanOrEqual(parts * 4);
      }
    });

    it('says the same by side as by person: every piece once', async () => {
      const { page } = day.seen;
      const pieces = async (by: string): Promise<number> => {
        await page.goto(list(`?by=${by}`));
        const counts = await page.locator('td b').allTextContents();
        return counts.reduce((sum, text) => sum + (Number.parseInt(text, 10) || 0), 0);
      };
      const bySide = await pieces('side');
      expect(bySide).toBeGreaterThan(50);
      expect([await pieces('station'), await pieces('person')]).toEqual([bySide, bySide]);
    });

    it('names an arrangement that it does not know', async () => {
      await day.seen.page.goto(list('?by=moon'));
      expect(await day.seen.page.getByRole('alert').textContent()).toContain('“moon”');
    });
  });

  it('lists everybody whom the animals leave short, with the reason, as many as the board counts', async () => {
    const { page } = day.seen;
    await page.setViewportSize({ width: desk.width, height: desk.height });
    await page.goto(day.dayPath);
    await page.getByRole('link', { name: 'Who is short' }).click();
    await page.getByRole('heading', { name: 'Promised beyond the animals' }).waitFor();
    const board = await page.evaluate(
      async (at) =>
        (await fetch(`/api${at}/board`)).json() as Promise<{
          plan: { lines: { filled: number; asked: number }[] };
        }>,
      day.dayPath,
    );
    const short = board.plan.lines.filter(({ filled, asked }) => filled < asked).length;
    expect(short).toBeGreaterThan(0);
    expect(await page.locator('.watch-lines > li').count()).toBe(short);
    expect(await page.locator('.watch-lines .hint').count()).toBe(short);
    await expectSound(day.seen, 'watch');
  });
});
