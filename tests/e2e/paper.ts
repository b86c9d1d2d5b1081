import type { Page } from 'playwright-core';

interface Paper {
  readonly format: 'A4' | 'Letter';
  readonly widthMm: number;
  readonly heightMm: number;
}

/** ISO 216 and ANSI/ASME Y14.1. */
export const papers: readonly Paper[] = [
  { format: 'A4', widthMm: 210, heightMm: 297 },
  { format: 'Letter', widthMm: 215.9, heightMm: 279.4 },
];

// The sheet's own margins (cut-sheet.css), and CSS pixels: 96 to an inch.
const marginMm = { across: 24, along: 28 };
const pxPerMm = 96 / 25.4;

/**
 * Lays the page out as the printer does, on the printable part of a sheet, and lists what a reader would lose: rows and
 * blocks that stick out or are too tall to stay on one page, words cut off, anything that is neither black nor white.
 */
export async function lostOnPaper(page: Page, { widthMm, heightMm }: Paper): Promise<string[]> {
  const width = Math.floor((widthMm - marginMm.across) * pxPerMm);
  const height = Math.floor((heightMm - marginMm.along) * pxPerMm);
  await page.setViewportSize({ width, height });
  await page.emulateMedia({ media: 'print' });
  const lost = await page.evaluate(
    ({ widthPx, heightPx }) => {
      const say = (element: Element, why: string): string =>
        `${why}: ${element.tagName} "${element.textContent?.slice(0, 50)}"`;
      const plain = /^rgba?\((0, 0, 0|255, 255, 255)/;
      return [...document.querySelectorAll<HTMLElement>('tr, td, th, p, b, h1, h2, li, .what')].flatMap(
        (element) => {
          const box = element.getBoundingClientRect();
          const { color, backgroundColor } = getComputedStyle(element);
          const isWhole = element.matches('tr, .what, p');
          return [
            ...(box.right > widthPx + 0.5 || box.left < -0.5 ? [say(element, 'sticks out')] : []),
            ...(isWhole && box.height > heightPx ? [say(element, 'taller than a page')] : []),
            ...(element.clientWidth > 0 && element.scrollWidth > element.clientWidth + 1
              ? [say(element, 'cut off')]
              : []),
            ...(plain.test(color) &&
            (plain.test(backgroundColor) || backgroundColor.startsWith('rgba(0, 0, 0, 0'))
              ? []
              : [say(element, 'in colour')]),
          ];
        },
      );
    },
    { widthPx: width, heightPx: height },
  );
  await page.emulateMedia({ media: 'screen' });
  return lost;
}

/** Pages that a printer would put out. */
export async function printedPages(page: Page, { format }: Paper): Promise<number> {
  const pdf = (await page.pdf({ format, preferCSSPageSize: true })).toString('latin1');
  return [...pdf.matchAll(/\/Type\s*\/Page\b(?!s)/g)].length;
}
