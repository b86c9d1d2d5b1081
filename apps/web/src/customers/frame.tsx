import type { ComponentChildren } from 'preact';
import { StencilWord } from '../marks/stencil-word.tsx';
import type { SessionStore } from '../session/session-store.ts';
import { Link } from '../shell/link.tsx';
import { path, yours } from '../shell/route.ts';
import type { Session } from '../wire/client.ts';
import { frameWords } from '../words/customers/frame-words.ts';
import {
  language,
  languageNames,
  languages,
  languageTags,
  pickLanguage,
  said,
} from '../words/customers/language.ts';

function LanguageKeys() {
  const words = said(frameWords);
  return (
    <fieldset class="language-keys">
      <legend class="visually-hidden">{words.language}</legend>
      {languages.map((each) => (
        <button
          key={each}
          type="button"
          lang={languageTags[each]}
          aria-pressed={language.value === each}
          onClick={() => pickLanguage(each)}
        >
          {languageNames[each]}
        </button>
      ))}
    </fieldset>
  );
}

interface PageLinkProps {
  readonly to: string;
  readonly says: string;
}

function PageLink({ to, says }: PageLinkProps) {
  const isHere = path.value === to;
  return (
    <li class={isHere ? 'here' : ''}>
      <Link to={to} isHere={isHere}>
        {says}
      </Link>
    </li>
  );
}

interface FrameProps {
  readonly who: Session | null;
  readonly session: SessionStore;
  readonly children: ComponentChildren;
}

/** What stands round every page for customers: whose shop it is, where else to go, the language. */
export function Frame({ who, session, children }: FrameProps) {
  const words = said(frameWords);
  return (
    <div class="front">
      <header class="shop-front">
        <a class="skip" href="#content">
          {words.skip}
        </a>
        <Link class="brand" to={yours.coming}>
          <span class="visually-hidden">Flitchbook</span>
          <StencilWord text="FLITCHBOOK" height={18} />
        </Link>
        {who && <p class="shop-name">{who.shop.name}</p>}
        <LanguageKeys />
        {who && (
          <p class="person">
            {/* A name may run from right to left beside words that do not. */}
            <bdi>{who.person.name}</bdi>
          </p>
        )}
        {who && (
          <button type="button" class="sign-out" onClick={() => void session.signOut()}>
            {words.signOut}
          </button>
        )}
      </header>
      <nav class="front-pages" aria-label={words.pages}>
        <ul>
          <PageLink to={yours.coming} says={words.coming} />
          <PageLink to={yours.orders} says={words.orders} />
          {!who && <PageLink to={yours.wayIn} says={words.wayIn} />}
        </ul>
      </nav>
      <main id="content" class="front-page" tabIndex={-1}>
        {children}
      </main>
    </div>
  );
}
