import type { Cut, Portion, PortionRule, Species } from '@flitchbook/carcass';
import { show } from '../check-plan/plan-shape.ts';
import { DayNotes } from './day-faults.ts';
import { lengthSlip, weightSlip } from './slips.ts';

const mm = (um: number): string => `${um / 1000} mm`;

type RuleOf<By extends PortionRule['by']> = PortionRule & { readonly by: By };
const ruleFor = <By extends PortionRule['by']>(
  rules: readonly PortionRule[],
  by: By,
): RuleOf<By> | undefined => rules.find((rule): rule is RuleOf<By> => rule.by === by);

function checkThickness(
  notes: DayNotes,
  at: string,
  um: number,
  rule: RuleOf<'thickness'>,
  name: string,
): void {
  const fits = (value: number): boolean => value >= rule.minUm && value <= rule.maxUm;
  if (Number.isSafeInteger(um) && fits(um)) return;
  const says = `${name} is cut ${mm(rule.minUm)} to ${mm(rule.maxUm)} thick, in whole micrometres; got ${show(um)}.`;
  notes.error(`${at}.um`, um, says, lengthSlip(um, fits));
}

function checkWeight(
  notes: DayNotes,
  at: string,
  portion: Portion & { by: 'weight' },
  rule: RuleOf<'weight'>,
  name: string,
): void {
  const { fromGrams, toGrams } = portion;
  const fits = (value: number): boolean => value >= rule.minGrams && value <= rule.maxGrams;
  for (const [field, grams] of Object.entries({ fromGrams, toGrams })) {
    if (Number.isSafeInteger(grams) && fits(grams)) continue;
    const says = `A piece of ${name.toLowerCase()} weighs ${rule.minGrams} to ${rule.maxGrams} g, in whole grams; got ${show(grams)}.`;
    notes.error(`${at}.${field}`, grams, says, weightSlip(grams, fits));
  }
  if (fromGrams > toGrams)
    notes.error(
      `${at}.toGrams`,
      toGrams,
      `The range ends below its start of ${fromGrams} g.`,
      'the two were swapped.',
    );
}

/** A portion against the rules of one cut. */
export function checkPortion(
  notes: DayNotes,
  at: string,
  portion: Portion,
  cut: Pick<Cut, 'name' | 'portions'>,
): void {
  const rule = ruleFor(cut.portions, portion.by);
  if (!rule) {
    const ways = cut.portions.map(({ by }) => by).join(' or ');
    notes.error(`${at}.by`, portion.by, `${cut.name} is ordered by ${ways}, not by ${show(portion.by)}.`);
  } else if (rule.by === 'thickness' && portion.by === 'thickness')
    checkThickness(notes, at, portion.um, rule, cut.name);
  else if (rule.by === 'weight' && portion.by === 'weight') checkWeight(notes, at, portion, rule, cut.name);
  else if (rule.by === 'ribs' && portion.by === 'ribs')
    notes.whole(`${at}.ribs`, portion.ribs, rule.min, rule.max);
}

/** A portion against all cuts that a stock may become: it must be right for one of them. */
export function checkStockPortion(
  notes: DayNotes,
  at: string,
  portion: Portion,
  stock: string,
  species: Species,
): void {
  const cuts = Object.values(species.cuts).filter((cut) =>
    cut.sources.some((source) => source.from === 'stock' && source.id === stock),
  );
  const faults = cuts.map((cut) => {
    const own = new DayNotes();
    checkPortion(own, at, portion, cut);
    return own.faults;
  });
  if (faults.some((list) => list.length === 0)) return;
  const closest = faults.find((list) => list[0]?.at !== `${at}.by`) ?? faults[0];
  if (closest?.[0]) notes.error(closest[0].at, closest[0].value, closest[0].says);
  else notes.error(at, portion, `Nothing is portioned from ${stock}.`);
}
