import type { Context } from 'hono';
import { deleteCookie, getCookie, setCookie } from 'hono/cookie';
import { sessionSeconds } from '../services/sessions/sign-in.ts';

/**
 * The browser's key to its session. Over https it bears the __Host- prefix, so no other host and no plain page can set
 * it; over plain http, on this machine only, browsers refuse that prefix, and the cookie has its plain name.
 */
export interface SessionCookie {
  read(c: Context): string | undefined;
  set(c: Context, token: string): void;
  clear(c: Context): void;
}

export function sessionCookie(overHttps: boolean): SessionCookie {
  const name = overHttps ? '__Host-flitchbook' : 'flitchbook';
  const attributes = { path: '/', httpOnly: true, secure: overHttps, sameSite: 'Lax' } as const;
  return {
    read: (c) => getCookie(c, name),
    set: (c, token) => setCookie(c, name, token, { ...attributes, maxAge: sessionSeconds }),
    clear: (c) => {
      deleteCookie(c, name, attributes);
    },
  };
}
