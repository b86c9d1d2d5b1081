import { type BookSettings, usualBookSettings } from '@flitchbook/books';
import { findBookSettings, type Shop, type Tx } from '@flitchbook/db';

export interface SetBooks {
  readonly settings: BookSettings;
  /** 0: the usual ones, nothing is stored */
  readonly version: number;
}

/** What the shop has set for its books, or the usual settings under its own name. */
export async function bookSettingsIn(tx: Tx, shop: Shop): Promise<SetBooks> {
  const stored = await findBookSettings(tx, shop.shopId);
  // Stored by one verb only, which has checked the shape.
  if (stored) return { settings: stored.settings as unknown as BookSettings, version: stored.version };
  return {
    settings: { ...usualBookSettings, seller: { ...usualBookSettings.seller, name: shop.name } },
    version: 0,
  };
}
