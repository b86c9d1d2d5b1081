import type { Cut, Portion, Species } from '@flitchbook/carcass';
import type { Instructions } from '@flitchbook/plan';

/** One question of a cutting-instruction sheet. The answer '' leaves it to the shop's usual way. */
export interface Question {
  readonly about: 'operations' | 'manners' | 'portions';
  readonly id: string;
  readonly name: string;
  readonly answers: readonly { readonly id: string; readonly name: string; readonly portion?: Portion }[];
}

const quarterInchesUm = [19_050, 25_400, 31_750, 38_100] as const;

type SayPortion = (portion: Portion) => string;

/** Ways a stretch can be portioned, out of the limits of the cuts that come from it. */
function portionsOfStock(cuts: readonly Cut[], say: SayPortion): Question['answers'] {
  const answers = new Map<string, { id: string; name: string; portion: Portion }>();
  const offer = (cut: Cut, portion: Portion): void => {
    const id = JSON.stringify(portion);
    if (!answers.has(id)) answers.set(id, { id, name: `${cut.name}, ${say(portion)}`, portion });
  };
  for (const cut of cuts) {
    for (const rule of cut.portions) {
      if (rule.by === 'thickness') {
        for (const um of quarterInchesUm)
          if (um >= rule.minUm && um <= rule.maxUm) offer(cut, { by: 'thickness', um });
      } else if (rule.by === cut.usual.by && (rule.by === 'weight' || rule.by === 'ribs'))
        offer(cut, cut.usual);
    }
  }
  return [...answers.values()];
}

/**
 * The questions that follow from what was answered so far: a part is asked about once the answer above leads to it,
 * a stretch once its manner is settled.
 */
export function questionsOf(species: Species, given: Instructions, say: SayPortion): Question[] {
  const questions: Question[] = [];
  const asked = new Set<string>();
  const cutsFrom = (stock: string): Cut[] =>
    Object.values(species.cuts).filter((cut) =>
      cut.sources.some(({ from, id }) => from === 'stock' && id === stock),
    );
  const askPortion = (stock: string): void => {
    if (asked.has(stock)) return;
    asked.add(stock);
    const answers = portionsOfStock(cutsFrom(stock), say);
    const name = species.stocks[stock]?.name ?? stock;
    if (answers.length > 0) questions.push({ about: 'portions', id: stock, name, answers });
  };
  const visit = (partId: string): void => {
    const part = species.parts[partId];
    if (!part) return;
    if (part.kind === 'bar') {
      for (const { id, name, manners } of part.zones) {
        if (manners.length > 1) questions.push({ about: 'manners', id, name, answers: manners });
        const chosen =
          manners.length === 1 ? manners[0] : manners.find((manner) => manner.id === given.manners[id]);
        if (chosen) askPortion(chosen.stock);
      }
      return;
    }
    const { id, name, operations } = part;
    const usual = operations.filter(({ onRequest }) => !onRequest);
    if (usual.length > 1) questions.push({ about: 'operations', id, name, answers: operations });
    const chosen =
      usual.length === 1 ? usual[0] : operations.find(({ id: each }) => each === given.operations[id]);
    for (const output of chosen?.outputs ?? []) if (output.to === 'part') visit(output.id);
  };
  visit(species.sideRoot);
  return questions;
}

/** What a question is answered with now: '' for the shop's usual way. */
export function answerOf(given: Instructions, { about, id }: Question): string {
  if (about === 'portions') {
    const portion = given.portions[id];
    return portion ? JSON.stringify(portion) : '';
  }
  return given[about][id] ?? '';
}

const without = <T>(record: Readonly<Record<string, T>>, id: string): Record<string, T> =>
  Object.fromEntries(Object.entries(record).filter(([key]) => key !== id));

/** The instructions with one answer changed; answers to questions that no longer arise are dropped. */
export function answer(
  species: Species,
  given: Instructions,
  question: Question,
  answerId: string,
  say: SayPortion,
): Instructions {
  const { about, id } = question;
  const chosen = question.answers.find((candidate) => candidate.id === answerId);
  const value = about === 'portions' ? chosen?.portion : chosen?.id;
  const cleared = without<unknown>(given[about], id);
  const next = {
    ...given,
    [about]: value === undefined ? cleared : { ...cleared, [id]: value },
  } as Instructions;
  const stillAsked = questionsOf(species, next, say);
  const keep = <T>(record: Readonly<Record<string, T>>, kind: Question['about']): Record<string, T> =>
    Object.fromEntries(
      Object.entries(record).filter(([key]) =>
        stillAsked.some((each) => each.about === kind && each.id === key),
      ),
    );
  return {
    operations: keep(next.operations, 'operations'),
    manners: keep(next.manners, 'manners'),
    portions: keep(next.portions, 'portions'),
  };
}

export const noInstructions: Instructions = { operations: {}, manners: {}, portions: {} };
