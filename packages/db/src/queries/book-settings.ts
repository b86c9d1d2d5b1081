import { and, eq } from 'drizzle-orm';
import type { Tx } from '../database.ts';
import { handleOf } from '../engines/engine.ts';
import { bookSettings } from '../schema/index.ts';

type Settings = Readonly<Record<string, unknown>>;

/** As they were stored; the caller checks their shape. Undefined: the shop has set nothing. */
export async function findBookSettings(
  tx: Tx,
  shopId: string,
): Promise<{ readonly settings: Settings; readonly version: number } | undefined> {
  const [found] = await handleOf(tx)
    .select({ settings: bookSettings.settings, version: bookSettings.version })
    .from(bookSettings)
    .where(eq(bookSettings.shopId, shopId));
  return found;
}

/** @param ifVersion null: nothing was set before. @returns the new version; undefined when somebody was faster */
export async function storeBookSettings(
  tx: Tx,
  shopId: string,
  settings: Settings,
  ifVersion: number | null,
): Promise<number | undefined> {
  const handle = handleOf(tx);
  if (ifVersion === null) {
    const [made] = await handle
      .insert(bookSettings)
      .values({ shopId, settings })
      .onConflictDoNothing()
      .returning({ version: bookSettings.version });
    return made?.version;
  }
  const [changed] = await handle
    .update(bookSettings)
    .set({ settings, version: ifVersion + 1 })
    .where(and(eq(bookSettings.shopId, shopId), eq(bookSettings.version, ifVersion)))
    .returning({ version: bookSettings.version });
  return changed?.version;
}
