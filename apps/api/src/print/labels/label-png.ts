import type { Drawing } from '@flitchbook/books';
import { createCanvas, GlobalFonts } from '@napi-rs/canvas';
import { faceFiles } from './face.ts';

/** Three pixels to a module of a symbol, so that bars keep whole pixels: near 289 to the inch. */
const umPerPixel = 88;

GlobalFonts.registerFromPath(faceFiles.plain, 'Label plain');
GlobalFonts.registerFromPath(faceFiles.bold, 'Label bold');

const pixels = (um: number): number => Math.round(um / umPerPixel);

/** One label as a picture, for printers that take nothing else. */
export async function labelPng({ widthUm, heightUm, marks }: Drawing): Promise<Uint8Array> {
  const canvas = createCanvas(pixels(widthUm), pixels(heightUm));
  const pen = canvas.getContext('2d');
  pen.fillStyle = 'white';
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.fillStyle = 'black';
  for (const mark of marks) {
    if (mark.mark === 'text') {
      pen.font = `${mark.sizeUm / umPerPixel}px "Label ${mark.isBold ? 'bold' : 'plain'}"`;
      pen.fillText(mark.text, mark.xUm / umPerPixel, mark.baselineUm / umPerPixel);
      continue;
    }
    const box = [pixels(mark.xUm), pixels(mark.yUm), pixels(mark.widthUm), pixels(mark.heightUm)] as const;
    if (mark.mark === 'fill') pen.fillRect(...box);
    else pen.strokeRect(...box);
  }
  return new Uint8Array(await canvas.encode('png'));
}
