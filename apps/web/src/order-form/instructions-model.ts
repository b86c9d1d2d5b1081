import { type Portion, portionKey, portionOffers, type Species } from '@flitchbook/carcass';
import type { Instructions } from '@flitchbook/plan';

/** One question of a cutting-instruction sheet. The answer '' leaves it to the shop's usual way. */
export interface Question {
  readonly about: 'operations' | 'manners' | 'portions';
  readonly id: string;
  readonly name: string;
  readonly answers: readonly { readonly id: string; readonly name: string; readonly portion?: Portion }[];
}

type SayPortion = (portion: Portion) => string;

const portionsOfStock = (species: Species, stock: string, say: SayPortion): Question['answers'] =>
  [...portionOffers(species, stock)].map(([id, { cut, portion }]) => ({
    id,
    name: `${cut.name}, ${say(portion)}`,
    portion,
  }));

/**
 * The questions that follow from what was answered so far: a part is asked about once the answer above leads to it,
 * a stretch once its manner is settled.
 */
export function questionsOf(species: Species, given: Instructions, say: SayPortion): Question[] {
  const questions: Question[] = [];
  const asked = new Set<string>();
  const askPortion = (stock: string): void => {
    if (asked.has(stock)) return;
    asked.add(stock);
    const answers = portionsOfStock(species, stock, say);
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
    return portion ? portionKey(portion) : '';
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
