import type { Cut, Portion, PortionRule, Species } from '@flitchbook/carcass';
import type { Instructions, Rank, Wanted } from '@flitchbook/plan';
import type { NewLine, NewOrder, NewShare } from '../wire/client.ts';
import type { Units } from '../words/measures.ts';
import { typedGrams, weightTyped } from '../words/typed-weight.ts';

/** A line as it stands on the form: what is typed stays as typed until the order is sent. */
export interface LineDraft {
  readonly key: string;
  readonly cut: string;
  readonly by: Portion['by'];
  readonly thicknessUm: number;
  readonly ribs: number;
  /** weights as typed, in the shop's unit */
  readonly from: string;
  readonly to: string;
  readonly loose: string;
  readonly pieces: number;
  readonly rank: Rank;
  readonly sameAnimal: boolean;
  readonly onlyAnimal: string;
  readonly onlyHand: '' | 'left' | 'right';
  readonly substitute: string;
}

export interface ShareDraft {
  readonly size: 'half' | 'whole';
  readonly rank: Rank;
  readonly instructions: Instructions;
}

export interface OrderDraft {
  readonly owner: string;
  readonly note: string;
  readonly lines: readonly LineDraft[];
  readonly share: ShareDraft | null;
}

/** Something to put right before the order can be sent. `field` is the id of the input. */
export interface DraftFault {
  readonly field: string;
  readonly fault: 'owner' | 'empty' | 'weight' | 'range' | 'limits' | 'pieces';
}

const usualRule = (cut: Cut): PortionRule | undefined =>
  cut.portions.find((rule) => rule.by === cut.usual.by);

/** A line for a cut, filled in with the way it is usually asked for. What was said of count and rank stays. */
export function lineFor(
  cut: Cut,
  units: Units,
  before: Pick<LineDraft, 'key'> & Partial<LineDraft>,
): LineDraft {
  const { usual } = cut;
  const weight = usual.by === 'weight' ? usual : { fromGrams: 900, toGrams: 1400 };
  return {
    pieces: cut.bothSides ? 2 : 1,
    rank: 'promised',
    sameAnimal: false,
    onlyAnimal: '',
    onlyHand: '',
    substitute: '',
    ...before,
    cut: cut.id,
    by: usualRule(cut)?.by ?? 'whole',
    thicknessUm: usual.by === 'thickness' ? usual.um : 25_400,
    ribs: usual.by === 'ribs' ? usual.ribs : 1,
    from: weightTyped(weight.fromGrams, units),
    to: weightTyped(weight.toGrams, units),
    loose: before.loose ?? (units.weightUnit === 'lb' ? '2' : '1'),
  };
}

type Read<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly fault: DraftFault };

const fault = (key: string, what: DraftFault['fault'], field: string): { ok: false; fault: DraftFault } => ({
  ok: false,
  fault: { field: `${key}-${field}`, fault: what },
});

function readWeight(line: LineDraft, rule: PortionRule | undefined, units: Units): Read<Portion> {
  const [fromGrams, toGrams] = [typedGrams(line.from, units), typedGrams(line.to, units)];
  if (fromGrams === null) return fault(line.key, 'weight', 'from');
  if (toGrams === null) return fault(line.key, 'weight', 'to');
  if (toGrams < fromGrams) return fault(line.key, 'range', 'to');
  const fits = rule?.by === 'weight' && fromGrams >= rule.minGrams && toGrams <= rule.maxGrams;
  return fits ? { ok: true, value: { by: 'weight', fromGrams, toGrams } } : fault(line.key, 'limits', 'from');
}

function readPortion(line: LineDraft, cut: Cut, units: Units): Read<Portion> {
  const rule = cut.portions.find((candidate) => candidate.by === line.by);
  switch (line.by) {
    case 'thickness':
      return { ok: true, value: { by: 'thickness', um: line.thicknessUm } };
    case 'ribs':
      return rule?.by === 'ribs' && line.ribs >= rule.min && line.ribs <= rule.max
        ? { ok: true, value: { by: 'ribs', ribs: line.ribs } }
        : fault(line.key, 'limits', 'ribs');
    case 'weight':
      return readWeight(line, rule, units);
    default:
      return { ok: true, value: { by: line.by } };
  }
}

/** The same portion where the substitute can be cut so, else its usual one. */
function substituteOf(line: LineDraft, portion: Portion, species: Species): Wanted[] {
  const cut = species.cuts[line.substitute];
  if (!cut) return [];
  const same = cut.portions.some((rule) => rule.by === portion.by);
  return [{ cut: cut.id, portion: same ? portion : cut.usual }];
}

function readLine(line: LineDraft, species: Species, units: Units): Read<NewLine> {
  const cut = species.cuts[line.cut];
  if (!cut) return fault(line.key, 'limits', 'cut');
  const portion = readPortion(line, cut, units);
  if (!portion.ok) return portion;
  const grams = line.by === 'bulk' ? typedGrams(line.loose, units) : null;
  if (line.by === 'bulk' && grams === null) return fault(line.key, 'weight', 'loose');
  if (line.by !== 'bulk' && !(Number.isInteger(line.pieces) && line.pieces >= 1 && line.pieces <= 999))
    return fault(line.key, 'pieces', 'pieces');
  return {
    ok: true,
    value: {
      cut: cut.id,
      portion: portion.value,
      ask: grams === null ? { pieces: line.pieces } : { grams },
      rank: line.rank,
      ...(line.sameAnimal ? { sameAnimal: true } : {}),
      ...(line.onlyAnimal === '' ? {} : { onlyAnimal: line.onlyAnimal }),
      ...(line.onlyHand === '' ? {} : { onlyHand: line.onlyHand }),
      ...(line.substitute === '' ? {} : { substitutes: substituteOf(line, portion.value, species) }),
    },
  };
}

/** Turns the form into an order, or says everything that is still to be put right. */
export function readDraft(
  draft: OrderDraft,
  species: Species,
  units: Units,
):
  | { readonly ok: true; readonly order: NewOrder }
  | { readonly ok: false; readonly faults: readonly DraftFault[] } {
  const read = draft.lines.map((line) => readLine(line, species, units));
  const faults: DraftFault[] = [
    ...(draft.owner.trim() === '' ? [{ field: 'owner', fault: 'owner' } as const] : []),
    ...(draft.lines.length === 0 && draft.share === null
      ? [{ field: 'add-line', fault: 'empty' } as const]
      : []),
    ...read.flatMap((line) => (line.ok ? [] : [line.fault])),
  ];
  if (faults.length > 0) return { ok: false, faults };
  const shares: NewShare[] = draft.share ? [draft.share] : [];
  const note = draft.note.trim();
  return {
    ok: true,
    order: {
      owner: draft.owner.trim(),
      ...(note === '' ? {} : { note }),
      lines: read.flatMap((line) => (line.ok ? [line.value] : [])),
      shares,
    },
  };
}
