import type { Portion } from '@flitchbook/carcass';
import type { ComingDay, NewHold, OfferedCut } from '../wire/customers-client.ts';
import type { Units } from '../words/measures.ts';
import { typedGrams, weightTyped } from '../words/typed-weight.ts';

const steps = ['french', 'chine', 'tie', 'score'] as const;
export type Step = (typeof steps)[number];

/** The order as it stands on the page; what is typed stays as typed until it is asked for. */
export interface CutDraft {
  readonly by: Portion['by'];
  readonly thicknessUm: number;
  readonly ribs: number;
  readonly from: string;
  readonly to: string;
  readonly loose: string;
  readonly pieces: number;
  /** pieces to a pack; null: all in one */
  readonly pack: number | null;
  readonly steps: readonly Step[];
  /** cut ids, first choice first */
  readonly instead: readonly string[];
  readonly note: string;
}

type Rule = OfferedCut['portions'][number];

export const noteLengthMost = 1500;
export const piecesMost = 99;

export const ruleOf = (offer: OfferedCut, by: Portion['by']): Rule | undefined =>
  offer.portions.find((rule) => rule.by === by);

export function draftFor({ usual, bothSides }: OfferedCut, units: Units): CutDraft {
  const weight = usual.by === 'weight' ? usual : { fromGrams: 900, toGrams: 1400 };
  return {
    by: usual.by,
    thicknessUm: usual.by === 'thickness' ? usual.um : 25_400,
    ribs: usual.by === 'ribs' ? usual.ribs : 2,
    from: weightTyped(weight.fromGrams, units),
    to: weightTyped(weight.toGrams, units),
    loose: units.weightUnit === 'lb' ? '2' : '1',
    pieces: bothSides ? 2 : 1,
    pack: null,
    steps: [],
    instead: [],
    note: '',
  };
}

const stepUm = { in: 3175, mm: 2000 } as const;

/** The next thickness up or down on the shop's ruler, inside what the cut allows. */
export function nextThickness(
  um: number,
  up: boolean,
  rule: Rule & { by: 'thickness' },
  units: Units,
): number {
  const step = stepUm[units.lengthUnit];
  const next = up ? (Math.floor(um / step) + 1) * step : (Math.ceil(um / step) - 1) * step;
  return next < rule.minUm || next > rule.maxUm ? um : next;
}

/** Which ways of getting ready a cut can have: ribs are frenched and chined, roasts tied, skin scored. */
export function stepsFor({ cut, usual }: OfferedCut): readonly Step[] {
  const hasRibs = /^(rib-chop|rib-rack|crown|small-crown|long-bone)/.test(cut);
  const hasSkin =
    /^(fresh-belly|rib-in-belly|belly-|porchetta|picnic-(whole|short|shank)|ham-(whole|long|rump|shank))/;
  const isRoast = usual.by === 'weight' || /roast|rack|crown|porchetta|^ham-|^picnic-|^butt-whole/.test(cut);
  return steps.filter(
    (step) =>
      (step === 'french' && hasRibs) ||
      (step === 'chine' && hasRibs && usual.by === 'ribs') ||
      (step === 'tie' && isRoast) ||
      (step === 'score' && hasSkin.test(cut)),
  );
}

const bonePairs: readonly (readonly [boneIn: string, boneless: string])[] = [
  ['rib-chop', 'boneless-chop'],
  ['loin-chop', 'boneless-chop'],
  ['centre-chop', 'boneless-chop'],
  ['t-bone-chop', 'boneless-chop'],
  ['rib-rack', 'loin-roast'],
  ['picnic-whole', 'picnic-roast'],
  ['rib-in-belly', 'fresh-belly'],
  ['butt-whole', 'butt-braising'],
];

/** The same cut with and without its bone, where the day has both. */
export function bonePairOf(
  day: ComingDay,
  { cut, speciesId }: OfferedCut,
): { readonly boneIn: string; readonly boneless: string } | null {
  const pair = bonePairs.find((both) => both.includes(cut));
  const has = (id: string): boolean =>
    day.offers.some((offer) => offer.speciesId === speciesId && offer.cut === id);
  return pair && has(pair[0]) && has(pair[1]) ? { boneIn: pair[0], boneless: pair[1] } : null;
}

export type DraftFault = 'count' | 'weights' | 'limits' | 'loose';

type Read<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly fault: DraftFault };

function portionOf(draft: CutDraft, offer: OfferedCut, units: Units): Read<Portion> {
  const rule = ruleOf(offer, draft.by);
  switch (draft.by) {
    case 'thickness':
      return { ok: true, value: { by: 'thickness', um: draft.thicknessUm } };
    case 'ribs':
      return rule?.by === 'ribs' && draft.ribs >= rule.min && draft.ribs <= rule.max
        ? { ok: true, value: { by: 'ribs', ribs: draft.ribs } }
        : { ok: false, fault: 'limits' };
    case 'weight': {
      const [fromGrams, toGrams] = [typedGrams(draft.from, units), typedGrams(draft.to, units)];
      if (fromGrams === null || toGrams === null || toGrams < fromGrams)
        return { ok: false, fault: 'weights' };
      const isWithin = rule?.by === 'weight' && fromGrams >= rule.minGrams && toGrams <= rule.maxGrams;
      return isWithin
        ? { ok: true, value: { by: 'weight', fromGrams, toGrams } }
        : { ok: false, fault: 'limits' };
    }
    default:
      return { ok: true, value: { by: draft.by } };
  }
}

/** For the bench, in the shop's own language, whatever the customer reads. */
const benchWords: Readonly<Record<Step, string>> = {
  french: 'french the bones',
  chine: 'chine off',
  tie: 'tie',
  score: 'score the skin',
};

function noteOf({ pack, steps: ticked, note }: CutDraft): string {
  const lines = [
    ticked.length > 0 && `Please: ${ticked.map((step) => benchWords[step]).join(', ')}.`,
    pack !== null && `Pack: ${pack} to a pack.`,
    note.trim().slice(0, noteLengthMost),
  ];
  return lines.filter(Boolean).join('\n');
}

/** Turns the page into what is asked of the service, or says the one thing that is still to be put right. */
export function readCutDraft(
  draft: CutDraft,
  offer: OfferedCut,
  given: { readonly day: ComingDay; readonly owner: string; readonly units: Units },
): Read<NewHold> {
  const portion = portionOf(draft, offer, given.units);
  if (!portion.ok) return portion;
  const grams = draft.by === 'bulk' ? typedGrams(draft.loose, given.units) : null;
  if (draft.by === 'bulk' && grams === null) return { ok: false, fault: 'loose' };
  const isCount = Number.isInteger(draft.pieces) && draft.pieces >= 1 && draft.pieces <= piecesMost;
  if (grams === null && !isCount) return { ok: false, fault: 'count' };
  const { speciesId, cut } = offer;
  const substitutes = draft.instead.flatMap((id) => {
    const other = given.day.offers.find((each) => each.speciesId === speciesId && each.cut === id);
    if (!other) return [];
    const same = other.portions.some((rule) => rule.by === draft.by);
    return [{ cut: id, portion: same ? portion.value : other.usual }];
  });
  const note = noteOf(draft);
  const line = {
    speciesId,
    cut,
    portion: portion.value,
    ask: grams === null ? { pieces: draft.pieces } : { grams },
    ...(offer.bothSides && { sameAnimal: true }),
    ...(substitutes.length > 0 && { substitutes }),
  };
  return {
    ok: true,
    value: { owner: given.owner, lines: [line], shares: [], ...(note !== '' && { note }) },
  };
}
