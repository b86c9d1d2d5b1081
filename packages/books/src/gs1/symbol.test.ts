import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { beforeAll, describe, expect, it } from 'vitest';
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';
import { withCheckDigit } from './check-digit.ts';
import { readElements } from './element-string.ts';
import { type DrawnSymbol, drawSymbol, type SymbolKind } from './symbol.ts';

// Read back by zxing-cpp, which shares no code with the library that draws.
beforeAll(async () => {
  const wasm = createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm');
  await prepareZXingModule({
    overrides: { wasmBinary: new Uint8Array(readFileSync(wasm)).buffer },
    fireImmediately: true,
  });
});

/** Black on white, `scale` pixels to a module, with the clear margin that the symbol asks for. */
function picture({ across, down, dark, quiet }: DrawnSymbol, scale: number) {
  const margin = quiet + 2;
  const [width, height] = [(across + margin * 2) * scale, (down + 8) * scale];
  const data = new Uint8ClampedArray(width * height * 4).fill(255);
  for (const { x, y, width: wide, height: high } of dark)
    for (let row = (y + 4) * scale; row < (y + 4 + high) * scale; row++)
      for (let column = (x + margin) * scale; column < (x + margin + wide) * scale; column++)
        data.fill(0, (row * width + column) * 4, (row * width + column) * 4 + 3);
  return { data, width, height, colorSpace: 'srgb' } as Parameters<typeof readBarcodes>[0];
}

async function readBack(kind: SymbolKind, text: string): Promise<{ format: string; text: string }[]> {
  const symbol = drawSymbol(kind, text);
  if (!symbol.ok) throw new Error(JSON.stringify(symbol.slips));
  const found = await readBarcodes(picture(symbol.value, 3), { textMode: 'HRI' });
  return found.map((each) => ({ format: each.format, text: each.text }));
}

const full = `(01)${withCheckDigit('9952000000001')}(3202)000150(13)261126(15)261130(10)261126-3F9A1CL(21)42`;

describe('a symbol, read by another program', () => {
  it('GS1-128', async () => {
    const [found] = await readBack('gs1-128', full);
    expect(readElements(found?.text ?? '')).toEqual(readElements(full));
  });

  it('DataBar Expanded, stacked so that it fits a label', async () => {
    const [found] = await readBack('databar', full);
    expect(found?.format).toMatch(/DataBarExp/);
    expect(readElements(found?.text ?? '')).toEqual(readElements(full));
  });

  it('EAN-13 and UPC-A with a price inside', async () => {
    expect((await readBack('ean-13', '2012345928756'))[0]?.text).toBe('2012345928756');
    expect((await readBack('upc-a', '212345212325'))[0]?.text.slice(-12)).toBe('212345212325');
  });
});

it('refuses to draw a wrong check digit, and says so', () => {
  const wrong = drawSymbol('ean-13', '2012345928757');
  expect(wrong).toMatchObject({ ok: false, slips: [{ at: 'symbol', value: '2012345928757' }] });
  expect(!wrong.ok && wrong.slips[0]?.says).toMatch(/check digit/i);
});
