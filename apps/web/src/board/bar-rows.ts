import type { RulerBar } from './ruler-model.ts';

/** Heights of the rows of a drawn bar, px. */
const heights = { names: 17, bones: 20, draw: 8, meat: 48, captions: 16, gap: 4, rule: 25 };

/** Where each row of a drawn bar starts, px from the top. */
export interface BarRows {
  readonly names: number;
  /** null: nothing to count by on this bar */
  readonly bones: number | null;
  readonly draw: number;
  readonly meat: number;
  readonly captions: number;
  readonly rule: number;
  readonly height: number;
}

export const meatHeight = heights.meat;
export const bonesHeight = heights.bones;
export const drawHeight = heights.draw;
export const ruleHeight = heights.rule;

const hasBones = (bar: RulerBar): boolean =>
  bar.zones.some((zone) => zone.stations.some(({ rib }) => rib !== null));
const isDrawnUp = (bar: RulerBar): boolean => bar.runs.some((run) => run.drawnToUm < run.toUm);

/** Rows that have nothing to show take no room. */
export function rowsOf(bar: RulerBar): BarRows {
  const counted = hasBones(bar);
  const names = bar.zones.length > 1 ? heights.names : 4;
  const bones = counted ? names : null;
  const draw = names + (counted ? heights.bones : 0);
  const meat = draw + (counted || isDrawnUp(bar) ? heights.draw : 2);
  const captions = meat + heights.meat;
  const captioned = bar.runs.length > 1 || isDrawnUp(bar);
  const rule = captions + (captioned ? heights.captions : 0) + heights.gap;
  return { names: 0, bones, draw, meat, captions, rule, height: rule + heights.rule + 1 };
}
