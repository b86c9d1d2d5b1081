import { createHash } from 'node:crypto';

/** What is stored of a token that only its holder knows. */
export const tokenHash = (token: string): string => createHash('sha256').update(token).digest('hex');
