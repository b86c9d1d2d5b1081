import { addMinor } from '@flitchbook/plan';

export type Channel = 'order' | 'share' | 'counter';

export interface Sold {
  readonly channel: Channel;
  readonly grams: number;
  readonly minor: number;
}

export interface Margin {
  readonly byChannel: readonly Sold[];
  readonly soldMinor: number;
  readonly animalMinor: number;
  readonly labourMinor: number;
  readonly marginMinor: number;
}

/** What an animal brought, by who bought it, less what it and the work on it cost. */
export function marginOf(
  sold: readonly Sold[],
  {
    animalMinor,
    minutes,
    labourMinorPerHour,
  }: { readonly animalMinor: number; readonly minutes: number; readonly labourMinorPerHour: number },
): Margin {
  const channels: readonly Channel[] = ['order', 'share', 'counter'];
  const byChannel = channels.map((channel) => {
    const mine = sold.filter((sale) => sale.channel === channel);
    return {
      channel,
      grams: mine.reduce((sum, { grams }) => sum + grams, 0),
      minor: addMinor(mine.map(({ minor }) => minor)),
    };
  });
  const soldMinor = addMinor(byChannel.map(({ minor }) => minor));
  const labourMinor = Math.round((minutes * labourMinorPerHour) / 60);
  return {
    byChannel,
    soldMinor,
    animalMinor,
    labourMinor,
    marginMinor: soldMinor - animalMinor - labourMinor,
  };
}
