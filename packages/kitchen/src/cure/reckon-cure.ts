import { compareRatios, dividedBy, minus, type Ratio, ratio, roundHalfUp, times } from '@flitchbook/carcass';
import { type Caution, cautions } from '../cautions.ts';
import type { KitchenFault } from '../faults.ts';
import { ppmText, toPpb } from '../quantities.ts';
import type { CureRequest } from './cure-request.ts';
import type { CureLimit, CureMethod, CureRules } from './cure-rules.ts';
import { baseWith, type CureBase, cureBase, cureFor, ingoing } from './cure-sums.ts';
import { type Ingoing, type Judgement, judge, limitFraction } from './judge-cure.ts';
import { type CureEntry, readCure } from './read-cure.ts';
import { convert, isSubstance, type Substance } from './substances.ts';
import { usualCureRules } from './usual-cure-rules.ts';

/** Fewer steps of the scale than this do not weigh well: NIST Handbook 44 (2023), 2.20, table 8, class III. */
export const leastScaleDivisions = 20;

export interface CureAnswer {
  /** refused: above a limit, not to be used. flagged: below a required level, or something to look at first. */
  readonly outcome: 'within' | 'flagged' | 'refused';
  readonly jurisdiction: string;
  readonly product: string;
  readonly method: CureMethod;
  /** the cure to weigh, or that was weighed; null where a level was asked for that is refused */
  readonly cureMg: number | null;
  /** the most that the limits allow; null where none limits it */
  readonly mostCureMg: number | null;
  readonly nitritePpb: number;
  readonly nitriteAs: string;
  readonly nitriteIonPpb: number;
  readonly nitratePpb: number;
  /** what the nitrite was reckoned on */
  readonly baseMg: number;
  /** salt and sugar still to be weighed in */
  readonly add: { readonly saltMg: number; readonly sugarMg: number; readonly totalMg: number } | null;
  /** required beside the nitrite */
  readonly needs: readonly { readonly what: 'ascorbate'; readonly mg: number }[];
  readonly scale: ScaleAnswer | null;
  readonly judgements: readonly Judgement[];
  readonly says: readonly string[];
  readonly cautions: readonly Caution[];
}

export interface ScaleAnswer {
  readonly divisions: number;
  readonly enough: boolean;
  /** one step of the scale more or less */
  readonly divisionPpb: number;
  /** the least meat whose dose this scale weighs well, where the cure goes by the meat alone */
  readonly leastMeatMg: number | null;
}

const zero = ratio(0);

const ways: Readonly<Record<CureMethod, string>> = {
  'mixed-in': 'Nitrite over the green weight of the meat it is mixed into.',
  'dry-rub': 'Nitrite over the green weight of the meat it is rubbed on.',
  'short-soak': 'Short soak: nitrite in the pickle times what the meat picked up, over the whole pickle.',
  'long-soak': 'Long soak: nitrite over meat and pickle together.',
  pumped: 'Pumped: nitrite in the pickle times the pump, over the whole pickle.',
};

/** What a limit on nitrite allows, as the salt in the bag. */
function levelOf({ ppm }: CureLimit, as: Substance): Ratio | null {
  if (ppm[as] !== undefined) return limitFraction(ppm[as]);
  const [first, figure = 0] = Object.entries(ppm)[0] ?? [];
  return first !== undefined && isSubstance(first) ? convert(limitFraction(figure), first, as) : null;
}

function mostCure(entry: CureEntry, base: CureBase): Ratio | null {
  const caps = entry.limits.filter(
    ({ of, basis, kind }) => of === 'nitrite' && basis === 'ingoing' && kind !== 'at-least',
  );
  const amounts = caps.flatMap((limit) => {
    const level = levelOf(limit, entry.bag.nitriteAs);
    return (level && cureFor(base, level, entry.bag.nitrite)) ?? [];
  });
  return amounts.sort(compareRatios)[0] ?? null;
}

/** Salt and sugar that are still missing, less what the cure itself brings. */
function toAdd(entry: CureEntry, base: CureBase, cure: Ratio, says: string[]): CureAnswer['add'] {
  if (!entry.salt && !entry.sugar) return null;
  const whole = baseWith(base, cure);
  const missing = (name: string, share: Ratio | null, inBag: Ratio): number => {
    const rest = minus(times(share ?? zero, whole), times(cure, inBag));
    if (!share) return 0;
    if (rest.over < 0n) says.push(`The cure alone brings more ${name} than was asked for.`);
    return rest.over < 0n ? 0 : roundHalfUp(rest);
  };
  const saltMg = missing('salt', entry.salt, entry.bag.salt);
  const sugarMg = missing('sugar', entry.sugar, entry.bag.sugar);
  return { saltMg, sugarMg, totalMg: saltMg + sugarMg + roundHalfUp(cure) };
}

function onScale(entry: CureEntry, base: CureBase, cure: Ratio): ScaleAnswer | null {
  if (!entry.scaleDivision) return null;
  const divisions = dividedBy(cure, entry.scaleDivision);
  const least = times(entry.scaleDivision, ratio(leastScaleDivisions));
  return {
    divisions: Number(divisions.over / divisions.under),
    enough: compareRatios(cure, least) >= 0,
    divisionPpb: toPpb(dividedBy(times(entry.scaleDivision, entry.bag.nitrite), baseWith(base, cure))),
    leastMeatMg: entry.pickle ? null : roundHalfUp(dividedBy(times(entry.meat, least), cure)),
  };
}

function ascorbateNeeded(entry: CureEntry, base: CureBase, cure: Ratio): CureAnswer['needs'] {
  return entry.limits
    .filter(({ of }) => of === 'ascorbate')
    .map(({ ppm }) => ({
      what: 'ascorbate',
      mg: roundHalfUp(times(limitFraction(ppm.ascorbate ?? 0), baseWith(base, cure))),
    }));
}

function remarks(entry: CureEntry, judgements: readonly Judgement[], scale: ScaleAnswer | null): string[] {
  const says = [ways[entry.method]];
  if (entry.counted !== entry.meat)
    says.push('The skin was taken off the weight: the limit counts meat without it.');
  if (
    entry.pickle?.holdsCure &&
    entry.uptake &&
    compareRatios(entry.pickle.weight, times(entry.meat, entry.uptake)) < 0
  )
    says.push('The pickle is less than this meat would take up.');
  if (compareRatios(entry.bag.nitrite, ratio(1, 10)) > 0)
    says.push('This is nearly pure nitrite: a slip of a gram is a slip of hundreds of parts per million.');
  for (const { verdict, says: judged } of judgements)
    if (verdict === 'over' || verdict === 'under')
      says.push(
        verdict === 'over' ? `Above the limit, do not use: ${judged}` : `Below what is required: ${judged}`,
      );
  if (scale && !scale.enough)
    says.push(
      `The dose is ${scale.divisions} steps of this scale: fewer than ${leastScaleDivisions} do not weigh well.`,
    );
  return says;
}

function outcomeOf(judgements: readonly Judgement[], scale: ScaleAnswer | null): CureAnswer['outcome'] {
  const has = (verdict: Judgement['verdict']): boolean =>
    judgements.some((entry) => entry.verdict === verdict);
  if (has('over')) return 'refused';
  const decided = judgements.some(
    ({ of, verdict }) => (of === 'nitrite' || of === 'nitrite-and-nitrate') && verdict !== 'measure',
  );
  return has('under') || !decided || scale?.enough === false ? 'flagged' : 'within';
}

function cautionsFor(entry: CureEntry, scale: ScaleAnswer | null): readonly Caution[] {
  const shown = [cautions.cureResult, cautions.cureWeigh, cautions.cureProduct, cautions.cureAuthority];
  if (entry.method === 'short-soak' || entry.method === 'long-soak') shown.push(cautions.cureSoak);
  if (scale && !scale.enough) shown.push(cautions.cureSmallBatch);
  return shown;
}

function answer(entry: CureEntry, base: CureBase, cure: Ratio): CureAnswer {
  const whole = baseWith(base, cure);
  const goingIn: Ingoing = {
    nitrite: ingoing(base, cure, entry.bag.nitrite),
    nitriteAs: entry.bag.nitriteAs,
    nitrate: ingoing(base, cure, entry.bag.nitrate),
    nitrateAs: entry.bag.nitrateAs,
    ascorbate: entry.ascorbate && dividedBy(entry.ascorbate, whole),
    residual: entry.residual,
  };
  const judgements = entry.limits.map((limit) => judge(limit, goingIn));
  const scale = onScale(entry, base, cure);
  const outcome = outcomeOf(judgements, scale);
  const withheld = outcome === 'refused' && entry.target !== null;
  const says = remarks(entry, judgements, scale);
  const most = mostCure(entry, base);
  return {
    outcome,
    jurisdiction: entry.jurisdiction.id,
    product: entry.product.id,
    method: entry.method,
    cureMg: withheld ? null : roundHalfUp(cure),
    mostCureMg: most && roundHalfUp(most),
    nitritePpb: toPpb(goingIn.nitrite),
    nitriteAs: entry.bag.nitriteAs,
    nitriteIonPpb: toPpb(convert(goingIn.nitrite, entry.bag.nitriteAs, 'nitrite-ion')),
    nitratePpb: toPpb(goingIn.nitrate),
    baseMg: roundHalfUp(whole),
    add: withheld ? null : toAdd(entry, base, cure, says),
    needs: ascorbateNeeded(entry, base, cure),
    scale,
    judgements,
    says,
    cautions: cautionsFor(entry, scale),
  };
}

/**
 * What a cure comes to, or the cure that a level takes, in exact arithmetic, judged by every limit of its class.
 * @returns an answer, or what is wrong with the entry, field by field
 */
export function reckonCure(
  request: CureRequest,
  rules: CureRules = usualCureRules,
): CureAnswer | { readonly faults: readonly KitchenFault[] } {
  const read = readCure(request, rules);
  if ('faults' in read) return read;
  const { entry } = read;
  const base = cureBase(entry.method, entry.counted, entry.meat, entry.pickle, entry.uptake);
  if (entry.cure) return answer(entry, base, entry.cure);
  const level = convert(entry.target ?? zero, entry.targetAs, entry.bag.nitriteAs);
  const cure = cureFor(base, level, entry.bag.nitrite);
  const room = entry.pickle?.holdsCure ? entry.pickle.weight : null;
  if (!cure || (room && compareRatios(cure, room) >= 0)) {
    const says = `can't be reached with a cure of this strength: ${ppmText(level)} takes more than the pickle holds`;
    return { faults: [{ at: 'target', value: request.target, says }] };
  }
  return answer(entry, base, cure);
}
