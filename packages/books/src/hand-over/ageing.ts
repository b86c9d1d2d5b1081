import { daysBetween } from './windows.ts';

export interface PackInHouse {
  readonly packId: string;
  readonly orderId: string | null;
  /** local date */
  readonly packedOn: string;
}

export type Aged<P extends PackInHouse> = P & { readonly days: number; readonly isOld: boolean };

/** Everything in the house, oldest first. @param oldAfterDays from this age on somebody should look at it */
export function ageing<P extends PackInHouse>(
  packs: readonly P[],
  today: string,
  oldAfterDays: number,
): Aged<P>[] {
  return packs
    .map((pack) => ({ ...pack, days: daysBetween(pack.packedOn, today) }))
    .map((pack) => ({ ...pack, isOld: pack.days >= oldAfterDays }))
    .toSorted((one, other) => other.days - one.days);
}

/** What the counter may sell. What is packed for somebody is never free, paid or not. */
export const freeToSell = <P extends PackInHouse>(packs: readonly P[]): P[] =>
  packs.filter(({ orderId }) => orderId === null);
