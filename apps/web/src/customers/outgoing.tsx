import type { Problem } from '../wire/client.ts';
import { said } from '../words/customers/language.ts';
import { orderWords } from '../words/customers/order-words.ts';
import type { Outbox } from './outbox.ts';

/** A refusal of the service in the customer's own words. */
export function refusalSaid({ type }: Problem): string {
  const words = said(orderWords);
  switch (type.slice(type.lastIndexOf('/') + 1)) {
    case 'plan.undecided':
      return words.undecided;
    case 'day.closed':
    case 'day.closed-to-customers':
      return words.closed;
    case 'reservation.not-yours-to-hold':
      return words.most;
    case 'reservation.not-possible':
      return words.no;
    case 'order.invalid':
    case 'request.invalid':
      return words.wrong;
    case 'session.required':
      return words.signIn;
    default:
      return words.busy;
  }
}

/** What was tapped and has no answer yet: sent again as it is, or let go. */
export function Unsent({ outbox, personId }: { readonly outbox: Outbox; readonly personId: string }) {
  const words = said(orderWords);
  return (
    <div class="unsent">
      <p class="fault">{words.unsent}</p>
      <button type="button" class="strong" onClick={() => void outbox.sendKept(personId)}>
        {words.sendAgain}
      </button>
      <button type="button" onClick={outbox.forget}>
        {words.forget}
      </button>
    </div>
  );
}
