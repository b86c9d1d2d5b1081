import type { PlanFault } from './plan-rules.ts';

/** Tells what is wrong with a value, for data that came from outside. Empty is right. */
type Shape = (value: unknown, at: string) => PlanFault[];

const longestList = 100_000;
const longestId = 200;
const longestSentence = 4000;

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** A value in a message: short, and never a failure of its own. */
export function show(value: unknown): string {
  if (typeof value === 'string') return `"${value.length > 60 ? `${value.slice(0, 60)}…` : value}"`;
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (isRecord(value)) return 'a record';
  return typeof value === 'symbol' || typeof value === 'function' ? typeof value : String(value);
}

const expected = (at: string, what: string, value: unknown): PlanFault[] => [
  { rule: 'P0', at, says: `must be ${what}, got ${show(value)}` },
];

const textUpTo =
  (longest: number): Shape =>
  (value, at) =>
    typeof value === 'string' && value.length > 0 && value.length <= longest
      ? []
      : expected(at, `text of 1 to ${longest} characters`, value);
const id = textUpTo(longestId);
const sentence = textUpTo(longestSentence);

const whole: Shape = (value, at) =>
  Number.isSafeInteger(value) && (value as number) >= 0
    ? []
    : expected(at, 'a whole number of 0 or more', value);
const finite: Shape = (value, at) => (Number.isFinite(value) ? [] : expected(at, 'a number', value));

const oneOf =
  (...values: readonly string[]): Shape =>
  (value, at) =>
    typeof value === 'string' && values.includes(value)
      ? []
      : expected(at, `one of ${values.join(', ')}`, value);

const orNull =
  (shape: Shape): Shape =>
  (value, at) =>
    value === null ? [] : shape(value, at);

const list =
  (shape: Shape): Shape =>
  (value, at) => {
    if (!Array.isArray(value) || value.length > longestList)
      return expected(at, `a list of at most ${longestList}`, value);
    // Array.from visits holes too, which map and flatMap would step over.
    return Array.from(value).flatMap((entry, index) => shape(entry, `${at}[${index}]`));
  };

const table =
  (shape: Shape): Shape =>
  (value, at) =>
    isRecord(value)
      ? Object.entries(value).flatMap(([key, entry]) => shape(entry, `${at}.${key}`))
      : expected(at, 'a record', value);

const record =
  (fields: Readonly<Record<string, Shape>>): Shape =>
  (value, at) =>
    isRecord(value)
      ? Object.entries(fields).flatMap(([key, shape]) =>
          shape(Object.hasOwn(value, key) ? value[key] : undefined, at === '' ? key : `${at}.${key}`),
        )
      : expected(at || 'plan', 'a record', value);

const portions: Readonly<Record<string, Shape>> = {
  thickness: record({ um: whole }),
  ribs: record({ ribs: whole }),
  weight: record({ fromGrams: whole, toGrams: whole }),
  whole: record({}),
  bulk: record({}),
};

const portion: Shape = (value, at) => {
  const by = isRecord(value) ? value['by'] : undefined;
  const shape = typeof by === 'string' && Object.hasOwn(portions, by) ? portions[by] : undefined;
  return shape ? shape(value, at) : expected(`${at}.by`, `one of ${Object.keys(portions).join(', ')}`, by);
};

const owner: Shape = (value, at) => {
  if (value === null) return [];
  const keys = isRecord(value) ? Object.keys(value) : [];
  if (keys.length !== 1 || !(keys[0] === 'lineId' || keys[0] === 'shareId'))
    return expected(at, 'a line, a share or null', value);
  return id((value as Record<string, unknown>)[keys[0]], `${at}.${keys[0]}`);
};

const item = record({ pieceId: id, item: id, from: id, massMg: whole, owner });
const spanPiece = record({ pieceId: id, cut: id, portion, fromUm: whole, toUm: whole, massMg: whole, owner });
const stretch = record({ zone: id, manner: id, fromStation: whole, toStation: whole });
const run = record({
  stock: id,
  stretches: list(stretch),
  fromUm: whole,
  toUm: whole,
  usableUm: whole,
  pieces: list(spanPiece),
  freeUm: whole,
  freeMg: whole,
});
const side = record({
  sideId: id,
  animalId: id,
  shareId: orNull(id),
  massMg: whole,
  operations: table(id),
  items: list(item),
  bars: list(record({ bar: id, runs: list(run) })),
  bulkMg: table(whole),
  minutes: finite,
});
const single = record({ pieceId: id, animalId: id, item: id, massMg: whole, owner });
const shortfall = record({
  kind: oneOf('scarce', 'clash', 'lost', 'locked', 'impossible'),
  says: sentence,
  withLines: list(id),
  withShares: list(id),
  withLocks: list(id),
  mostPossible: finite,
});
const lineFill = record({
  lineId: id,
  asked: whole,
  filled: whole,
  pieceIds: list(id),
  bulkGrams: whole,
  shortfall: orNull(shortfall),
});
const shareFill = record({ shareId: id, sideIds: list(id), shortfall: orNull(shortfall) });
const goals = record({ promised: finite, wished: finite, rest: finite });
const proof = record({
  goals,
  bound: goals,
  gap: finite,
  status: oneOf('optimal', 'within-gap', 'deadline'),
  method: oneOf('plain', 'columns'),
  seconds: finite,
  seed: finite,
});

const plan = record({
  dayId: id,
  sides: list(side),
  singles: list(single),
  lines: list(lineFill),
  shares: list(shareFill),
  proof: orNull(proof),
});

/** Faults in the form of a plan. Only a plan without any can be checked further. */
export const planShapeFaults = (value: unknown): PlanFault[] => plan(value, '');
