// Stencil letters drawn for this project: strokes on a field of 20 by 28, with the breaks a cut stencil needs.

const glyphWidth = 20;
export const glyphHeight = 28;

/** Path data of each letter, to be stroked 5 wide with butt ends. */
const glyphs: Readonly<Record<string, string>> = {
  A: 'M3 28 8.6 1.5M17 28 11.4 1.5M7.2 18.5H12.8',
  B: 'M3.5 0V28M8 2.5H11A5 5 0 0 1 11 12.3H8M8 15.7H11.5A5 5 0 0 1 11.5 25.5H8',
  C: 'M17 8.5A7 7 0 0 0 11.7 2.6M8.3 2.6A7 7 0 0 0 3.5 9V19A7 7 0 0 0 8.3 25.4M11.7 25.4A7 7 0 0 0 17 19.5',
  D: 'M3.5 0V28M8 2.5A8.5 8.5 0 0 1 16.5 11V17A8.5 8.5 0 0 1 8 25.5',
  E: 'M3.5 0V28M8 2.5H17.5M8 14H15.5M8 25.5H17.5',
  F: 'M3.5 0V28M8 2.5H17.5M8 14H15.5',
  G: 'M17 8.5A7 7 0 0 0 11.7 2.6M8.3 2.6A7 7 0 0 0 3.5 9V19A7 7 0 0 0 8.3 25.4M11.7 25.4A7 7 0 0 0 16.5 19V15.5H11',
  H: 'M3.5 0V28M16.5 0V28M8 14H12',
  I: 'M10 0V28',
  J: 'M15.5 0V18.5A6.5 6.5 0 0 1 11 25.2M8 25.2A6 6 0 0 1 3.5 19.5',
  K: 'M3.5 0V28M17 0.8 8.3 12.6M8.3 15.4 17.2 27.2',
  L: 'M3.5 0V28M8 25.5H17.5',
  M: 'M3 28V0M17 28V0M6.6 5.5 9 15M13.4 5.5 11 15',
  N: 'M3.2 28V0M16.8 28V0M6.6 5 13.4 23',
  O: 'M8.3 2.6A7 7 0 0 0 3.5 9V19A7 7 0 0 0 8.3 25.4M11.7 2.6A7 7 0 0 1 16.5 9V19A7 7 0 0 1 11.7 25.4',
  P: 'M3.5 0V28M8 2.5H10.5A6 6 0 0 1 10.5 15.5H8',
  Q: 'M8.3 2.6A7 7 0 0 0 3.5 9V19A7 7 0 0 0 8.3 25.4M11.7 2.6A7 7 0 0 1 16.5 9V18M12 19.5 17.6 27',
  R: 'M3.5 0V28M8 2.5H10.5A6 6 0 0 1 10.5 15H8M10.8 17.8 16.8 28',
  S: 'M16.3 7.5A6.3 6.3 0 0 0 11.7 2.6M8.3 2.7A5.5 5.5 0 0 0 4 8C4 12.5 16.3 14.5 16.3 20A5.5 5.5 0 0 1 11.8 25.3M8.4 25.4A6.5 6.5 0 0 1 3.4 20',
  T: 'M10 6.5V28M0.8 2.5H19.2',
  U: 'M3.5 0V19A6.8 6.8 0 0 0 8.3 25.4M16.5 0V19A6.8 6.8 0 0 1 11.7 25.4',
  V: 'M2.8 0 8.6 26.5M17.2 0 11.4 26.5',
  W: 'M2.6 0 5.6 27M17.4 0 14.4 27M8.3 26 9.2 10M11.7 26 10.8 10',
  X: 'M3 0 8.4 11.6M17 0 11.6 11.6M3 28 8.4 16.4M17 28 11.6 16.4',
  Y: 'M10 15.5V28M2.8 0 8.2 12.2M17.2 0 11.8 12.2',
  Z: 'M2 2.5H18M16.6 7 4 21M2 25.5H18',
};

export interface PlacedGlyph {
  readonly path: string;
  /** shift to the right in the field's own units */
  readonly x: number;
}

const gap = 5;

/** Letters of a word side by side; a character without a glyph is left out. */
export function setWord(text: string): { readonly glyphs: readonly PlacedGlyph[]; readonly width: number } {
  let x = 0;
  const placed = [...text].flatMap((letter): PlacedGlyph[] => {
    const path = glyphs[letter];
    if (path === undefined) return [];
    const narrow = letter === 'I';
    const glyph = { path, x: narrow ? x - 6 : x };
    x += (narrow ? 8 : glyphWidth) + gap;
    return [glyph];
  });
  return { glyphs: placed, width: Math.max(0, x - gap) };
}
