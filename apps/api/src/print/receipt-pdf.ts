import PDFDocument from 'pdfkit';
import type { Receipt } from '../services/bills/receipt.ts';
import { faceFiles } from './labels/face.ts';
import { collected } from './labels/labels-pdf.ts';

const columns = { name: 56, weight: 270, price: 360, amount: 450, right: 556 } as const;

/** A receipt on Letter. Rows that do not fit go on on the next page. */
export async function receiptPdf(
  { shop, title, subtitle, rows, sums, caution }: Receipt,
  madeAt: Date,
): Promise<Uint8Array> {
  const paper = new PDFDocument({ size: 'LETTER', margin: 56, info: { Title: title, CreationDate: madeAt } });
  const put = (text: string, x: number, y: number, width: number, align: 'left' | 'right'): void => {
    paper.text(text, x, y, { width, align });
  };
  return collected(paper, () => {
    paper.font(faceFiles.bold).fontSize(18).text(shop);
    paper.fontSize(14).text(title);
    paper.font(faceFiles.plain).fontSize(10).text(subtitle).moveDown();
    for (const { name, weight, price, amount } of rows) {
      if (paper.y > 700) paper.addPage();
      const { y } = paper;
      put(weight, columns.weight, y, 80, 'left');
      put(price, columns.price, y, 80, 'left');
      put(amount, columns.amount, y, columns.right - columns.amount, 'right');
      put(name, columns.name, y, columns.weight - columns.name - 8, 'left');
      paper.moveDown(0.3);
    }
    paper.moveDown();
    for (const { name, amount } of sums) {
      if (paper.y > 720) paper.addPage();
      const { y } = paper;
      put(amount, columns.amount, y, columns.right - columns.amount, 'right');
      put(name, columns.name, y, columns.amount - columns.name - 8, 'left');
    }
    if (caution !== null) paper.moveDown().font(faceFiles.bold).text(caution, columns.name);
  });
}
