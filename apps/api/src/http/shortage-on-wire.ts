import { shortagesShape } from '@flitchbook/contracts';
import type { LedgerRecord } from '@flitchbook/db';
import type { z } from '@hono/zod-openapi';

type ShortageOnWire = z.infer<typeof shortagesShape>['shortages'][number];

/** One entry of the ledger as a shortage; undefined where it is none. */
export function shortageOnWire({ orderId, at, facts }: LedgerRecord): ShortageOnWire | undefined {
  const { number, was, lacks } = facts;
  return shortagesShape.safeParse({ shortages: [{ orderId, at, number, was, lacks }] }).data?.shortages[0];
}
