import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { addMail, inTransaction, listLedger, type Mail, setShopRules } from '@flitchbook/db';
import { describeOnBoth } from '@flitchbook/db/testing';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { actAs, type Ctx } from '../services/ctx.ts';
import type { Post } from '../services/mails/post.ts';
import { sendDueMails } from '../services/mails/send-due.ts';
import { holdOrder } from '../services/reservations/hold.ts';
import { hold } from '../testing/bodies.ts';
import { openTestShop, type TestShop } from '../testing/test-shop.ts';
import { folderPost } from './post-office.ts';
import { Timetable } from './timetable.ts';
import { usualJobs } from './usual-jobs.ts';

const mail = (mailId: string, change: Partial<Mail> = {}): Mail => ({
  mailId,
  kind: 'order.link',
  orderId: null,
  toEmail: 'mirela@guest.example',
  subject: 'Order 7: your link',
  html: '<p>Grüße vom Block.</p>',
  body: 'Grüße vom Block.\n.\nhttps://shop.example/#/link/x\n',
  ...change,
});

describe('the folder that mails are laid into', () => {
  const folder = join(mkdtempSync(join(tmpdir(), 'flitchbook-mails-')), 'mails');
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it('has one file for each, that nobody else reads, with no header of a stranger’s making', async () => {
    const post = folderPost(folder, 'shop@flitchbook.invalid');
    await post.send(mail('a', { subject: 'Order 7\r\nBcc: everybody@evil.example' }));
    await post.send(mail('a'));
    await post.send(mail('b', { toEmail: 'x@guest.example, everybody@evil.example' }));
    expect(readdirSync(folder).toSorted()).toEqual(['a.eml', 'b.eml']);
    expect(statSync(join(folder, 'a.eml')).mode & 0o077).toBe(0);
    const [head = '', ...body] = readFileSync(join(folder, 'a.eml'), 'utf8').split('\r\n\r\n');
    expect(head).toMatch(/^To: mirela@guest\.example$/m);
    expect(head).not.toMatch(/^Bcc:/im);
    expect(body.join('')).toContain('https://shop.example/#/link/x');
    const to = /^To: (.*(?:\r\n\s.*)*)/m.exec(readFileSync(join(folder, 'b.eml'), 'utf8'))?.[1] ?? '';
    expect(to).not.toMatch(/(^|,\s*)everybody@evil\.example/);
  });
});

describeOnBoth('jobs', (db) => {
  let shop: TestShop;
  let ctx: Ctx;
  beforeAll(async () => {
    shop = await openTestShop(db());
    ctx = actAs(shop.services, { shopId: shop.own.shopId, personId: null, role: 'owner' });
  });
  const put = (mailId: string) => inTransaction(ctx.db, (tx) => addMail(tx, shop.own.shopId, mail(mailId)));

  it('send a mail once however many send, and again where it could not be sent', async () => {
    const sent: string[] = [];
    const failing: Post = {
      send: () => Promise.reject(Object.assign(new Error('no'), { code: 'ECONNREFUSED' })),
    };
    const working: Post = { send: async ({ mailId }) => void sent.push(mailId) };
    const [lost, good] = [shop.newId(), shop.newId()];
    await put(lost);
    expect(await sendDueMails(ctx, failing)).toEqual({ ok: true, value: 0 });
    await put(good);
    await Promise.all(Array.from({ length: 4 }, () => sendDueMails(ctx, working)));
    // The one that failed waits for half a minute.
    expect(sent).toEqual([good]);
  });

  it('let holds lapse, twice at once and done once', async () => {
    const { shopId, dayId } = shop.own;
    const rules = { promotedHoldSeconds: 60, depositPercent: 0, depositFromMinor: 0, ordersPerPerson: 9 };
    await inTransaction(ctx.db, (tx) =>
      setShopRules(tx, shopId, { ...rules, holdSeconds: 1, piecesPerPerson: 9, sharesPerPerson: 1 }),
    );
    const key = { key: shop.newId(), route: 'test', request: null, status: 201 as const };
    expect((await holdOrder(ctx, { dayId, input: hold(), key })).ok).toBe(true);
    await sleep(1100);
    const jobs = usualJobs({ send: async () => undefined });
    const tables = [new Timetable(shop.services, jobs), new Timetable(shop.services, jobs)];
    for (const job of jobs) await Promise.all(tables.map((table) => table.round(job)));
    await Promise.all(tables.map((table) => table.stop()));
    const ledger = await inTransaction(ctx.db, (tx) => listLedger(tx, shopId, { after: 0, limit: 1000 }));
    expect(ledger.filter(({ kind }) => kind === 'order.lapsed')).toHaveLength(1);
  });
});
