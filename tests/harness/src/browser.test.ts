import { expect, it } from 'vitest';
import { describeInBrowser } from './for-vitest.ts';
import { findBrowsers, launchBrowser } from './index.ts';

const page = `<!doctype html><title>Bench</title>
<button onclick="this.textContent = 'cut ' + ++window.n">cut</button><script>window.n = 0</script>`;

describeInBrowser('a browser', () => {
  it.each(findBrowsers())('renders a page and follows a click ($origin, $path)', async (program) => {
    const browser = await launchBrowser(program);
    try {
      const tab = await browser.newPage();
      await tab.setContent(page);
      const button = tab.getByRole('button');
      await button.click();
      await button.click();
      expect(await button.textContent()).toBe('cut 2');
      expect((await button.boundingBox())?.width).toBeGreaterThan(20);
      expect((await tab.screenshot()).byteLength).toBeGreaterThan(500);
    } finally {
      await browser.close();
    }
  });
});
