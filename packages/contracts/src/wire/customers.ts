import { z } from 'zod';
import { maybe, nameText } from './parts.ts';

const address = z.email('must be an e-mail address').max(254);

const languageShape = z.enum(['en', 'es']).meta({ description: 'Of the mails, BCP 47.' });

/** PUT /api/my/language */
export const chosenLanguageShape = z.strictObject({ language: languageShape });

/** POST /api/customers */
export const newcomerShape = z.strictObject({
  email: address,
  name: nameText,
  language: maybe(languageShape),
});

/** POST /api/link-sessions: the token of a link, 256 random bits */
export const linkTokenShape = z.strictObject({
  token: z.string().regex(/^[A-Za-z0-9_-]{43}$/, 'must be the token of a link'),
});

/**
 * PUT /api/my/password. Any signs, and no rules but the length: 15 where a password is all there is (NIST SP 800-63B-4,
 * 2025, read second-hand).
 */
export const newPasswordShape = z.strictObject({ password: z.string().min(15).max(200) });
