import { createRequire } from 'node:module';
import type { Measure } from '@flitchbook/books';
import PDFDocument from 'pdfkit';

const require = createRequire(import.meta.url);

/** The face of labels and receipts (Roboto, Apache 2.0): the same on paper, in pictures and for measuring. */
export const faceFiles = {
  plain: require.resolve('roboto-fontface/fonts/roboto/Roboto-Regular.woff'),
  bold: require.resolve('roboto-fontface/fonts/roboto/Roboto-Bold.woff'),
};

export const pointsPerUm = 72 / 25_400;

/** Widths in the face, from the program that draws the PDF. */
export function faceMeasure(): Measure {
  const paper = new PDFDocument({ autoFirstPage: false });
  const known = new Map<string, number>();
  return (text, sizeUm, isBold) => {
    const key = `${isBold} ${text}`;
    const width =
      known.get(key) ??
      paper
        .font(isBold ? faceFiles.bold : faceFiles.plain)
        .fontSize(1000)
        .widthOfString(text);
    known.set(key, width);
    return (width * sizeUm) / 1000;
  };
}
