import { TryCounter } from '../try-limits.ts';

/** Mails that a stranger may cause, by network and by address, and tokens that a network may try. */
export const createLinkLimits = (nowMs: () => number) => ({
  network: new TryCounter({ tries: 20, perSeconds: 3600 }, nowMs),
  address: new TryCounter({ tries: 5, perSeconds: 3600 }, nowMs),
  token: new TryCounter({ tries: 60, perSeconds: 900 }, nowMs),
});

export type LinkLimits = ReturnType<typeof createLinkLimits>;
