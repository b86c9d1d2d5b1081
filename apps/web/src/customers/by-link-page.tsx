import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { goInstead, yours } from '../shell/route.ts';
import { Failure, Waiting } from '../shell/states.tsx';
import { frameWords } from '../words/customers/frame-words.ts';
import { keep, kept, said } from '../words/customers/language.ts';
import type { CustomersPageProps } from './page-props.ts';
import { backToAs, MailForm } from './way-in-page.tsx';

/** Signs in with the link of a mail, then forgets it: the way back does not lead to it again. */
export function ByLinkPage({ client, session, token }: CustomersPageProps & { readonly token: string }) {
  const words = said(frameWords);
  const came = useSignal<'going' | 'void' | 'no-network'>('going');
  const enter = async (): Promise<void> => {
    came.value = 'going';
    const answer = await client.enterByLink(token);
    if (!answer.ok) {
      came.value = answer.why === 'refused' ? 'void' : 'no-network';
      return;
    }
    const back = kept(backToAs);
    keep(backToAs, null);
    // Only pages of customers: nothing that was kept by another hand.
    goInstead(back?.startsWith(`${yours.coming}/days/`) ? back : yours.orders);
    await session.look();
  };
  useEffect(() => {
    document.title = words.byLink.title;
    void enter();
  }, []);
  switch (came.value) {
    case 'going':
      return <Waiting says={words.byLink.going} />;
    case 'no-network':
      return (
        <Failure
          title={words.noNetworkTitle}
          says={words.noNetwork}
          action={words.tryAgain}
          onAction={() => void enter()}
        />
      );
    case 'void':
      return (
        <>
          <Failure title={words.byLink.voidTitle} says={words.byLink.voidSays} />
          <MailForm client={client} />
        </>
      );
  }
}
