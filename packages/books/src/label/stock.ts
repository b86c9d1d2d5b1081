import { type Made, made, slip } from '../slips.ts';

/** What labels are printed on. Lengths in um. */
export type LabelStock =
  | { readonly on: 'roll'; readonly widthUm: number; readonly heightUm: number }
  | {
      readonly on: 'sheet';
      readonly pageWidthUm: number;
      readonly pageHeightUm: number;
      readonly columns: number;
      readonly rows: number;
      readonly widthUm: number;
      readonly heightUm: number;
      readonly leftUm: number;
      readonly topUm: number;
      readonly betweenColumnsUm: number;
      readonly betweenRowsUm: number;
    };

/** 3 by 4 inches, a common roll (common practice, no source). */
export const usualStock: LabelStock = { on: 'roll', widthUm: 76_200, heightUm: 101_600 };

/** Letter, two across and three down, 4 by 3 1/3 in (common practice, no source). */
export const usualSheet: LabelStock = {
  on: 'sheet',
  pageWidthUm: 215_900,
  pageHeightUm: 279_400,
  columns: 2,
  rows: 3,
  widthUm: 101_600,
  heightUm: 84_667,
  leftUm: 3_969,
  topUm: 12_700,
  betweenColumnsUm: 4_762,
  betweenRowsUm: 0,
};

export function checkStock(stock: LabelStock): Made<null> {
  if (stock.widthUm < 30_000 || stock.heightUm < 30_000)
    return slip('widthUm', stock.widthUm, 'a label is 30 mm or more each way');
  if (stock.on === 'roll') return made(null);
  const { columns, rows, leftUm, topUm, betweenColumnsUm, betweenRowsUm, pageWidthUm, pageHeightUm } = stock;
  const across = leftUm + columns * stock.widthUm + (columns - 1) * betweenColumnsUm;
  const down = topUm + rows * stock.heightUm + (rows - 1) * betweenRowsUm;
  if (columns < 1 || across > pageWidthUm) return slip('columns', columns, 'do not fit on the page');
  if (rows < 1 || down > pageHeightUm) return slip('rows', rows, 'do not fit on the page');
  return made(null);
}

export interface Place {
  readonly page: number;
  readonly xUm: number;
  readonly yUm: number;
}

/** Where each of `count` labels goes. @param skip places of the first sheet that are used up */
export function placesOn(stock: LabelStock, count: number, skip = 0): Place[] {
  return Array.from({ length: count }, (_, index) => {
    if (stock.on === 'roll') return { page: index, xUm: 0, yUm: 0 };
    const each = stock.columns * stock.rows;
    const at = (index + skip) % each;
    return {
      page: Math.floor((index + skip) / each),
      xUm: stock.leftUm + (at % stock.columns) * (stock.widthUm + stock.betweenColumnsUm),
      yUm: stock.topUm + Math.floor(at / stock.columns) * (stock.heightUm + stock.betweenRowsUm),
    };
  });
}
