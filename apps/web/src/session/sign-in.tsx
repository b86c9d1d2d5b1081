import { useSignal } from '@preact/signals';
import type { TargetedSubmitEvent } from 'preact';
import { useEffect } from 'preact/hooks';
import { StencilWord } from '../marks/stencil-word.tsx';
import type { DemoSignIn } from '../wire/client.ts';
import { words } from '../words/english.ts';
import type { SessionStore } from './session-store.ts';

interface SignInProps {
  readonly store: SessionStore;
  readonly demo: readonly DemoSignIn[];
}

function DemoPeople({ store, demo }: SignInProps) {
  if (demo.length === 0) return null;
  return (
    <section class="demo" aria-labelledby="demo-title">
      <h2 id="demo-title">{words.signIn.demoTitle}</h2>
      <p>{words.signIn.demoSays}</p>
      <ul>
        {demo.map(({ name, role, email, password }) => (
          <li key={email}>
            <button
              type="button"
              disabled={store.isGoing.value}
              onClick={() => void store.signIn(email, password, words.failures.noNetwork)}
            >
              {words.signIn.demoAs(name, words.roles[role])}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** The door of the shop. */
export function SignIn({ store, demo }: SignInProps) {
  const email = useSignal('');
  const password = useSignal('');
  useEffect(() => {
    document.title = words.signInTitle;
  }, []);
  const onSubmit = (event: TargetedSubmitEvent<HTMLFormElement>): void => {
    event.preventDefault();
    void store.signIn(email.value, password.value, words.failures.noNetwork);
  };
  return (
    <main class="door">
      <div class="door-sign">
        <h1>
          <span class="visually-hidden">{words.product}</span>
          <StencilWord text="FLITCHBOOK" height={34} />
        </h1>
        <p>{words.signIn.promise}</p>
      </div>
      <form class="door-form" onSubmit={onSubmit}>
        <h2>{words.signIn.title}</h2>
        <label>
          <span>{words.signIn.email}</span>
          <input
            type="email"
            name="email"
            autocomplete="username"
            required
            value={email}
            onInput={(event) => {
              email.value = event.currentTarget.value;
            }}
          />
        </label>
        <label>
          <span>{words.signIn.password}</span>
          <input
            type="password"
            name="password"
            autocomplete="current-password"
            required
            value={password}
            onInput={(event) => {
              password.value = event.currentTarget.value;
            }}
          />
        </label>
        <div role="alert">{store.refusal.value !== null && <p class="fault">{store.refusal.value}</p>}</div>
        <button type="submit" class="strong" disabled={store.isGoing.value}>
          {store.isGoing.value ? words.signIn.going : words.signIn.go}
        </button>
      </form>
      <DemoPeople store={store} demo={demo} />
    </main>
  );
}
