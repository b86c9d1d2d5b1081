import type { Bar, Manner, Operation, Output, Primal, Release, Share, SlaughterFact } from './species.ts';

type More = Pick<Output, 'needs' | 'otherwise' | 'regions' | 'cvPercent'>;

const outputTo =
  (to: Output['to'], usualSource: string) =>
  (id: string, parts: number, source = usualSource, more: More = {}): Output => ({
    to,
    id,
    parts,
    source,
    ...more,
  });

/** Writers of an operation's outputs, in any one unit of mass; what names no source of its own has the usual one. */
export const outputsOf = (usualSource: string) => ({
  part: outputTo('part', usualSource),
  item: outputTo('item', usualSource),
  bulk: outputTo('bulk', usualSource),
});

interface Terms {
  readonly needs?: readonly SlaughterFact[];
  readonly onRequest?: true;
}

/** Done only where someone asks for what it alone gives. */
export const onRequest: Terms = { onRequest: true };

/** Minutes are common practice: a shop times its own bench. */
export const operation = (
  id: string,
  name: string,
  says: string,
  minutes: number,
  outputs: readonly Output[],
  terms: Terms = {},
): Operation => ({ id, name, says, minutes, minutesSource: 'practice', outputs, ...terms });

export const primal = (
  id: string,
  name: string,
  regions: readonly string[],
  operations: readonly Operation[],
): Primal => ({ kind: 'primal', id, name, regions, operations });

interface BlockForm {
  readonly id: string;
  readonly name: string;
  readonly regions: readonly string[];
  readonly lengthMm: number;
  readonly tool: 'saw' | 'knife';
  readonly source: string;
  /** where another bar gives the same stock */
  readonly stock?: string;
}

/** A block cut across: no bone to count by, so its length is all that matters. */
export const block = ({ id, name, regions, lengthMm, tool, source, stock = id }: BlockForm): Bar => ({
  kind: 'bar',
  id,
  name,
  regions,
  zones: [
    {
      id: 'block',
      name,
      stations: { fixed: 1 },
      lengthMm,
      lengthSource: 'memory',
      mass: { parts: 1, source },
      manners: [
        manner({
          id: 'across',
          name: 'Cut across',
          stock,
          tool,
          keeps: { parts: 1, source },
          releases: [],
          minutes: 1,
        }),
      ],
      maySplit: false,
    },
  ],
});

export const released = (to: Release['to'], id: string, parts: number, source: string): Release => ({
  to,
  id,
  parts,
  source,
});

interface MannerForm {
  readonly id: string;
  readonly name: string;
  readonly stock: string;
  readonly tool: Manner['tool'];
  readonly keeps: Share;
  readonly releases: readonly Release[];
  readonly minutes: number;
  readonly joins?: boolean;
  readonly onRequest?: true;
  /** where boned meat draws up */
  readonly drawsUp?: { readonly ppm: number; readonly source: string };
}

export const manner = ({ joins = false, drawsUp, ...form }: MannerForm): Manner => ({
  ...form,
  minutesSource: 'practice',
  joins,
  lengthPpm: drawsUp?.ppm ?? 1_000_000,
  lengthSource: drawsUp?.source ?? 'practice',
});

/** A table by id. */
export const named = <T extends { readonly id: string }>(list: readonly T[]): Readonly<Record<string, T>> =>
  Object.fromEntries(list.map((entry) => [entry.id, entry]));
