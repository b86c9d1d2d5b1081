import { parseArgs } from 'node:util';
import type { Shop } from '@flitchbook/db';
import { z } from 'zod';
import type { FirstOwner } from '../services/shops/open.ts';

/** What a shop is opened with: all but the password of its owner, which is made. */
export interface Opening {
  readonly shop: Omit<Shop, 'shopId'>;
  readonly owner: Omit<FirstOwner, 'password'>;
}

export const openingHelp = `Opens the shop of an empty database and lets its first owner sign in. The password is made and shown once.

  npm start -- open-shop --shop NAME --owner NAME --email ADDRESS
      [--currency USD] [--time-zone America/New_York] [--weights lb|kg] [--lengths in|mm]

The database is the one that the service itself would use; see npm start -- --help.
With the embedded database, stop the service first. Exit status: 0 opened, 2 not opened, and why.`;

const line = z
  .string()
  .regex(/^[^\p{Cc}\p{Cs}]*$/u, 'must be one line of text')
  .trim()
  .min(1)
  .max(200);

function isTimeZone(name: string): boolean {
  try {
    new Intl.DateTimeFormat('en', { timeZone: name });
    return true;
  } catch {
    return false;
  }
}

const currencies = new Set(Intl.supportedValuesOf('currency'));

const opening = z.object({
  shop: line,
  owner: line,
  email: z.email('must be an e-mail address').max(254),
  currency: z.string().refine((code) => currencies.has(code), 'must be a code of ISO 4217, such as USD'),
  'time-zone': z
    .string()
    .refine(isTimeZone, 'must be a name of the time zone database, such as Europe/Paris'),
  weights: z.enum(['lb', 'kg'], 'must be lb or kg'),
  lengths: z.enum(['in', 'mm'], 'must be in or mm'),
});

const options = {
  shop: { type: 'string' },
  owner: { type: 'string' },
  email: { type: 'string' },
  currency: { type: 'string', default: 'USD' },
  'time-zone': { type: 'string', default: 'America/New_York' },
  weights: { type: 'string', default: 'lb' },
  lengths: { type: 'string', default: 'in' },
} as const;

/** Reads the words after `open-shop`; every one at fault is named, with what was given. */
export function readOpening(
  args: readonly string[],
):
  | { readonly ok: true; readonly opening: Opening }
  | { readonly ok: false; readonly says: readonly string[] } {
  let given: Record<string, string | undefined>;
  try {
    given = { ...parseArgs({ args: [...args], options }).values };
  } catch (error) {
    return { ok: false, says: [error instanceof Error ? error.message : String(error)] };
  }
  const read = opening.safeParse(given);
  if (!read.success) {
    const says = read.error.issues.map(({ path, message }) => {
      const name = String(path[0]);
      return given[name] === undefined
        ? `--${name} is missing.`
        : `--${name}: ${message}. It is ${JSON.stringify(given[name])}.`;
    });
    return { ok: false, says };
  }
  const { shop: name, owner, email, currency, weights, lengths, 'time-zone': timeZone } = read.data;
  return {
    ok: true,
    opening: {
      shop: { name, currency, timeZone, weightUnit: weights, lengthUnit: lengths },
      owner: { name: owner, email },
    },
  };
}
