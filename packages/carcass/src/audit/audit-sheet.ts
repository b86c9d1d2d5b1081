import type { ScaleReading } from '../reading.ts';
import {
  type ExactMass,
  exactMass,
  exactToMilligrams,
  halfLastDigit,
  inUnit,
  percentOf,
  sumOf,
} from './exact-mass.ts';

/** A line of a list, as it was read or printed. */
export interface AuditEntry {
  readonly name: string;
  readonly reading: ScaleReading;
  /** percent of what goes in, as printed beside the line: "24", "24.5" */
  readonly percent?: string;
  /** what the line is said to be made of */
  readonly parts?: readonly AuditEntry[];
}

/** Something that goes in. Rusk, water, cure and other animals are no carcass, and stand in lines of their own. */
export interface AuditInput extends AuditEntry {
  readonly from: 'carcass' | 'other';
}

export interface AuditSheet {
  readonly ins: readonly AuditInput[];
  readonly outs: readonly AuditEntry[];
}

export interface AuditFinding {
  readonly kind: 'over' | 'short' | 'parts' | 'percent' | 'rounding';
  /** the line it is about; empty for the whole list */
  readonly at: string;
  /** how much is too much (above 0) or missing (below 0) */
  readonly byMg: number;
  readonly says: string;
}

interface AuditLine {
  readonly name: string;
  readonly massMg: number;
  readonly percentOfIn: number;
}

export interface AuditVerdict {
  /** whether outs and ins, and each line and its parts, agree as far as their digits can tell */
  readonly balances: boolean;
  readonly carcassMg: number;
  readonly otherMg: number;
  readonly outMg: number;
  readonly outPercent: number;
  readonly lines: readonly AuditLine[];
  /** those of kind `rounding` are remarks; any other says what does not hold, and where */
  readonly findings: readonly AuditFinding[];
}

const masses = (entries: readonly AuditEntry[]): ExactMass[] =>
  entries.map(({ reading }) => exactMass(reading));
const doubtOf = (entries: readonly AuditEntry[]): ExactMass =>
  sumOf(entries.map(({ reading }) => halfLastDigit(reading)));

function said(mass: ExactMass, { unit }: ScaleReading): string {
  return `${Number(inUnit(mass, unit).toFixed(3))} ${unit}`;
}

/** Adds up `entries` against `whole`; undefined where they are equal. */
function compare(
  at: string,
  entries: readonly AuditEntry[],
  whole: readonly AuditEntry[],
): (Omit<AuditFinding, 'kind'> & { beyondDigits: boolean; off: ExactMass }) | undefined {
  const [sum, aim] = [sumOf(masses(entries)), sumOf(masses(whole))];
  const off = sum - aim;
  const [first] = whole as readonly [AuditEntry];
  if (off === 0n) return undefined;
  const size = said(off < 0n ? -off : off, first.reading);
  const share = percentOf(sum, aim).toFixed(1);
  return {
    at,
    byMg: exactToMilligrams(off),
    beyondDigits: (off < 0n ? -off : off) > doubtOf([...entries, ...whole]),
    off,
    says: `adds up to ${said(sum, first.reading)} of ${said(aim, first.reading)}, ${share} %: ${size} ${off > 0n ? 'too much' : 'missing'}`,
  };
}

function auditWhole({ ins, outs }: AuditSheet): AuditFinding[] {
  const found = compare('', outs, ins);
  if (!found) return [];
  const { at, byMg, says, beyondDigits, off } = found;
  if (!beyondDigits)
    return [{ kind: 'rounding', at, byMg, says: `what comes out ${says}; the digits written allow for it` }];
  return [{ kind: off > 0n ? 'over' : 'short', at, byMg, says: `what comes out ${says}` }];
}

function auditParts(entry: AuditEntry): AuditFinding[] {
  if (!entry.parts) return [];
  const found = compare(entry.name, entry.parts, [entry]);
  const below = entry.parts.flatMap(auditParts);
  if (!found) return below;
  const kind = found.beyondDigits ? 'parts' : 'rounding';
  return [{ kind, at: found.at, byMg: found.byMg, says: `what it is made of ${found.says}` }, ...below];
}

/** Percent printed beside a line, against its own weight. */
function auditPercent(entry: AuditEntry, ins: readonly AuditInput[]): AuditFinding[] {
  const below = (entry.parts ?? []).flatMap((part) => auditPercent(part, ins));
  if (entry.percent === undefined) return below;
  const whole = sumOf(masses(ins));
  const mass = exactMass(entry.reading);
  const doubt =
    percentOf(halfLastDigit(entry.reading), whole) +
    (percentOf(doubtOf(ins), whole) * percentOf(mass, whole)) / 100;
  const lastDigit = 10 ** -(entry.percent.split('.')[1]?.length ?? 0);
  const actual = percentOf(mass, whole);
  if (Math.abs(actual - Number(entry.percent)) <= lastDigit / 2 + doubt + 1e-9) return below;
  const aim = (whole * BigInt(Math.round(Number(entry.percent) * 1e6))) / 100_000_000n;
  return [
    {
      kind: 'percent',
      at: entry.name,
      byMg: exactToMilligrams(mass - aim),
      says: `${said(mass, entry.reading)} is ${actual.toFixed(1)} % of what goes in, not ${entry.percent} %; that would be ${said(aim, entry.reading)}`,
    },
    ...below,
  ];
}

/**
 * Whether a list of what goes in and what comes out of an animal balances, by how much it does not, and where. Readings
 * are added up exactly; a difference that half a unit of the last digit of each reading can explain is only remarked on.
 * @throws RangeError when nothing goes in, or a reading or a percentage is not a plain decimal number
 */
export function auditSheet(sheet: AuditSheet): AuditVerdict {
  const whole = sumOf(masses(sheet.ins));
  if (whole <= 0n) throw new RangeError('something must go in: the list has no weight of a carcass');
  const findings = [
    ...auditWhole(sheet),
    ...sheet.outs.flatMap(auditParts),
    ...sheet.outs.flatMap((entry) => auditPercent(entry, sheet.ins)),
  ];
  const out = sumOf(masses(sheet.outs));
  const from = (origin: AuditInput['from']): number =>
    exactToMilligrams(sumOf(masses(sheet.ins.filter((input) => input.from === origin))));
  return {
    balances: findings.every(({ kind }) => kind === 'rounding'),
    carcassMg: from('carcass'),
    otherMg: from('other'),
    outMg: exactToMilligrams(out),
    outPercent: percentOf(out, whole),
    lines: sheet.outs.map(({ name, reading }) => ({
      name,
      massMg: exactToMilligrams(exactMass(reading)),
      percentOfIn: percentOf(exactMass(reading), whole),
    })),
    findings,
  };
}
