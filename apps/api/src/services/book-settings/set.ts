import { type BookSettings, checkLayout, checkStock, hasCheckDigit, type Slip } from '@flitchbook/books';
import { appendAudit, findShop, storeBookSettings } from '@flitchbook/db';
import { done, type Outcome, refused } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { authorise } from '../roles.ts';
import { look, transact } from '../transact.ts';
import { bookSettingsIn, type SetBooks } from './read.ts';

function slipsOf({ label, money }: BookSettings): Slip[] {
  const stock = checkStock(label.stock);
  const layout = checkLayout(label.retail);
  const numbers = Object.entries(label.things).flatMap(([id, { gtin }]) =>
    gtin !== null && !(hasCheckDigit(gtin) && /^9\d{13}$/.test(gtin))
      ? [
          {
            at: `label.things.${id}.gtin`,
            value: gtin,
            says: 'must be fourteen digits that start with 9 and end in their check digit',
          },
        ]
      : [],
  );
  const known = money.taxClasses.map(({ id }) => id);
  const classes = [
    ['money.meatTaxClass', money.meatTaxClass] as const,
    ...money.fees.map((fee) => [`money.fees.${fee.id}.taxClass`, fee.taxClass] as const),
  ]
    .filter(([, id]) => !known.includes(id))
    .map(([at, value]) => ({ at, value, says: 'is not among the tax classes' }));
  return [
    ...(stock.ok ? [] : stock.slips.map((one) => ({ ...one, at: `label.stock.${one.at}` }))),
    ...(layout.ok ? [] : layout.slips.map((one) => ({ ...one, at: `label.retail.${one.at}` }))),
    ...numbers,
    ...classes,
  ];
}

export async function readBookSettings(ctx: Ctx): Promise<Outcome<SetBooks>> {
  const refusal = authorise(ctx, 'book-settings.read');
  if (refusal) return refusal;
  return look(ctx.db, async (tx) => {
    const shop = await findShop(tx, ctx.actor.shopId);
    if (!shop) throw new Error('the shop of a session is gone');
    return done(await bookSettingsIn(tx, shop));
  });
}

/** Replaces the settings whole, if they are still the ones that were read. */
export async function setBookSettings(
  ctx: Ctx,
  settings: BookSettings,
  ifVersion: number,
): Promise<Outcome<SetBooks>> {
  const refusal = authorise(ctx, 'book-settings.set');
  if (refusal) return refusal;
  const faults = slipsOf(settings);
  if (faults.length > 0)
    return refused('book-settings.invalid', 'The settings cannot be as they are written; errors says why.', {
      faults,
    });
  const { shopId, personId } = ctx.actor;
  return transact(ctx.db, async (tx) => {
    const stored: Readonly<Record<string, unknown>> = { ...settings };
    const version = await storeBookSettings(tx, shopId, stored, ifVersion === 0 ? null : ifVersion);
    if (version === undefined)
      return refused('edit.version-stale', 'The settings have changed. Read them again, then decide.');
    await appendAudit(tx, {
      shopId,
      personId,
      action: 'book-settings.set',
      subject: shopId,
      facts: { version },
    });
    return done({ settings, version });
  });
}
