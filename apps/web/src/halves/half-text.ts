import type { HalfLine, Portion, QuestionShown, Species } from '@flitchbook/carcass';
import { answerNames, primalNames, questionNames, thingNames } from '../words/customers/half-names.ts';
import { halfWords } from '../words/customers/half-words.ts';
import { said } from '../words/customers/language.ts';
import { lengthText, type Units, weightText } from '../words/measures.ts';

const named = (names: Readonly<Record<string, string>>, id: string, otherwise: string): string =>
  names[id] ?? otherwise;

/** What texts are made with: names where a language has none of its own, and the shop's units. */
export interface Speech {
  readonly species: Species;
  readonly units: Units;
}

export const thingName = (id: string, otherwise: string): string => named(said(thingNames), id, otherwise);

/** A primal as a step on the way. */
export const primalName = (part: string, otherwise: string): string =>
  named(said(primalNames), part, otherwise);

export const questionName = ({ about, id, name }: Pick<QuestionShown, 'about' | 'id' | 'name'>): string =>
  about === 'portions' ? thingName(id, name) : named(said(questionNames), id, name);

/** From and to in one text; one figure where both read the same. */
export function rangeText(low: number, high: number, say: (value: number) => string): string {
  const [from, to] = [say(low), say(high)];
  return from === to ? from : `${from} ${said(halfWords).counts.to} ${to}`;
}

const stepMg = { lb: 45_359.237, kg: 50_000 } as const;

/** An estimate, to a tenth of a pound or 50 g; what is lighter than half a pound to the ounce. */
const aboutText = (mg: number, units: Units): string => {
  const step = stepMg[units.weightUnit];
  return weightText(mg < 5 * step ? mg : Math.round(mg / step) * step, units);
};

/** "3.5 to 4.6 lb": the unit once where both have it. */
export function weightRange(lowMg: number, highMg: number, units: Units): string {
  const [from, to] = [lowMg, highMg].map((mg) => aboutText(mg, units).split('\u00a0')) as [
    string[],
    string[],
  ];
  const low = from[1] === to[1] ? [from[0]] : from;
  return rangeText(lowMg, highMg, (mg) => (mg === lowMg && lowMg !== highMg ? low : to).join('\u00a0'));
}

export const numberRange = ({ low, high }: { readonly low: number; readonly high: number }): string =>
  rangeText(low, high, String);

function portionSaid(portion: Portion | undefined, units: Units): string {
  if (portion?.by === 'thickness') return lengthText(portion.um, units);
  if (portion?.by === 'ribs') return said(halfWords).ribs(portion.ribs);
  if (portion?.by === 'weight') return weightRange(portion.fromGrams * 1000, portion.toGrams * 1000, units);
  return '';
}

type Answer = QuestionShown['answers'][number];

export function answerName(question: QuestionShown, answer: Answer, units: Units): string {
  if (question.about !== 'portions') return named(said(answerNames), answer.id, answer.name);
  if (answer.cut === undefined) return said(halfWords).leftWhole;
  return `${thingName(answer.cut, answer.name)}, ${portionSaid(answer.portion, units)}`;
}

const cutName = (cut: string, { cuts }: Species): string => thingName(cut, cuts[cut]?.name ?? cut);

/** "10 to 12 × Bone-in rib chop, 1 in" or "Back ribs, 1.4 to 1.9 lb". */
export function lineText(line: HalfLine, { species, units }: Speech): string {
  const weight = weightRange(line.lowMg, line.highMg, units);
  if (!line.pieces || line.cut === undefined) return `${thingName(line.id, line.name)}, ${weight}`;
  const size = line.portion?.by === 'weight' ? '' : `, ${portionSaid(line.portion, units)}`;
  return `${numberRange(line.pieces)} × ${cutName(line.cut, species)}${size} (${weight})`;
}

/** Whole pieces and stretches first, loose meat after them, each as one text. */
export const solid = (lines: readonly HalfLine[]): readonly HalfLine[] =>
  lines.filter(({ kind, highMg }) => kind !== 'bulk' && highMg > 0);

const namesShown = 4;

/** A list of cuts, the first few by name. */
export function cutList(cuts: readonly string[], { species }: Speech): string {
  const first = cuts.slice(0, namesShown).map((cut) => cutName(cut, species));
  const more = cuts.length - first.length;
  return [first.join(', '), ...(more > 0 ? [said(halfWords).andMore(more)] : [])].join(' ');
}
