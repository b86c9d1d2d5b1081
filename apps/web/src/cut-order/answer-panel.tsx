import { cutName } from '../coming/find-cuts.ts';
import type { Outbox } from '../customers/outbox.ts';
import { refusalSaid, Unsent } from '../customers/outgoing.tsx';
import { goInstead, yours } from '../shell/route.ts';
import type { Problem } from '../wire/client.ts';
import type { Coming, ComingDay, NewHold, OfferedCut, QuoteOnWire } from '../wire/customers-client.ts';
import {
  dateSaid,
  moneySaid,
  moneysSaid,
  portionSaid,
  weightSaid,
  weightsSaid,
} from '../words/customers/amounts.ts';
import { frameWords } from '../words/customers/frame-words.ts';
import { language, said } from '../words/customers/language.ts';
import { orderWords } from '../words/customers/order-words.ts';
import { gramsPerUnit, type Units } from '../words/measures.ts';
import { type Alternative, alternativesTo } from './alternatives.ts';
import type { CutStore } from './cut-store.ts';

export interface AnswerProps {
  readonly store: CutStore;
  readonly outbox: Outbox;
  readonly coming: Coming;
  readonly day: ComingDay;
  readonly offer: OfferedCut;
  readonly units: Units;
  readonly personId: string;
}

function Yes({
  quote,
  units,
  currency,
}: {
  readonly quote: QuoteOnWire;
  readonly units: Units;
  readonly currency: string;
}) {
  const words = said(orderWords);
  return (
    <>
      <p class="verdict yes">{words.yes}</p>
      {quote.how === 'planned-anew' && <p>{words.anew}</p>}
      <dl class="figures-said">
        <dt>{words.weighs}</dt>
        <dd>{weightsSaid({ from: quote.fromGrams, to: quote.toGrams }, units)}</dd>
        <dt>{words.costs}</dt>
        <dd>{moneysSaid({ from: quote.fromMinor, to: quote.toMinor }, currency)}</dd>
      </dl>
      <p class="hint">{words.costsSays}</p>
      {quote.depositMinor > 0 && <p>{words.deposit(moneySaid(quote.depositMinor, currency))}</p>}
    </>
  );
}

function AlternativeKey({
  alternative,
  store,
  units,
}: Pick<AnswerProps, 'store' | 'units'> & { readonly alternative: Alternative }) {
  const words = said(orderWords);
  if (alternative.kind === 'fewer') {
    const { possible, byWeight } = alternative;
    const inUnit = Math.floor((possible / gramsPerUnit[units.weightUnit]) * 10) / 10;
    return (
      <button
        type="button"
        onClick={() => store.change(byWeight ? { loose: String(inUnit) } : { pieces: possible })}
      >
        {byWeight ? words.canLess(weightSaid(possible, units)) : words.canFewer(possible)}
      </button>
    );
  }
  const { dayId, offer } = alternative;
  const name = cutName(offer, language.value);
  return (
    <button type="button" onClick={() => goInstead(yours.cut(dayId, offer.speciesId, offer.cut))}>
      {alternative.kind === 'day'
        ? words.canDay(dateSaid(alternative.date))
        : words.canOther(name, portionSaid(offer.usual, units))}
    </button>
  );
}

function QueueKey({
  outbox,
  hold,
  day,
  personId,
}: Pick<AnswerProps, 'outbox' | 'day' | 'personId'> & { readonly hold: NewHold }) {
  const words = said(orderWords);
  return (
    <>
      <button
        type="button"
        class="queue-key"
        disabled={outbox.state.value.at === 'going'}
        onClick={() => void outbox.send(personId, day.dayId, { ...hold, orQueue: true })}
      >
        {words.queue}
      </button>
      <p class="hint">{words.queueSays}</p>
    </>
  );
}

function No(props: AnswerProps & { readonly quote: QuoteOnWire; readonly hold: NewHold }) {
  const words = said(orderWords);
  const { store, coming, day, offer, quote, hold, outbox, personId, units } = props;
  const alternatives = alternativesTo(store.draft.value, offer, { quote, coming, dayId: day.dayId });
  return (
    <>
      <p class="verdict no">{words.no}</p>
      <p>{words.why[quote.why ?? 'clash']}</p>
      {alternatives.length > 0 && (
        <>
          <h2>{words.can}</h2>
          <ul class="alternatives">
            {alternatives.map((alternative) => (
              <li
                key={alternative.kind === 'fewer' ? 'fewer' : `${alternative.dayId} ${alternative.offer.cut}`}
              >
                <AlternativeKey alternative={alternative} store={store} units={units} />
              </li>
            ))}
          </ul>
        </>
      )}
      <QueueKey outbox={outbox} hold={hold} day={day} personId={personId} />
    </>
  );
}

function Refused(props: AnswerProps & { readonly problem: Problem; readonly hold: NewHold }) {
  const words = said(orderWords);
  const { store, problem, outbox, hold, day, personId } = props;
  const isUndecided = problem.type.endsWith('/plan.undecided');
  const isWorthAsking = isUndecided || problem.status >= 500 || problem.type.endsWith('not-possible');
  return (
    <>
      <p class="verdict no">{refusalSaid(problem)}</p>
      {isWorthAsking && (
        <button
          type="button"
          onClick={() => {
            outbox.forget();
            store.ask(0);
          }}
        >
          {words.askAgain}
        </button>
      )}
      {isUndecided && <QueueKey outbox={outbox} hold={hold} day={day} personId={personId} />}
    </>
  );
}

function Answer(props: AnswerProps) {
  const frame = said(frameWords);
  const words = said(orderWords);
  const { store, outbox, coming, units, day, personId } = props;
  const asked = store.asked.value;
  const out = outbox.state.value;
  if (out.at === 'unsent') return <Unsent outbox={outbox} personId={personId} />;
  if (out.at === 'refused' && 'hold' in asked)
    return <Refused {...props} problem={out.problem} hold={asked.hold} />;
  switch (asked.at) {
    case 'no-network':
      return (
        <>
          <p class="fault">{frame.noNetwork}</p>
          <button type="button" onClick={() => store.ask(0)}>
            {words.askAgain}
          </button>
        </>
      );
    case 'refused':
      return <Refused {...props} problem={asked.problem} hold={asked.hold} />;
    case 'quoted':
      return asked.quote.fits ? (
        <>
          <Yes quote={asked.quote} units={units} currency={coming.shop.currency} />
          <button
            type="button"
            class="strong hold-key"
            disabled={out.at === 'going'}
            onClick={() => void outbox.send(personId, day.dayId, asked.hold)}
          >
            {out.at === 'going'
              ? words.holding
              : words.hold(Math.max(1, Math.round(asked.quote.holdSeconds / 60)))}
          </button>
        </>
      ) : (
        <No {...props} quote={asked.quote} hold={asked.hold} />
      );
    default:
      return <p class="asking">{words.asking}</p>;
  }
}

/** What the service says to the order as it stands: read out when it changes. */
export function AnswerPanel(props: AnswerProps) {
  return (
    <section
      class="answer"
      role="status"
      aria-live="polite"
      aria-busy={props.store.asked.value.at === 'asking'}
    >
      <Answer {...props} />
    </section>
  );
}
