import { migrate } from '@flitchbook/db';
import type { Config } from '../config.ts';
import { openConfigured } from '../open-configured.ts';
import type { Outcome } from '../refusals.ts';
import { createPasswords } from '../services/passwords.ts';
import { openShop } from '../services/shops/open.ts';
import type { World } from '../start-service.ts';
import type { Opening } from './read-opening.ts';

/**
 * Opens the shop of the configured database, which is brought up to date first.
 * @returns the password of its owner, kept nowhere; shop.already-open where there is one
 * @throws FolderBusy, FolderUnusable, EngineRefused, DatabaseUnavailable
 */
export async function openFirstShop(
  config: Config,
  world: World,
  { shop, owner }: Opening,
): Promise<Outcome<string>> {
  const db = await openConfigured(config, world);
  try {
    await migrate(db);
    const password = world.newPassword();
    const services = { db, ids: world.ids, passwords: createPasswords() };
    const opened = await openShop(services, shop, { ...owner, password });
    return opened.ok ? { ok: true, value: password } : opened;
  } finally {
    await db.close();
  }
}
