import { signal } from '@preact/signals';

export const languages = ['english', 'spanish'] as const;
export type Language = (typeof languages)[number];

/** A catalogue of a page: the same words in every language, so that a missing one does not compile. */
export type Catalogue<Words> = Readonly<Record<Language, Words>>;

/** Tags of BCP 47, for dates, money and screen readers. */
export const languageTags = { english: 'en', spanish: 'es' } as const satisfies Record<Language, string>;

/** Each language by its own name. */
export const languageNames = { english: 'English', spanish: 'Español' } as const satisfies Record<
  Language,
  string
>;

const keptAs = 'flitchbook.language';

/** Storage may be forbidden or full: then nothing is kept, and nothing else happens. */
export function kept(key: string): string | null {
  try {
    return globalThis.localStorage?.getItem(key) ?? null;
  } catch {
    return null;
  }
}

export function keep(key: string, value: string | null): void {
  try {
    if (value === null) globalThis.localStorage?.removeItem(key);
    else globalThis.localStorage?.setItem(key, value);
  } catch {
    // Nothing is kept then.
  }
}

/** The language that was picked before, else the first that the browser asks for and we have. */
export function languageMeant(picked: string | null, asked: readonly string[]): Language {
  const before = languages.find((language) => language === picked);
  if (before) return before;
  for (const tag of asked) {
    const found = languages.find((language) => tag.toLowerCase().split('-')[0] === languageTags[language]);
    if (found) return found;
  }
  return 'english';
}

export const language = signal<Language>(languageMeant(kept(keptAs), globalThis.navigator?.languages ?? []));

export function pickLanguage(picked: Language): void {
  language.value = picked;
  keep(keptAs, picked);
}

/** The words of a catalogue in the language of the moment. Read while drawing, a page follows a change. */
export const said = <Words>(catalogue: Catalogue<Words>): Words => catalogue[language.value];
