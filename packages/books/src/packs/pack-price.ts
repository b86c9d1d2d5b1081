import type { ScaleReading } from '@flitchbook/carcass';
import { type PriceByWeight, weightTimesPrice } from '@flitchbook/plan';

/**
 * The price a label shows, in the unit that the shop weighs in. Rounded here, once: the total is reckoned from the price
 * that is printed, so that whoever multiplies the label gets its total.
 */
export const shownPrice = (priceMinorPerKg: number, per: PriceByWeight['per']): PriceByWeight => ({
  minor: weightTimesPrice({ text: '1', unit: per }, { minor: priceMinorPerKg, per: 'kg' }),
  per,
});

/** Net weight times price, exact, rounded once, half up. @throws RangeError as `weightTimesPrice` */
export const packPrice = (net: ScaleReading, price: PriceByWeight): number => weightTimesPrice(net, price);
