import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type AuditEntry, type AuditSheet, auditSheet } from './audit-sheet.ts';

const grams = (name: string, text: string): AuditEntry => ({ name, reading: { text, unit: 'g' } });
const sheet = (whole: number, parts: readonly number[]): AuditSheet => ({
  ins: [{ ...grams('Carcass', `${whole}`), from: 'carcass' }],
  outs: parts.map((part, turn) => grams(`Line ${turn}`, `${part}`)),
});

describe('auditSheet', () => {
  it('balances exactly what was cut in parts, whatever the parts', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 100_000 }), { minLength: 1 }), (parts) => {
        const whole = parts.reduce((sum, part) => sum + part, 0);
        expect(auditSheet(sheet(whole, parts))).toMatchObject({
          balances: true,
          findings: [],
          outPercent: 100,
        });
      }),
    );
  });

  it('finds any difference that the digits cannot explain, with its sign and size', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 100_000 }), { minLength: 1, maxLength: 20 }),
        fc.integer({ min: 20, max: 50_000 }),
        (parts, off) => {
          const whole = parts.reduce((sum, part) => sum + part, 0);
          expect(auditSheet(sheet(whole, [...parts, off])).findings[0]).toMatchObject({
            kind: 'over',
            byMg: off * 1000,
          });
          expect(auditSheet(sheet(whole + off, parts)).findings[0]).toMatchObject({
            kind: 'short',
            byMg: -off * 1000,
          });
        },
      ),
    );
  });

  it('adds pounds, ounces, kilograms and grams exactly: 1 lb = 16 oz = 453.592 37 g (NIST Handbook 44)', () => {
    const ins = [{ name: 'Carcass', reading: { text: '3', unit: 'lb' as const }, from: 'carcass' as const }];
    const outs: AuditEntry[] = [
      { name: 'a', reading: { text: '16', unit: 'oz' } },
      { name: 'b', reading: { text: '453.59237', unit: 'g' } },
      { name: 'c', reading: { text: '1', unit: 'lb' } },
    ];
    expect(auditSheet({ ins, outs })).toMatchObject({ balances: true, findings: [] });
  });

  it('looks into lines that are made of lines, however deep', () => {
    const inner = { ...grams('Trim', '900'), parts: [grams('Lean', '500'), grams('Fat', '300')] };
    const outer = { ...grams('Leg', '1000'), parts: [inner, grams('Bone', '100')] };
    const { findings } = auditSheet({
      ins: [{ ...grams('Carcass', '1000'), from: 'carcass' }],
      outs: [outer],
    });
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({ kind: 'parts', at: 'Trim', byMg: -100_000 });
  });

  it.each(['1e3', '-5', 'NaN', '', '12,5'])('refuses a weight of "%s"', (text) => {
    expect(() => auditSheet({ ...sheet(1, []), outs: [grams('a', text)] })).toThrow(RangeError);
  });

  it('refuses a list into which nothing goes', () => {
    expect(() => auditSheet({ ins: [], outs: [grams('Ham', '5')] })).toThrow(/something must go in/);
    expect(() => auditSheet(sheet(0, [5]))).toThrow(/something must go in/);
  });
});
