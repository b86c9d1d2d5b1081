import type { Tools } from '../runs.ts';
import type { YieldModel } from '../take-home/yield-models.ts';
import type { CutSheet, HalfSide } from './cut-sheet.ts';
import { type HalfPreview, previewHalf } from './preview-half.ts';

/** What a customer asks of a half, or of both sides of an animal. */
export interface ShareWish extends CutSheet {
  /** the right side of a whole animal, where it is cut otherwise than the left */
  readonly right?: CutSheet;
  /** items and bulk that stay with the shop */
  readonly leaves?: readonly string[];
}

interface Range {
  readonly low: number;
  readonly high: number;
}

export interface SharePreview {
  /** one entry where all of it is cut alike, else the left side and the right one */
  readonly sides: readonly { readonly hand: 'alike' | 'left' | 'right'; readonly preview: HalfPreview }[];
  readonly hangingMg: Range;
  readonly boxedMg: Range;
  readonly freezerLitres: Range;
  /** cool boxes for the way home */
  readonly coolBoxes: Range;
}

const litresPerCubicFoot = 28.316_846_592;

/** Sides of one animal are as large as each other: low goes with low. */
const add = (ranges: readonly Range[]): Range => ({
  low: ranges.reduce((sum, { low }) => sum + low, 0),
  high: ranges.reduce((sum, { high }) => sum + high, 0),
});

/**
 * What a half or a whole animal comes to, cut as its customer asks. Pure.
 * @param side one side of such an animal
 */
export function previewShare(
  model: YieldModel,
  side: HalfSide,
  wish: ShareWish,
  { tools, size }: { readonly tools: Tools; readonly size: 'half' | 'whole' },
): SharePreview {
  const { right, leaves = [], ...left } = wish;
  const look = (sheet: CutSheet): HalfPreview => previewHalf(model, side, { sheet, leaves }, tools);
  const first = look(left);
  const both = size === 'whole' ? [first, right ? look(right) : first] : [first];
  const boxedMg = add(both.map(({ home }) => home.boxed));
  const cubicFeet = add(both.map(({ home }) => home.freezerCubicFeet));
  const freezerLitres = {
    low: Math.floor(cubicFeet.low * litresPerCubicFoot),
    high: Math.ceil(cubicFeet.high * litresPerCubicFoot),
  };
  const boxes = (litres: number): number => Math.ceil(litres / model.takeHome.coolBox.litres);
  const [one, other] = both;
  return {
    sides:
      size === 'whole' && right && one && other
        ? [
            { hand: 'left', preview: one },
            { hand: 'right', preview: other },
          ]
        : [{ hand: 'alike', preview: first }],
    hangingMg: add(both.map(({ hangingMg }) => hangingMg)),
    boxedMg,
    freezerLitres,
    coolBoxes: { low: boxes(freezerLitres.low), high: boxes(freezerLitres.high) },
  };
}
