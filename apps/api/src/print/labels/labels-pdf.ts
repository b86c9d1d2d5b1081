import { type Drawing, type LabelStock, type Mark, placesOn } from '@flitchbook/books';
import PDFDocument from 'pdfkit';
import { faceFiles, pointsPerUm } from './face.ts';

const points = (um: number): number => um * pointsPerUm;

function draw(paper: PDFKit.PDFDocument, mark: Mark): void {
  switch (mark.mark) {
    case 'fill':
      paper
        .rect(points(mark.xUm), points(mark.yUm), points(mark.widthUm), points(mark.heightUm))
        .fill('black');
      return;
    case 'frame':
      paper
        .rect(points(mark.xUm), points(mark.yUm), points(mark.widthUm), points(mark.heightUm))
        .lineWidth(0.6)
        .stroke('black');
      return;
    case 'text':
      paper
        .font(mark.isBold ? faceFiles.bold : faceFiles.plain)
        .fontSize(points(mark.sizeUm))
        .fillColor('black')
        .text(mark.text, points(mark.xUm), points(mark.baselineUm), {
          lineBreak: false,
          baseline: 'alphabetic',
        });
  }
}

/** Everything that a PDF program gives, as one piece. */
export async function collected(paper: PDFKit.PDFDocument, fill: () => void): Promise<Uint8Array> {
  const parts: Buffer[] = [];
  return new Promise((resolve, reject) => {
    paper.on('data', (part: Buffer) => parts.push(part));
    paper.on('end', () => resolve(new Uint8Array(Buffer.concat(parts))));
    paper.on('error', reject);
    fill();
    paper.end();
  });
}

/** Labels on a roll, one a page, or on sheets. @param skip places of the first sheet that are used up */
export async function labelsPdf(
  drawings: readonly Drawing[],
  stock: LabelStock,
  { skip, madeAt }: { readonly skip: number; readonly madeAt: Date },
): Promise<Uint8Array> {
  const [width, height] =
    stock.on === 'roll' ? [stock.widthUm, stock.heightUm] : [stock.pageWidthUm, stock.pageHeightUm];
  const paper = new PDFDocument({
    autoFirstPage: false,
    size: [points(width), points(height)],
    margin: 0,
    info: { Title: 'Labels', CreationDate: madeAt },
  });
  const places = placesOn(stock, drawings.length, skip);
  return collected(paper, () => {
    let page = -1;
    places.forEach((place, index) => {
      for (; page < place.page; page++) paper.addPage();
      paper.save().translate(points(place.xUm), points(place.yUm));
      for (const mark of drawings[index]?.marks ?? []) draw(paper, mark);
      paper.restore();
    });
    if (places.length === 0) paper.addPage();
  });
}
