import fc from 'fast-check';
import { XMLValidator } from 'fast-xml-parser';
import { describe, expect, it } from 'vitest';
import type { Movement } from '../bill/account.ts';
import { drawBill } from '../bill/draw-bill.ts';
import { calendarFeed } from './calendar.ts';
import { csv } from './csv.ts';
import { ublInvoice } from './invoice.ts';
import { billRows, movementRows } from './journal.ts';
import { decimalText, moneyText } from './money-text.ts';

describe('CSV', () => {
  // Cells that spreadsheets run: OWASP, "CSV Injection".
  it.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', '＝1', '  =1', '|cmd', '%0A'])(
    'does not let %j be a formula',
    (cell) => {
      const line = csv(['name'], [[cell]])
        .split('\r\n')
        .slice(1)
        .join('\r\n');
      expect(line.replace(/^"/, '').startsWith("'")).toBe(true);
    },
  );

  it('leaves ordinary text and whole numbers as they are', () => {
    expect(csv(['name', 'minor'], [['Bram "the" Castellane, Esq.', -250]])).toBe(
      'name,minor\r\n"Bram ""the"" Castellane, Esq.",-250\r\n',
    );
  });
});

it('money is exact decimal text, with the digits of its currency', () => {
  expect(decimalText(1468, 'USD')).toBe('14.68');
  expect(decimalText(-5, 'EUR')).toBe('-0.05');
  expect(decimalText(1468, 'JPY')).toBe('1468');
  expect(moneyText(9_007_199_254_740_991, 'USD')).toBe('$90,071,992,547,409.91');
});

const bill = drawBill({
  packs: [
    {
      packId: 'p',
      lineId: 'l',
      name: 'Rib chop & <bone>',
      pieces: 2,
      net: { text: '2.45', unit: 'lb' },
      price: { minor: 599, per: 'lb' },
      amountMinor: 1468,
      taxClass: 'food',
    },
  ],
  hanging: [],
  fees: [
    {
      fee: { id: 'smoking', name: 'Smoking', by: 'piece', minor: 1250, per: 'lb', taxClass: 'work' },
      count: 3,
      hanging: null,
    },
  ],
  taxClasses: [
    { id: 'food', name: 'Food', ratePpm: 0 },
    { id: 'work', name: 'Work', ratePpm: 82_500 },
  ],
  tolerance: { overPpm: 0, whenOver: 'cap' },
  estimatedToMinor: { l: 1400 },
  hasConsent: false,
});
if (!bill.ok) throw new Error('no bill');
const somebody = {
  name: 'The Lantern',
  country: 'US',
  street: '1 Mill Lane',
  city: 'Ashford',
  postcode: '00001',
  taxNumber: null,
};

describe('a UBL invoice', () => {
  const xml = ublInvoice({
    number: 7,
    issuedOn: '2026-11-26',
    dueOn: '2026-12-10',
    currency: 'USD',
    orderNumber: 3,
    seller: { ...somebody, name: 'Tallow Lane Butchery' },
    buyer: somebody,
    bill: bill.value,
    paidMinor: 1000,
  });
  const amounts = (name: string): number[] =>
    [...xml.matchAll(new RegExp(`<cbc:${name} [^>]*>([^<]+)<`, 'g'))].map(([, text]) =>
      Math.round(Number(text) * 100),
    );

  it('is well-formed, and a customer’s name breaks nothing', () => {
    expect(XMLValidator.validate(xml)).toBe(true);
    expect(xml).toContain('Rib chop &amp; &lt;bone&gt;');
  });

  // EN 16931-1, business rules BR-CO-10, BR-CO-13, BR-CO-14, BR-CO-15, BR-CO-16.
  it('adds up as the norm asks', () => {
    const [net = 0, ...lines] = amounts('LineExtensionAmount');
    expect(lines.reduce((sum, line) => sum + line, 0)).toBe(net);
    expect(amounts('TaxExclusiveAmount')).toEqual([net]);
    const [tax = 0, ...parts] = amounts('TaxAmount');
    expect(parts.reduce((sum, part) => sum + part, 0)).toBe(tax);
    expect(amounts('TaxInclusiveAmount')).toEqual([net + tax]);
    expect(amounts('PayableAmount')).toEqual([net + tax - 1000]);
    // BR-27: no price below nothing.
    for (const price of amounts('PriceAmount')) expect(price).toBeGreaterThanOrEqual(0);
  });
});

describe('a calendar feed', () => {
  const entry = {
    id: 'o1',
    title: 'Pick-up: Ines Okafor; chops, ribs',
    place: 'Shelf\nB2',
    startsAt: '2026-11-26T20:00:00Z',
    endsAt: '2026-11-26T23:30:00Z',
    changedAt: '2026-11-20T10:00:00.000Z',
  };
  const feed = calendarFeed('Pick-ups', [entry, { ...entry, id: 'o2', title: 'ñ'.repeat(300) }]);

  it('is escaped as RFC 5545, 3.3.11 asks', () => {
    expect(feed).toContain('SUMMARY:Pick-up: Ines Okafor\\; chops\\, ribs\r\n');
    expect(feed).toContain('LOCATION:Shelf\\nB2\r\n');
    expect(feed).toContain('DTSTART:20261126T200000Z\r\n');
  });

  it('has lines of 75 octets at most and unfolds to what was written', () => {
    for (const line of feed.split('\r\n'))
      expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75);
    expect(feed.replaceAll('\r\n ', '')).toContain(`SUMMARY:${'ñ'.repeat(300)}`);
    expect(feed.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  });
});

describe('the journal', () => {
  const accounts = {
    owedByCustomers: '1100',
    deposits: '2100',
    sales: '4000',
    tax: '2200',
    cash: '1000',
    cardTerminal: '1010',
    bank: '1020',
    letGo: '4900',
  };
  const entry = { date: '2026-11-26', reference: 'bill 7' };

  it('balances, and what a customer owes is what the account says', () => {
    const movement = fc.record({
      kind: fc.constantFrom<Movement['kind']>('deposit', 'payment', 'refund', 'credit'),
      method: fc.constantFrom<Movement['method']>('cash', 'card-terminal', 'transfer'),
      amountMinor: fc.nat(10_000),
    });
    fc.assert(
      fc.property(fc.array(movement), fc.nat(50_000), fc.nat(5000), (movements, netMinor, taxMinor) => {
        const depositMinor = movements
          .filter(({ kind }) => kind === 'deposit')
          .reduce((sum, { amountMinor }) => sum + amountMinor, 0);
        const rows = [
          ...movements.flatMap((each) => movementRows(entry, each, true, accounts)),
          ...billRows(entry, { netMinor, taxMinor, depositMinor }, accounts),
        ];
        const sum = (account: string | null): number =>
          rows
            .filter((row) => account === null || row.account === account)
            .reduce((total, { debitMinor, creditMinor }) => total + debitMinor - creditMinor, 0);
        expect(sum(null)).toBe(0);
        expect(sum(accounts.deposits)).toBe(0);
        const moved = movements.reduce(
          (total, { kind, amountMinor }) => total + (kind === 'refund' ? amountMinor : -amountMinor),
          0,
        );
        expect(sum(accounts.owedByCustomers)).toBe(netMinor + taxMinor + moved);
      }),
    );
  });
});
