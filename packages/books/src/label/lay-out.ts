import { type Made, made, slip } from '../slips.ts';
import type { Label } from './label.ts';

/** Something on a label, from its upper left corner. */
export type Mark =
  | {
      readonly mark: 'text';
      readonly xUm: number;
      readonly baselineUm: number;
      readonly sizeUm: number;
      readonly isBold: boolean;
      readonly text: string;
      readonly widthUm: number;
    }
  | {
      readonly mark: 'fill' | 'frame';
      readonly xUm: number;
      readonly yUm: number;
      readonly widthUm: number;
      readonly heightUm: number;
    };

export interface Drawing {
  readonly widthUm: number;
  readonly heightUm: number;
  readonly marks: readonly Mark[];
}

/** How wide a text is in the face that will print it, um. */
export type Measure = (text: string, sizeUm: number, isBold: boolean) => number;

interface Size {
  readonly widthUm: number;
  readonly heightUm: number;
}

/** Smallest type: a sixteenth of an inch (9 CFR 317.2(l) for the safe-handling block). */
const smallestUm = 1588;
/** Capitals of 3/8 in (9 CFR 316.16); in the face used they are 1456 of 2048 units high. */
const notForSaleUm = Math.ceil((9525 * 2048) / 1456);
/** Smallest module for a symbol at the till (GS1 General Specifications, section 5.12: 0.264 mm). */
const moduleUm = 264;
const edgeUm = 2500;

/** Words to lines; a word that is wider than the line is broken. */
function wrap(text: string, widthUm: number, width: (text: string) => number): string[] {
  const lines: string[] = [];
  let line = '';
  const put = (word: string): void => {
    const longer = line === '' ? word : `${line} ${word}`;
    if (width(longer) <= widthUm) {
      line = longer;
      return;
    }
    if (line !== '') lines.push(line);
    line = '';
    for (const character of word) {
      if (line !== '' && width(line + character) > widthUm) {
        lines.push(line);
        line = '';
      }
      line += character;
    }
  };
  for (const paragraph of text.split('\n')) {
    for (const word of paragraph.split(/\s+/).filter((each) => each !== '')) put(word);
    if (line !== '') lines.push(line);
    line = '';
  }
  return lines;
}

/** Lays marks one below the other. */
class Column {
  readonly marks: Mark[] = [];
  yUm = edgeUm;
  readonly #size: Size;
  readonly #measure: Measure;
  readonly #scale: number;

  constructor(size: Size, measure: Measure, scale: number) {
    this.#size = size;
    this.#measure = measure;
    this.#scale = scale;
  }

  sized(sizeUm: number): number {
    return Math.max(smallestUm, Math.round(sizeUm * this.#scale));
  }

  text(
    text: string,
    wish: {
      readonly sizeUm: number;
      readonly isBold?: boolean;
      readonly insetUm?: number;
      readonly isFixed?: boolean;
    },
  ): void {
    const { isBold = false, insetUm = 0, isFixed = false } = wish;
    const sizeUm = isFixed ? wish.sizeUm : this.sized(wish.sizeUm);
    const width = (part: string): number => this.#measure(part, sizeUm, isBold);
    const room = this.#size.widthUm - 2 * (edgeUm + insetUm);
    for (const line of wrap(text, room, width)) {
      this.yUm += Math.round(sizeUm * 1.15);
      const baselineUm = this.yUm - Math.round(sizeUm * 0.25);
      this.marks.push({
        mark: 'text',
        xUm: edgeUm + insetUm,
        baselineUm,
        sizeUm,
        isBold,
        text: line,
        widthUm: Math.round(width(line)),
      });
    }
  }

  /** Terms above their texts, side by side. */
  figures(figures: Label['figures']): void {
    const each = Math.floor((this.#size.widthUm - 2 * edgeUm) / figures.length);
    const [small, large] = [this.sized(2000), this.sized(4200)];
    this.yUm += Math.round(small * 1.3);
    figures.forEach(({ term, text }, place) => {
      const xUm = edgeUm + place * each;
      const fits = Math.min(
        large,
        Math.floor((large * (each - 1000)) / Math.max(1, this.#measure(text, large, true))),
      );
      this.marks.push(
        {
          mark: 'text',
          xUm,
          baselineUm: this.yUm,
          sizeUm: small,
          isBold: false,
          text: term,
          widthUm: Math.round(this.#measure(term, small, false)),
        },
        {
          mark: 'text',
          xUm,
          baselineUm: this.yUm + Math.round(large * 1.05),
          sizeUm: fits,
          isBold: true,
          text,
          widthUm: Math.round(this.#measure(text, fits, true)),
        },
      );
    });
    this.yUm += Math.round(large * 1.3);
  }

  framed(text: string): void {
    const from = this.yUm + 600;
    this.yUm = from + 600;
    this.text(text, { sizeUm: 2100, insetUm: 1200 });
    this.yUm += 900;
    this.marks.push({
      mark: 'frame',
      xUm: edgeUm,
      yUm: from,
      widthUm: this.#size.widthUm - 2 * edgeUm,
      heightUm: this.yUm - from,
    });
    this.yUm += 400;
  }
}

function symbolMarks({ symbol }: Label, { widthUm, heightUm }: Size, topUm: number): Made<Mark[]> {
  if (symbol === null) return made([]);
  const { across, down, quiet, dark, says } = symbol;
  const wide = (across + 2 * quiet) * moduleUm;
  if (wide > widthUm - 1000)
    return slip(
      'label.symbol',
      says,
      `is ${Math.ceil(wide / 1000)} mm wide and does not fit on a label of ${Math.floor(widthUm / 1000)} mm`,
    );
  const yUm = heightUm - edgeUm - down * moduleUm;
  if (yUm < topUm + 800) return slip('label', says, 'has too little room for its symbol');
  const xUm = Math.round((widthUm - across * moduleUm) / 2);
  return made(
    dark.map(({ x, y, width, height }) => ({
      mark: 'fill',
      xUm: xUm + x * moduleUm,
      yUm: yUm + y * moduleUm,
      widthUm: width * moduleUm,
      heightUm: height * moduleUm,
    })),
  );
}

function layAt(label: Label, size: Size, measure: Measure, scale: number): Made<Drawing> {
  const column = new Column(size, measure, scale);
  if (label.notForSale) column.text('NOT FOR SALE', { sizeUm: notForSaleUm, isBold: true, isFixed: true });
  column.text(label.title, { sizeUm: 5600, isBold: true });
  if (label.owner !== null) column.text(`For ${label.owner}`, { sizeUm: 4200, isBold: true });
  column.figures(label.figures);
  column.text(label.facts.map(({ term, text }) => `${term} ${text}`).join('  ·  '), { sizeUm: 2600 });
  for (const line of label.lines) column.text(line, { sizeUm: 2300 });
  if (label.safeHandling !== '') column.framed(label.safeHandling);
  const symbol = symbolMarks(label, size, column.yUm);
  if (!symbol.ok) return symbol;
  if (column.yUm > size.heightUm - edgeUm)
    return slip('label', label.title, 'holds more text than the label has room for');
  return made({ ...size, marks: [...column.marks, ...symbol.value] });
}

/**
 * Puts a label onto its stock. What does not fit is set smaller, down to a sixteenth of an inch, and then refused: nothing
 * is cut off, and "Not for sale" keeps its size.
 */
export function layOut(label: Label, size: Size, measure: Measure): Made<Drawing> {
  let last: Made<Drawing> = slip('label', label.title, 'could not be laid out');
  for (const scale of [1, 0.88, 0.78, 0.68, 0.6]) {
    last = layAt(label, size, measure, scale);
    if (last.ok) return last;
  }
  if (last.ok) return last;
  const longest = [
    ['label.safeHandling', label.safeHandling] as const,
    ...label.lines.map((line) => ['label.lines', line] as const),
  ].toSorted(([, one], [, other]) => other.length - one.length)[0];
  const [first] = last.slips;
  return first && longest
    ? {
        ok: false,
        slips: [
          first,
          {
            at: longest[0],
            value: longest[1].length,
            says: `is the longest text on it, with ${longest[1].length} characters`,
          },
        ],
      }
    : last;
}
