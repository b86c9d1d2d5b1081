import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import {
  exampleGtin,
  type Label,
  labelOf,
  layOut,
  readElements,
  usualBookSettings,
  usualSheet,
} from '@flitchbook/books';
import { createCanvas, loadImage } from '@napi-rs/canvas';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { beforeAll, describe, expect, it } from 'vitest';
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';
import { faceMeasure } from './face.ts';
import { labelPng } from './label-png.ts';
import { labelsPdf } from './labels-pdf.ts';

const require = createRequire(import.meta.url);
const measure = faceMeasure();

beforeAll(async () => {
  const wasm = readFileSync(require.resolve('zxing-wasm/reader/zxing_reader.wasm'));
  await prepareZXingModule({ overrides: { wasmBinary: new Uint8Array(wasm).buffer }, fireImmediately: true });
});

const things = {
  'rib-chop': {
    ingredients: [],
    allergens: [],
    gtin: exampleGtin(1),
    item: '12345',
    storage: null,
    cooking: null,
    bestBeforeDays: null,
  },
};
const settings = {
  ...usualBookSettings,
  seller: {
    ...usualBookSettings.seller,
    name: 'Tallow Lane Butchery',
    street: '4 Tallow Lane',
    city: 'Ashford',
    postcode: '00001',
  },
  label: {
    ...usualBookSettings.label,
    things,
    safeHandling:
      'The wording that the rule of the place fixes stands here, as the shop typed it in. '.repeat(4),
  },
};
const pack = {
  what: 'rib-chop',
  name: 'Rib chop, 1 in',
  owner: 'Ines Okafor',
  animal: 'Hog 17',
  lot: '261126-3F9A1CL',
  serial: 42,
  net: { text: '2.45', unit: 'lb' },
  price: { minor: 599, per: 'lb' },
  amountMinor: 1468,
  currency: 'USD',
  packedOn: '2026-11-26',
  bestBefore: '2026-11-29',
  legalMode: 'for-sale',
  frozen: false,
} as const;

const label = (change: Partial<Parameters<typeof labelOf>[0]> = {}, set = settings): Label => {
  const made = labelOf({ ...pack, ...change }, set);
  if (!made.ok) throw new Error(JSON.stringify(made.slips));
  return made.value;
};
const drawn = (of: Label, size = settings.label.stock) => {
  const made = layOut(of, size, measure);
  if (!made.ok) throw new Error(JSON.stringify(made.slips));
  return made.value;
};

async function decode(png: Uint8Array): Promise<{ text: string; format: string }[]> {
  const image = await loadImage(Buffer.from(png));
  const canvas = createCanvas(image.width, image.height);
  canvas.getContext('2d').drawImage(image, 0, 0);
  const { data } = canvas.getContext('2d').getImageData(0, 0, image.width, image.height);
  const found = await readBarcodes(
    { data, width: image.width, height: image.height, colorSpace: 'srgb' } as Parameters<
      typeof readBarcodes
    >[0],
    { textMode: 'HRI', tryHarder: true },
  );
  return found.map(({ text, format }) => ({ text, format }));
}

interface CanvasMaker {
  create(
    width: number,
    height: number,
  ): { readonly canvas: { encode(type: 'png'): Promise<Uint8Array> }; readonly context: unknown };
}

/** Pages of a PDF as pictures and as text, by another program than the one that made them. */
async function pagesOf(
  pdf: Uint8Array,
  scale: number,
): Promise<{ png: Uint8Array; text: string; width: number; height: number }[]> {
  const document = await getDocument({ data: pdf.slice(), useSystemFonts: false, verbosity: 0 }).promise;
  const pages = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const viewport = page.getViewport({ scale });
    const { canvas, context } = (document.canvasFactory as CanvasMaker).create(
      viewport.width,
      viewport.height,
    );
    await page.render({ canvasContext: context as never, viewport }).promise;
    const { items } = await page.getTextContent();
    const text = items.map((item) => ('str' in item ? item.str : '')).join(' ');
    pages.push({
      png: new Uint8Array(await canvas.encode('png')),
      text,
      width: viewport.width / scale,
      height: viewport.height / scale,
    });
  }
  return pages;
}

const facts = `(01)${exampleGtin(1)}(3202)000245(13)261126(15)261129(10)261126-3F9A1CL(21)42`;

describe('a label', () => {
  it('as a picture is read by a scanner: item, weight, dates, lot and serial', async () => {
    const [found] = await decode(await labelPng(drawn(label())));
    expect(found?.format).toMatch(/DataBarExp/);
    expect(readElements(found?.text ?? '')).toEqual(readElements(facts));
  });

  it('as a PDF is a page of the roll each, read by a scanner, with every word on it', async () => {
    const pdf = await labelsPdf([drawn(label()), drawn(label({ serial: 43 }))], settings.label.stock, {
      skip: 0,
      madeAt: new Date(0),
    });
    const pages = await pagesOf(pdf, 4);
    expect(pages).toHaveLength(2);
    // Three by four inches: 216 by 288 points.
    expect(pages[0]).toMatchObject({ width: 216, height: 288 });
    for (const word of [
      'Rib chop, 1 in',
      'For Ines Okafor',
      '2.45 lb',
      '$5.99/lb',
      '$14.68',
      'Tallow Lane Butchery',
      'typed it in',
    ])
      expect(pages[0]?.text).toContain(word);
    expect(readElements((await decode(pages[0]?.png ?? new Uint8Array()))[0]?.text ?? '')).toEqual(
      readElements(facts),
    );
    expect(readElements((await decode(pages[1]?.png ?? new Uint8Array()))[0]?.text ?? '')).toMatchObject({
      value: expect.arrayContaining([{ ai: '21', value: '43' }]),
    });
  });

  it('goes onto sheets from the first free place on', async () => {
    const of = [42, 43, 44].map((serial) => drawn(label({ serial }), usualSheet));
    const pages = await pagesOf(await labelsPdf(of, usualSheet, { skip: 4, madeAt: new Date(0) }), 4);
    expect(pages.map(({ width, height }) => [Math.round(width), Math.round(height)])).toEqual([
      [612, 792],
      [612, 792],
    ]);
    // Two stand beside each other, which the decoder takes for one wide symbol; each is named on the page.
    expect(pages.map(({ text }) => text.match(/Pack \d+/g))).toEqual([['Pack 42', 'Pack 43'], ['Pack 44']]);
    expect(await decode(pages[1]?.png ?? new Uint8Array())).toHaveLength(1);
  });

  it('with the price inside is read at the till, and 100.00 is refused', async () => {
    const inside = { ...settings, label: { ...settings.label, symbol: 'price-inside' as const } };
    const [found] = await decode(await labelPng(drawn(label({ amountMinor: 2875 }, inside))));
    expect(found?.text).toBe('2012345928756');
    expect(labelOf({ ...pack, amountMinor: 10_000 }, inside)).toMatchObject({
      ok: false,
      slips: [{ at: 'priceMinor', value: 10_000 }],
    });
  });

  // 9 CFR 316.16: letters at least 3/8 in high. Capitals of the face are 1456 of 2048 units high (its own table OS/2).
  it('of meat cut for its owner says so in capitals of 3/8 in, and bears no price', () => {
    const owners = label({ legalMode: 'for-owner', price: null, amountMinor: null });
    expect(owners.figures).toEqual([{ term: 'Net weight', text: '2.45 lb' }]);
    const words = drawn(owners).marks.flatMap((mark) =>
      mark.mark === 'text' && mark.text.match(/NOT|SALE/) ? [mark] : [],
    );
    expect(words.map(({ text }) => text).join(' ')).toBe('NOT FOR SALE');
    for (const { sizeUm } of words) expect((sizeUm * 1456) / 2048).toBeGreaterThanOrEqual(9525);
  });

  it('takes 500 characters of text, smaller but not below a sixteenth of an inch, and refuses what does not fit', () => {
    const long = (length: number) => ({
      ...settings,
      label: {
        ...settings.label,
        cooking: 'w'
          .repeat(9)
          .concat(' ')
          .repeat(length / 10),
      },
    });
    const fitted = drawn(label({}, long(500)));
    for (const mark of fitted.marks)
      if (mark.mark === 'text') expect(mark.sizeUm).toBeGreaterThanOrEqual(1588);
    const refused = layOut(label({}, long(1900)), settings.label.stock, measure);
    expect(refused).toMatchObject({
      ok: false,
      slips: [{ at: 'label' }, { at: 'label.lines', value: expect.any(Number) }],
    });
    expect(labelOf({ ...pack, name: 'x'.repeat(2001) }, settings)).toMatchObject({
      ok: false,
      slips: [{ at: 'name', value: 2001 }],
    });
  });

  it('keeps everything inside its edges', () => {
    for (const mark of drawn(
      label({
        name: 'Whole boned and rolled shoulder of pork with a very long name',
        owner: 'The Lantern supper club of Ashford',
      }),
    ).marks) {
      const [right, bottom] =
        mark.mark === 'text'
          ? [mark.xUm + mark.widthUm, mark.baselineUm]
          : [mark.xUm + mark.widthUm, mark.yUm + mark.heightUm];
      expect(right).toBeLessThanOrEqual(settings.label.stock.widthUm);
      expect(bottom).toBeLessThanOrEqual(settings.label.stock.heightUm);
    }
  });
});
