import { readFileSync } from 'node:fs';
import { type Database, openDatabase } from '@flitchbook/db';
import { snapshots } from '@flitchbook/db/testing';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { refusals } from '../refusals.ts';
import { createSignInLimits } from '../services/sessions/sign-in.ts';
import { order } from '../testing/bodies.ts';
import { bodyOf, emailOf, openTestShop, password, type roles, type TestShop } from '../testing/test-shop.ts';
import { sessionCookie } from './session-cookie.ts';

let db: Database;
let shop: TestShop;
const logged: string[] = [];
beforeAll(async () => {
  db = await openDatabase({ engine: 'memory', snapshots });
  shop = await openTestShop(db, { log: (entry) => logged.push(JSON.stringify(entry)) });
});
afterAll(() => db.close());

const get = (path: string, as?: (typeof roles)[number]) => shop.ask({ method: 'GET', path, as });
const signIn = (email: string, word: string, headers: Record<string, string> = {}) =>
  shop.ask({ method: 'POST', path: '/api/session', body: { email, password: word }, headers });

describe('every answer', () => {
  // OWASP ASVS 5.0.0, 3.4: strict transport for a year, a policy without inline code, no sniffing, no frames, no referrer.
  it.each([
    ['an answer', '/api/session'],
    ['a page', '/api/reference'],
    ['a style sheet', '/api/reference.css'],
    ['a description', '/api/openapi.json'],
    ['a page of a problem', '/problems/order.invalid'],
    ['nothing', '/api/nowhere'],
    ['nothing outside of the API', '/nowhere'],
  ])('carries the headers that keep a browser safe: %s', async (_, path) => {
    const { headers } = await get(path, 'owner');
    const policy = headers.get('content-security-policy') ?? '';
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).not.toMatch(/unsafe-inline|unsafe-eval(?<!wasm-unsafe-eval)|\*/);
    expect(Object.fromEntries(headers)).toMatchObject({
      'strict-transport-security': 'max-age=31536000; includeSubDomains',
      'x-content-type-options': 'nosniff',
      'x-frame-options': 'DENY',
      'referrer-policy': 'no-referrer',
      'cross-origin-opener-policy': 'same-origin',
      'cross-origin-resource-policy': 'same-origin',
      'x-request-id': expect.stringMatching(/^[0-9a-f-]{36}$/),
    });
    expect(headers.has('x-powered-by')).toBe(false);
    expect(headers.has('access-control-allow-origin')).toBe(false);
    if (path.startsWith('/api')) expect(headers.get('cache-control')).toBe('no-store');
  });

  it('says which methods an address has', async () => {
    const answer = await shop.ask({ method: 'PUT', path: '/api/days', as: 'owner' });
    expect([answer.status, answer.headers.get('allow')]).toEqual([405, 'GET, HEAD, POST']);
    expect(await answer.json()).toMatchObject({ type: '/problems/request.method-not-allowed' });
  });

  it('answers HEAD like GET, without a body', async () => {
    const head = await shop.ask({ method: 'HEAD', path: '/api/days', as: 'owner' });
    expect([head.status, await head.text()]).toEqual([200, '']);
  });
});

describe('what the service says of itself', () => {
  it.each(Object.keys(refusals))('explains %s on a page', async (type) => {
    const page = await get(`/problems/${type}`);
    expect(page.status).toBe(200);
    expect(await page.text()).toContain(refusals[type as keyof typeof refusals].title);
  });

  it('explains nothing else', async () => {
    for (const type of ['constructor', 'order', 'order.invalid2'])
      expect((await get(`/problems/${type}`)).status).toBe(404);
  });

  it('gives out the document that is kept', async () => {
    const kept = JSON.parse(readFileSync(new URL('../../../../docs/openapi.json', import.meta.url), 'utf8'));
    expect(await (await get('/api/openapi.json')).json()).toEqual(kept);
  });

  it('shows every route on the readable page, with nothing from elsewhere', async () => {
    const page = await (await get('/api/reference')).text();
    const { paths } = await bodyOf<{ paths: object }>(await get('/api/openapi.json'));
    for (const path of Object.keys(paths)) expect(page).toContain(path);
    expect(page).not.toMatch(/(?:src|href)="https?:/);
    expect(page).not.toMatch(/<script|style="/);
  });
});

describe('the session', () => {
  // OWASP ASVS 5.0.0, 3.3: HttpOnly, SameSite, Secure and the __Host- prefix over https.
  it('is a cookie that scripts and other sites do not get', async () => {
    const plain = (await signIn(emailOf('butcher'), password)).headers.get('set-cookie') ?? '';
    expect(plain).toMatch(/^flitchbook=[\w-]{43}; Max-Age=50400; Path=\/; HttpOnly; SameSite=Lax$/);
    shop.transport.cookie = sessionCookie(true);
    const https = (await signIn(emailOf('butcher'), password)).headers.get('set-cookie') ?? '';
    expect(https).toMatch(
      /^__Host-flitchbook=[\w-]{43}; Max-Age=50400; Path=\/; HttpOnly; Secure; SameSite=Lax$/,
    );
    shop.transport.cookie = sessionCookie(false);
  });

  it('is over on the server once signed out, and once signed in anew', async () => {
    const read = async (cookie: string) =>
      (await shop.ask({ method: 'GET', path: '/api/session', as: { cookie } })).status;
    const first = await shop.signIn('counter');
    expect(await read(first)).toBe(200);
    const second =
      (await signIn(emailOf('counter'), password, { Cookie: first })).headers.get('set-cookie') ?? '';
    const [cookie = ''] = second.split(';');
    expect([await read(first), await read(cookie)]).toEqual([401, 200]);
    expect((await shop.ask({ method: 'DELETE', path: '/api/session', as: { cookie } })).status).toBe(204);
    expect(await read(cookie)).toBe(401);
  });

  // OWASP ASVS 5.0.0, 7.4.3: a changed password ends the other sessions.
  it('is over when another one of the same person chooses a password, and that one goes on', async () => {
    const read = async (cookie: string) =>
      (await shop.ask({ method: 'GET', path: '/api/session', as: { cookie } })).status;
    const [mine, forgotten] = [await shop.signIn('butcher'), await shop.signIn('butcher')];
    const hers = await shop.signIn('counter');
    const body = { password };
    const put = { method: 'PUT', path: '/api/my/password', as: { cookie: mine }, body };
    expect((await shop.ask(put)).status).toBe(204);
    expect([await read(mine), await read(forgotten), await read(hers)]).toEqual([200, 401, 200]);
  });

  it.each([
    'flitchbook=',
    'flitchbook=undefined',
    `flitchbook=${'a'.repeat(43)}`,
    `flitchbook=${'x'.repeat(5000)}`,
    "flitchbook=' or 1=1",
  ])('is nobody’s with the cookie %.40s', async (cookie) => {
    expect((await shop.ask({ method: 'GET', path: '/api/session', as: { cookie } })).status).toBe(401);
  });

  it('refuses an unknown address and a wrong password in the same words', async () => {
    const answers = [
      await signIn('nobody@shop.example', password),
      await signIn(emailOf('owner'), 'wrong'),
      await signIn(emailOf('owner'), `${password} `),
    ];
    const bodies = await Promise.all(answers.map((answer) => bodyOf<{ instance: string }>(answer)));
    const said = bodies.map(({ instance: _, ...body }) => body);
    expect(answers.map(({ status }) => status)).toEqual([401, 401, 401]);
    expect(said[1]).toEqual(said[0]);
    expect(said[2]).toEqual(said[0]);
    expect((await signIn(` ${emailOf('owner').toUpperCase()} `, password)).status).toBe(200);
  });
});

describe('tries of signing in', () => {
  let nowMs = 0;
  let network = '192.0.2.1';
  beforeAll(() => {
    shop.transport.signInLimits = createSignInLimits(() => nowMs);
    shop.transport.networkOf = () => network;
  });
  const guess = async (email = emailOf('owner'), headers = {}) =>
    (await signIn(email, 'a guess', headers)).status;

  it('are ten for an account from one network, whatever a proxy header says', async () => {
    for (let tries = 0; tries < 10; tries++) expect(await guess()).toBe(401);
    expect(await guess()).toBe(429);
    expect(
      await guess(emailOf('owner'), { 'X-Forwarded-For': '203.0.113.9', Forwarded: 'for=203.0.113.9' }),
    ).toBe(429);
    // Even the right password waits, so that a guess cannot be told from it.
    expect((await signIn(emailOf('owner'), password)).status).toBe(429);
    network = '198.51.100.7';
    expect((await signIn(emailOf('owner'), password)).status).toBe(200);
    network = '192.0.2.1';
  });

  it('come back with time, and Retry-After says when', async () => {
    const refused = await signIn(emailOf('owner'), 'a guess');
    const seconds = Number(refused.headers.get('retry-after'));
    expect(seconds).toBeGreaterThan(0);
    expect(seconds).toBeLessThanOrEqual(15 * 60);
    nowMs += seconds * 1000;
    expect((await signIn(emailOf('owner'), password)).status).toBe(200);
  });
});

describe('the log', () => {
  it('holds ids, counts and codes, and nobody’s words', async () => {
    const taken = await shop.ask({
      method: 'POST',
      path: `/api/days/${shop.own.dayId}/orders`,
      as: 'owner',
      headers: { 'Idempotency-Key': shop.newKey() },
      body: order({ owner: 'Ines Okafor', note: 'a secret note' }),
    });
    expect(taken.status).toBe(201);
    const last = JSON.parse(logged.at(-1) ?? '{}');
    expect(last).toMatchObject({
      event: 'request',
      status: 201,
      route: '/api/days/:dayId/orders',
      role: 'owner',
    });
    expect(logged.join('\n')).not.toMatch(/Okafor|secret|@shop\.example|correct-horse|flitchbook=/);
  });
});
