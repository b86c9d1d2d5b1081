import { useSignal } from '@preact/signals';
import type { TargetedSubmitEvent } from 'preact';
import { useEffect } from 'preact/hooks';
import { goInstead, path, yours } from '../shell/route.ts';
import type { CustomersClient } from '../wire/customers-client.ts';
import { frameWords } from '../words/customers/frame-words.ts';
import { keep, said } from '../words/customers/language.ts';
import { FormField } from './form-field.tsx';
import type { CustomersPageProps } from './page-props.ts';

/** Where the link of the mail leads back to, on this device. */
export const backToAs = 'flitchbook.back-to';

const looksLikeAddress = (text: string): boolean => /^[^\s@]+@[^\s@]+\.[^\s@]+$/.test(text.trim());

/** Asks for a link by mail. The answer is the same for every address. */
export function MailForm({ client }: { readonly client: CustomersClient }) {
  const words = said(frameWords);
  const name = useSignal('');
  const email = useSignal('');
  const tried = useSignal(false);
  const says = useSignal<{ readonly good: boolean; readonly text: string } | null>(null);
  const isGoing = useSignal(false);
  const onSubmit = async (event: TargetedSubmitEvent<HTMLFormElement>): Promise<void> => {
    event.preventDefault();
    tried.value = true;
    if (isGoing.value || name.value.trim() === '' || !looksLikeAddress(email.value)) return;
    isGoing.value = true;
    const answer = await client.sendWayIn(email.value.trim(), name.value.trim().slice(0, 200));
    isGoing.value = false;
    if (answer.ok) {
      says.value = { good: true, text: words.door.sent };
      keep(backToAs, path.value);
    }
    if (answer.ok) return;
    if (answer.why !== 'refused') says.value = { good: false, text: words.noNetwork };
    else if (answer.problem.status === 429) says.value = { good: false, text: words.door.tooMany };
    else says.value = { good: false, text: words.door.needEmail };
  };
  return (
    <form class="paper-form" noValidate={true} onSubmit={(event) => void onSubmit(event)}>
      <h2>{words.door.mailTitle}</h2>
      <p>{words.door.mailSays}</p>
      <FormField
        id="mail-name"
        label={words.door.name}
        value={name}
        autocomplete="name"
        fault={tried.value && name.value.trim() === '' ? words.door.needName : undefined}
      />
      <FormField
        id="mail-address"
        label={words.door.email}
        value={email}
        type="email"
        autocomplete="email"
        fault={tried.value && !looksLikeAddress(email.value) ? words.door.needEmail : undefined}
      />
      <div role="status">
        {says.value && <p class={says.value.good ? 'told' : 'fault'}>{says.value.text}</p>}
      </div>
      <button type="submit" class="strong" disabled={isGoing.value}>
        {isGoing.value ? words.door.sending : words.door.send}
      </button>
    </form>
  );
}

function PasswordForm({ session }: Pick<CustomersPageProps, 'session'>) {
  const words = said(frameWords);
  const email = useSignal('');
  const password = useSignal('');
  const tried = useSignal(false);
  const onSubmit = (event: TargetedSubmitEvent<HTMLFormElement>): void => {
    event.preventDefault();
    tried.value = true;
    if (!looksLikeAddress(email.value) || password.value === '') return;
    void session.signIn(email.value.trim(), password.value, words.noNetwork);
  };
  return (
    <form class="paper-form" noValidate={true} onSubmit={onSubmit}>
      <h2>{words.door.passwordTitle}</h2>
      <FormField
        id="sign-in-address"
        label={words.door.email}
        value={email}
        type="email"
        autocomplete="username"
        fault={tried.value && !looksLikeAddress(email.value) ? words.door.needEmail : undefined}
      />
      <FormField
        id="sign-in-password"
        label={words.door.password}
        value={password}
        type="password"
        autocomplete="current-password"
        fault={tried.value && password.value === '' ? words.door.needPassword : undefined}
      />
      <div role="alert">
        {session.refusal.value !== null && (
          <p class="fault">
            {session.refusal.value === words.noNetwork ? words.noNetwork : words.door.wrong}
          </p>
        )}
      </div>
      <button type="submit" class="strong" disabled={session.isGoing.value}>
        {session.isGoing.value ? words.door.going : words.door.go}
      </button>
    </form>
  );
}

function DemoCustomers({ session }: Pick<CustomersPageProps, 'session'>) {
  const words = said(frameWords);
  const state = session.state.value;
  const customers = state.at === 'out' ? state.demo.filter(({ role }) => role === 'customer') : [];
  if (customers.length === 0) return null;
  return (
    <section class="demo" aria-labelledby="demo-title">
      <h2 id="demo-title">{words.door.demoTitle}</h2>
      <p>{words.door.demoSays}</p>
      <ul>
        {customers.map(({ name, email, password }) => (
          <li key={email}>
            <button
              type="button"
              disabled={session.isGoing.value}
              onClick={() => void session.signIn(email, password, words.noNetwork)}
            >
              {words.door.demoAs(name)}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** What signs a customer in: a link by mail, or a password. Pages that need somebody show it in their place. */
export function WaysIn({ client, session }: Pick<CustomersPageProps, 'client' | 'session'>) {
  return (
    <div class="ways-in">
      <DemoCustomers session={session} />
      <MailForm client={client} />
      <PasswordForm session={session} />
    </div>
  );
}

export function WayInPage({ client, session, who }: CustomersPageProps) {
  const words = said(frameWords);
  useEffect(() => {
    document.title = words.door.title;
    if (who) goInstead(yours.orders);
  }, [who]);
  return (
    <>
      <h1>{words.door.title}</h1>
      <WaysIn client={client} session={session} />
    </>
  );
}
