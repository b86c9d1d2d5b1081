import type { ScaleReading } from '@flitchbook/carcass';

type LegalMode = 'for-sale' | 'for-owner';
type PackOwner = { readonly lineId: string } | { readonly shareId: string } | null;

export interface NewPack {
  readonly shopId: string;
  readonly packId: string;
  readonly dayId: string;
  readonly animalId: string;
  readonly legalMode: LegalMode;
  readonly sideId: string | null;
  readonly lot: string;
  /** the plan's name for the pack it foresaw */
  readonly foreseen: string;
  readonly thing: 'cut' | 'item' | 'stock' | 'bulk';
  readonly what: string;
  readonly name: string;
  readonly pieceIds: readonly string[];
  readonly orderId: string | null;
  readonly owner: PackOwner;
  readonly gross: ScaleReading;
  readonly tare: ScaleReading;
  readonly net: ScaleReading;
  readonly netGrams: number;
  readonly expectedMg: number;
  readonly price: { readonly minor: number; readonly per: 'kg' | 'lb' } | null;
  readonly amountMinor: number | null;
  readonly taxClass: string;
  readonly frozen: boolean;
  readonly packedOn: string;
  readonly bestBefore: string | null;
  readonly packedBy: string | null;
}

export interface PackRecord extends Omit<NewPack, 'pieceIds'> {
  readonly serial: number;
  readonly pieces: number;
  /** ISO instant */
  readonly packedAt: string;
  readonly handOverId: string | null;
  readonly soldMinor: number | null;
}

/** Which packs: whole ones, that were not undone. */
export interface PackFilter {
  readonly dayId?: string;
  readonly orderId?: string;
  readonly animalId?: string;
  readonly packIds?: readonly string[];
  readonly serial?: number;
  readonly stillHere?: boolean;
}

export interface LabelRun {
  readonly runId: string;
  readonly packs: readonly { readonly packId: string; readonly isPrinted: boolean }[];
}

export interface NewBill {
  readonly shopId: string;
  readonly billId: string;
  readonly orderId: string;
  readonly issuedOn: string;
  readonly netMinor: number;
  readonly taxMinor: number;
  readonly totalMinor: number;
  readonly depositMinor: number;
  readonly taxes: readonly {
    readonly taxClass: string;
    readonly name: string;
    readonly ratePpm: number;
    readonly netMinor: number;
    readonly taxMinor: number;
  }[];
  readonly lines: readonly StoredBillLine[];
  readonly settledBy: string | null;
}

export interface StoredBillLine {
  readonly kind: 'pack' | 'hanging' | 'fee' | 'allowance';
  readonly name: string;
  readonly about: string;
  readonly count: number;
  readonly weight: ScaleReading | null;
  readonly price: { readonly minor: number; readonly per: 'kg' | 'lb' } | null;
  readonly amountMinor: number;
  readonly taxClass: string;
}

export interface BillRecord extends NewBill {
  readonly number: number;
  /** ISO instant */
  readonly settledAt: string;
}

export interface NewPayment {
  readonly shopId: string;
  readonly paymentId: string;
  readonly orderId: string | null;
  readonly handOverId: string | null;
  readonly kind: 'deposit' | 'payment' | 'refund' | 'credit';
  readonly method: 'cash' | 'card-terminal' | 'transfer';
  readonly amountMinor: number;
  readonly note: string;
  readonly takenBy: string | null;
}

export interface PaymentRecord extends NewPayment {
  /** ISO instant */
  readonly at: string;
}

export interface NewHandOver {
  readonly shopId: string;
  readonly handOverId: string;
  /** null: sold over the counter */
  readonly orderId: string | null;
  readonly takenBy: string;
  readonly proof: 'signature' | 'code' | 'known';
  readonly note: string;
  readonly givenBy: string | null;
  readonly packs: readonly { readonly packId: string; readonly soldMinor: number | null }[];
}

export interface PickUp {
  readonly shopId: string;
  readonly orderId: string;
  readonly date: string;
  readonly fromTime: string;
  readonly toTime: string;
  /** ISO instants */
  readonly startsAt: string;
  readonly endsAt: string;
  readonly place: string;
}

export interface PickUpRecord extends PickUp {
  readonly version: number;
  /** ISO instant */
  readonly changedAt: string;
  readonly steps: readonly ('remind' | 'freeze' | 'release')[];
}

export interface NewClosing {
  readonly shopId: string;
  readonly animalId: string;
  readonly hangingGrams: number;
  readonly apartGrams: number;
  readonly packedGrams: number;
  readonly namedGrams: number;
  readonly restGrams: number;
  readonly outs: readonly { readonly kind: string; readonly name: string; readonly grams: number }[];
  readonly flag: 'none' | 'rest-too-large' | 'more-out-than-in';
  readonly note: string;
  readonly minutes: number;
  readonly animalMinor: number;
  readonly closedBy: string | null;
}

export interface ClosingRecord extends NewClosing {
  /** ISO instant */
  readonly closedAt: string;
}

/** Where a trace starts. */
export type TraceFrom =
  | { readonly packId: string }
  | { readonly serial: number }
  | { readonly lot: string }
  | { readonly animalId: string }
  | { readonly farmId: string; readonly from: string; readonly to: string }
  | { readonly stillHere: true }
  | { readonly packIds: readonly string[] };

/** One pack with what it came from and where it went: a step back and a step forward. */
export interface TraceRow {
  readonly packId: string;
  readonly serial: number;
  readonly lot: string;
  readonly name: string;
  readonly netGrams: number;
  readonly packedOn: string;
  readonly animalId: string;
  readonly animal: string;
  readonly farm: string | null;
  readonly cutOn: string;
  readonly orderNumber: number | null;
  readonly customer: string | null;
  /** ISO instant; null while it is in the house */
  readonly leftAt: string | null;
  readonly takenBy: string | null;
}
