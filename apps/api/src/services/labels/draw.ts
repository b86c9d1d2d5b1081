import {
  type Drawing,
  type Label,
  type LabelStock,
  labelOf,
  layOut,
  type Measure,
  type Slip,
} from '@flitchbook/books';
import { findShop, listPacks, type Tx, trace } from '@flitchbook/db';
import { done, type Outcome, refused } from '../../refusals.ts';
import { bookSettingsIn } from '../book-settings/read.ts';
import type { Ctx } from '../ctx.ts';

export interface DrawnLabels {
  readonly drawings: readonly Drawing[];
  readonly stock: LabelStock;
}

/** The labels of packs in the order asked. One that cannot be printed as it should is refused, and none is drawn. */
export async function drawLabels(
  tx: Tx,
  ctx: Ctx,
  packIds: readonly string[],
  measure: Measure,
): Promise<Outcome<DrawnLabels>> {
  const { shopId } = ctx.actor;
  const shop = await findShop(tx, shopId);
  if (!shop) throw new Error('the shop of a session is gone');
  const { settings } = await bookSettingsIn(tx, shop);
  const { stock } = settings.label;
  const packs = new Map((await listPacks(tx, shopId, { packIds })).map((pack) => [pack.packId, pack]));
  const rows = new Map((await trace(tx, shopId, { packIds })).map((row) => [row.packId, row]));
  const faults: Slip[] = [];
  const drawings: Drawing[] = [];
  const add = (label: Label, serial: number): void => {
    const drawing = layOut(label, stock, measure);
    if (drawing.ok) drawings.push(drawing.value);
    else faults.push(...drawing.slips.map((slip) => ({ ...slip, at: `pack ${serial}: ${slip.at}` })));
  };
  for (const packId of packIds) {
    const [pack, row] = [packs.get(packId), rows.get(packId)];
    if (!pack || !row) {
      faults.push({ at: 'packIds', value: packId, says: 'is not a pack of this shop' });
      continue;
    }
    const { currency } = shop;
    const label = labelOf({ ...pack, currency, owner: row.customer, animal: row.animal }, settings);
    if (label.ok) add(label.value, pack.serial);
    else faults.push(...label.slips.map((slip) => ({ ...slip, at: `pack ${pack.serial}: ${slip.at}` })));
  }
  if (faults.length > 0)
    return refused('label.invalid', 'A label cannot be printed as it is; errors says why.', { faults });
  return done({ drawings, stock });
}
