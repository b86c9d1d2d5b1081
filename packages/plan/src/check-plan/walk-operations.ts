import {
  isOutputLost,
  isPartLost,
  lostRegions,
  type Operation,
  outputsOn,
  type Primal,
  type SideFacts,
} from '@flitchbook/carcass';
import type { SidePlan } from '../cutting-plan.ts';
import { type DaySide, entryOf } from './day-index.ts';
import type { Note } from './plan-rules.ts';

interface ExpectedItem {
  readonly item: string;
  /** part or bar that gives it */
  readonly from: string;
  readonly massMg: number;
}

/** What a side must give, found out step by step while it is walked. Masses are exact shares, not yet rounded. */
export interface Expected {
  readonly parts: Set<string>;
  /** parts set aside whole */
  readonly lostParts: Set<string>;
  readonly bars: Map<string, number>;
  readonly items: ExpectedItem[];
  readonly bulkMg: Map<string, number>;
  minutesFrom: number;
  minutesTo: number;
  /** false when a choice is missing or unknown, so that masses can't be told */
  complete: boolean;
}

export const addTo = (into: Map<string, number>, key: string, amount: number): void => {
  into.set(key, (into.get(key) ?? 0) + amount);
};

/** Bulk that parts set aside at inspection go to, and bulk that saw dust goes to. */
export const lostBulk = 'lost';
export const lossBulk = 'loss';

const sumOf = (shares: readonly { readonly parts: number }[]): number => {
  let sum = 0;
  for (const share of shares) sum += share.parts;
  return sum;
};

export const shareOfList = (
  share: { readonly parts: number },
  shares: readonly { readonly parts: number }[],
): number => share.parts / sumOf(shares);

interface Walk {
  readonly planned: SidePlan;
  readonly known: DaySide;
  readonly expected: Expected;
  readonly at: string;
  readonly note: Note;
  readonly lost: ReadonlySet<string>;
}

function missingNeed(operation: Operation, side: SideFacts): string | undefined {
  return operation.needs?.find((need) => !side.facts.includes(need));
}

function chosenOperation({ planned, known, at, note }: Walk, part: Primal): Operation | undefined {
  const chosen = entryOf(planned.operations, part.id);
  if (chosen === undefined) {
    note('P2', `${at}.operations.${part.id}`, `${part.name} is there and nothing says how it is broken down`);
    return undefined;
  }
  const operation = part.operations.find((candidate) => candidate.id === chosen);
  if (!operation) {
    note('P2', `${at}.operations.${part.id}`, `"${chosen}" is no way to break down the ${part.name}`);
    return undefined;
  }
  const missing = missingNeed(operation, known.side);
  if (missing)
    note(
      'P3',
      `${at}.operations.${part.id}`,
      `"${chosen}" needs ${missing}, which side ${planned.sideId} is not`,
    );
  return operation;
}

function visit(walk: Walk, partId: string, massMg: number): void {
  const { known, expected, lost } = walk;
  const part = entryOf(known.species.parts, partId);
  if (part && isPartLost(part, lost)) {
    expected.lostParts.add(partId);
    addTo(expected.bulkMg, lostBulk, massMg);
    return;
  }
  expected.parts.add(partId);
  if (part?.kind === 'bar') {
    expected.bars.set(partId, massMg);
    return;
  }
  const operation = part && chosenOperation(walk, part);
  if (!operation) {
    expected.complete = false;
    return;
  }
  expected.minutesFrom += operation.minutes;
  expected.minutesTo += operation.minutes;
  const outputs = outputsOn(known.side, operation);
  for (const output of outputs) {
    const outputMg = massMg * shareOfList(output, outputs);
    if (output.to === 'part') visit(walk, output.id, outputMg);
    else if (isOutputLost(known.species, part, operation, output, lost))
      addTo(expected.bulkMg, lostBulk, outputMg);
    else if (output.to === 'item') expected.items.push({ item: output.id, from: partId, massMg: outputMg });
    else addTo(expected.bulkMg, output.id, outputMg);
  }
}

/** Walks the parts that the chosen operations make, from the whole side down. */
export function walkOperations(planned: SidePlan, known: DaySide, at: string, note: Note): Expected {
  const expected: Expected = {
    parts: new Set(),
    lostParts: new Set(),
    bars: new Map(),
    items: [],
    bulkMg: new Map(),
    minutesFrom: 0,
    minutesTo: 0,
    complete: true,
  };
  const lost = lostRegions(known.species, known.side.lostParts);
  visit({ planned, known, expected, at, note, lost }, known.species.sideRoot, known.side.massMg);
  for (const partId of Object.keys(planned.operations)) {
    if (expected.parts.has(partId) && !expected.bars.has(partId)) continue;
    const isLost = expected.lostParts.has(partId);
    note(
      isLost ? 'P4' : 'P2',
      `${at}.operations.${partId}`,
      isLost
        ? 'is lost and is broken down all the same'
        : 'is broken down, but the operations above it do not give it',
    );
  }
  return expected;
}
