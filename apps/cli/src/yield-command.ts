import {
  asPublished,
  believedSpecies,
  checkKnown,
  type FarmFigures,
  type KnownCarcass,
  type Learned,
  learnYields,
  predictYields,
  shapeSide,
  takeHome,
  type YieldModel,
} from '@flitchbook/carcass';
import { parseMeasuredFile } from '@flitchbook/contracts';
import { readUnit } from './audit-command.ts';
import { exitStatus, faultText, type Surroundings } from './surroundings.ts';
import { readYieldRequest, type YieldRequest } from './yield-request.ts';
import { beliefText, type YieldAnswer, yieldText } from './yield-text.ts';

/** Which option says what the check speaks of. */
const optionOf: Readonly<Record<string, string>> = {
  liveGrams: '--live',
  hotGrams: '--hot',
  coldGrams: '--cold',
  lastRibFatMm: '--fat',
  leanPercent: '--lean',
  ribs: '--ribs',
};
const placeOf = (at: string): string =>
  at.startsWith('dressing.') ? `--on or --off: ${at.slice('dressing.'.length)}` : (optionOf[at] ?? at);

/** What the measured sides of a file teach; undefined, and complained of, when the file is bad. */
function learnFrom(name: string, model: YieldModel, around: Surroundings): Learned | undefined {
  const parsed = parseMeasuredFile(around.readFile(name));
  if ('faults' in parsed) {
    for (const fault of parsed.faults) around.complain(faultText(name, fault));
    return undefined;
  }
  if (parsed.species !== model.species.id) {
    around.complain(`${name}: species: the sides are of a ${parsed.species}, not of a ${model.species.id}`);
    return undefined;
  }
  const learned = learnYields(model.breakdown, model.yields, parsed.sides);
  for (const { sideId, faults } of learned.refused)
    for (const fault of faults) around.complain(faultText(`${name}: side ${sideId} teaches nothing`, fault));
  return learned;
}

function figuresFor({ shop, farms }: Learned, farm: string | undefined): FarmFigures {
  return farms.find((entry) => entry.farm === farm) ?? { ...shop, farm: null };
}

function answer(request: YieldRequest, known: KnownCarcass, figures: FarmFigures | null): YieldAnswer {
  const { model, values, sides, confidence } = request;
  const belief = figures?.belief ?? asPublished;
  const prediction = predictYields(model.breakdown, model.yields, known, belief);
  const styles = model.takeHome.styles.filter(({ id }) => values.style === undefined || id === values.style);
  if (styles.length === 0) {
    const names = model.takeHome.styles.map(({ id }) => id);
    throw new RangeError(`--style: no style called "${values.style}". Known: ${names.join(', ')}`);
  }
  const facts = model.yields.dressing.flatMap(({ id, fact }) => (fact && known.dressing[id] ? [fact] : []));
  const shape = shapeSide(believedSpecies(model.breakdown, prediction.shares, belief), {
    sideId: 'side',
    animalId: 'animal',
    hand: 'left',
    massMg: Math.round(prediction.sideMg.mean),
    carcassGrams: Math.round(prediction.sideMg.mean / 500),
    ribs: known.ribs ?? model.species.ribs.usual,
    facts,
    lostParts: [],
  });
  const homes = styles.map((style) => takeHome(model, prediction, style, sides, { confidence }));
  return { model, prediction, shape, homes, confidence, sides };
}

/** Says what an animal gives, from what is known of it. */
export function yieldCommand(args: readonly string[], around: Surroundings): number {
  const request = readYieldRequest(args);
  const { model, known, values } = request;
  const { faults, warnings } = checkKnown(model.species, model.yields, known);
  for (const { at, value, says } of faults)
    around.complain(faultText(placeOf(at), { at: 'refused', value, says }));
  if (faults.length > 0) return exitStatus.badInput;
  for (const { at, value, says } of warnings)
    around.complain(faultText(placeOf(at), { at: 'note', value, says }));
  const learned = values.measured === undefined ? null : learnFrom(values.measured, model, around);
  if (learned === undefined) return exitStatus.badInput;
  const figures = learned && figuresFor(learned, values.farm);
  const answered = answer(request, known, figures);
  const shown = readUnit(values.unit);
  if (values.json) {
    const { prediction, homes } = answered;
    const { chain, sideMg, partMg, outputMg, barUm, ribs } = prediction;
    around.print(
      JSON.stringify({
        chain,
        sideMg,
        partMg: Object.fromEntries(partMg),
        outputMg: Object.fromEntries(outputMg),
        barUm: Object.fromEntries(barUm),
        ribs,
        takeHome: homes,
        figures,
      }),
    );
    return exitStatus.fine;
  }
  around.print(yieldText(answered, shown));
  if (figures) around.print(beliefText(figures));
  return exitStatus.fine;
}
