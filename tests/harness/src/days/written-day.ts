import type { ParsedDay } from '@flitchbook/contracts';
import type { CuttingDay } from '@flitchbook/plan';

type Written = Omit<ParsedDay, 'warnings'>;

const poundGrams = 453.59237;

/** What the scale showed: whole pounds where that is it, else kilograms. */
function reading(grams: number): { readonly text: string; readonly unit: 'lb' | 'kg' } {
  const pounds = Math.round(grams / poundGrams);
  return Math.round(pounds * poundGrams) === grams
    ? { text: String(pounds), unit: 'lb' }
    : { text: String(grams / 1000), unit: 'kg' };
}

/** A made day with what a day file says besides: the shop, what the scale showed of each carcass, whose orders they are. */
export function writtenDay(day: CuttingDay, shop: Written['shop']): Written {
  const orderIds = [...new Set([...day.lines, ...day.shares].map(({ orderId }) => orderId))];
  return {
    shop,
    day,
    weighed: day.animals.map(({ animalId, sides }) => ({
      animalId,
      hanging: reading(sides[0]?.carcassGrams ?? 0),
      hotOrCold: 'cold',
      sides: sides.map(({ sideId }) => ({ sideId, weight: null })),
    })),
    orders: orderIds.map((orderId) => {
      const lines = day.lines.filter((line) => line.orderId === orderId);
      const shares = day.shares.filter((share) => share.orderId === orderId);
      return {
        orderId,
        owner: [...lines, ...shares][0]?.owner ?? '',
        note: lines.length === 4 ? 'Rings before noon.\nLikes it lean.' : '',
        lineIds: lines.map(({ lineId }) => lineId),
        shareIds: shares.map(({ shareId }) => shareId),
      };
    }),
  };
}
