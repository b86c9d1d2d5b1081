import bwip from 'bwip-js/generic';
import { type Made, made, slip } from '../slips.ts';

/** A symbol as dark rectangles in whole modules, from its upper left corner. Clear margins are not part of it. */
export interface DrawnSymbol {
  readonly across: number;
  readonly down: number;
  readonly dark: readonly {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  }[];
  /** clear modules to the left and right that a reader needs */
  readonly quiet: number;
  /** read by people, below the bars */
  readonly says: string;
}

export type SymbolKind = 'gs1-128' | 'databar' | 'ean-13' | 'upc-a';

interface Bars {
  readonly sbs: readonly number[];
}
interface Pixels {
  readonly pixs: readonly number[];
  readonly pixx: number;
}

/** Heights in modules: EAN and UPC as published at nominal size (69 of 0.33 mm), GS1-128 half an inch at 0.25 mm. */
const inKind = {
  'gs1-128': { bcid: 'gs1-128', down: 51, quiet: 10 },
  databar: { bcid: 'databarexpandedstacked', down: 34, quiet: 1 },
  'ean-13': { bcid: 'ean13', down: 69, quiet: 11 },
  'upc-a': { bcid: 'upca', down: 69, quiet: 9 },
} as const satisfies Record<SymbolKind, { bcid: string; down: number; quiet: number }>;

function ofBars({ sbs }: Bars, down: number): Pick<DrawnSymbol, 'across' | 'down' | 'dark'> {
  let across = 0;
  const dark = sbs.flatMap((width, place) => {
    const x = across;
    across += width;
    return place % 2 === 0 && width > 0 ? [{ x, y: 0, width, height: down }] : [];
  });
  return { across, down, dark };
}

/**
 * Rows of a stacked DataBar, each given once: 34 modules high, with three separators of one module between two of them (GS1 General
 * Specifications, section 5.6). Dark modules of a row side by side are one rectangle.
 */
function ofRows({ pixs, pixx }: Pixels, rowDown: number): Pick<DrawnSymbol, 'across' | 'down' | 'dark'> {
  const dark = [];
  let down = 0;
  for (let row = 0; row * pixx < pixs.length; row++) {
    const height = row % 4 === 0 ? rowDown : 1;
    for (let x = 0; x < pixx; x++) {
      const from = x;
      while (x < pixx && pixs[row * pixx + x]) x++;
      if (x > from) dark.push({ x: from, y: down, width: x - from, height });
    }
    down += height;
  }
  return { across: pixx, down, dark };
}

/**
 * @param text digits with their check digit (EAN-13, UPC-A), or elements between brackets
 * @param segments how wide a stacked DataBar may be, in segments
 */
export function drawSymbol(kind: SymbolKind, text: string, segments = 8): Made<DrawnSymbol> {
  const { bcid, down, quiet } = inKind[kind];
  try {
    const [drawn] = bwip.raw({
      bcid,
      text,
      ...(kind === 'databar' ? { segments } : {}),
    } as never) as unknown as (Bars | Pixels)[];
    if (!drawn) return slip('symbol', text, 'could not be drawn');
    const shape = 'pixs' in drawn ? ofRows(drawn, down) : ofBars(drawn, down);
    return made({ ...shape, quiet, says: text });
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return slip('symbol', text, why.replace(/^bwipp?\.[a-zA-Z0-9#-]+: ?/, ''));
  }
}
