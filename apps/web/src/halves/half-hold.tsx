import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { Link } from '../shell/link.tsx';
import { yours } from '../shell/route.ts';
import type { Session } from '../wire/client.ts';
import { halfWords } from '../words/customers/half-words.ts';
import { language, languageTags, said } from '../words/customers/language.ts';
import type { HalfOrder } from './half-order.ts';

interface HoldProps {
  readonly placed: HalfOrder;
  readonly who: Session;
  readonly nowMs: () => number;
}

/** "12:05" */
const clockText = (seconds: number): string =>
  `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;

function Countdown({ heldUntil, nowMs }: { readonly heldUntil: string; readonly nowMs: () => number }) {
  const words = said(halfWords).hold;
  const left = useSignal(0);
  useEffect(() => {
    const count = (): void => {
      left.value = Math.max(0, Math.round((Date.parse(heldUntil) - nowMs()) / 1000));
    };
    count();
    const timer = setInterval(count, 1000);
    return () => clearInterval(timer);
  }, [heldUntil]);
  return <span class="soft">{left.value > 0 ? words.left(clockText(left.value)) : words.over}</span>;
}

/** Holds what was chosen, then makes it lasting. */
export function HalfHold({ placed, who, nowMs }: HoldProps) {
  const words = said(halfWords).hold;
  const order = placed.order.value;
  const sending = placed.sending.value;
  const isGoing = sending === 'going';
  const until = order?.heldUntil ?? null;
  const time = new Intl.DateTimeFormat(languageTags[language.value], {
    timeZone: who.shop.timeZone,
    timeStyle: 'short',
  });
  return (
    <section class="hold-bar" aria-live="polite">
      {order === null && (
        <button
          type="button"
          class="main"
          disabled={isGoing}
          onClick={() => void placed.hold(who.person.name)}
        >
          {isGoing ? words.going : words.go}
        </button>
      )}
      {order?.state === 'held' && until !== null && (
        <>
          <p class="told">
            {words.held(order.number, time.format(new Date(until)))}{' '}
            <Countdown heldUntil={until} nowMs={nowMs} />
          </p>
          <button type="button" class="main" disabled={isGoing} onClick={() => void placed.reserve()}>
            {isGoing ? words.going : words.reserve}
          </button>
        </>
      )}
      {order?.state === 'standing' && (
        <>
          <p class="rubber">{words.reserved(order.number)}</p>
          <p>{words.mailed}</p>
          <Link to={yours.orders}>{words.orders}</Link>
        </>
      )}
      {sending === 'no-network' && <p class="caution">{words.noNetwork}</p>}
      {typeof sending === 'object' && <p class="caution">{sending.problem.detail}</p>}
    </section>
  );
}
