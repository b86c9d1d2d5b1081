import { spanishHogNames } from '@flitchbook/carcass';
import type { OfferedCut } from '../wire/customers-client.ts';
import { spanishSays } from '../words/customers/cut-says.ts';
import { type Dish, dishes } from '../words/customers/dishes.ts';
import type { Language } from '../words/customers/language.ts';

const spanishCuts = spanishHogNames.things;

type Named = Pick<OfferedCut, 'speciesId' | 'cut' | 'name' | 'says'>;

/** The cut in the reader's language; where there is no other word for it, by its name of the trade. */
export const cutName = ({ speciesId, cut, name }: Omit<Named, 'says'>, language: Language): string =>
  (language === 'spanish' && speciesId === 'hog' && spanishCuts[cut]) || name;

export function cutSays({ speciesId, cut, says }: Named, language: Language): string {
  if (language === 'english') return says;
  return (speciesId === 'hog' && spanishSays[cut]) || '';
}

export const dishesOf = ({ cut }: Pick<Named, 'cut'>): readonly Dish[] =>
  dishes.filter(({ cuts }) => cuts.includes(cut));

/** Letters without their accents, in small. */
const plain = (text: string): string => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();

/**
 * Cuts that answer to all words of a search: by name and description in either language, or by a dish they suit. A word
 * answers when it begins one of theirs, so that "braise" and "braising" both do.
 */
export function findCuts<T extends Named>(offers: readonly T[], search: string): readonly T[] {
  const wanted = plain(search)
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '');
  if (wanted.length === 0) return offers;
  return offers.filter((offer) => {
    const spoken = [offer.name, offer.says, spanishCuts[offer.cut] ?? '', spanishSays[offer.cut] ?? ''];
    const dishWords = dishesOf(offer).flatMap(({ words }) => [...words.english, ...words.spanish]);
    const theirs = plain([...spoken, ...dishWords].join(' ')).split(/[^\p{L}\p{N}]+/u);
    const stem = (word: string): string => (word.length > 5 ? word.replace(/(ing|ed|es|s|e)$/, '') : word);
    return wanted.every((word) => theirs.some((each) => each.startsWith(stem(word))));
  });
}
