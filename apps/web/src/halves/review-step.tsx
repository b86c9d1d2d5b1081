import type { Outbox } from '../customers/outbox.ts';
import type { Session } from '../wire/client.ts';
import { moneySaid, priceSaid } from '../words/customers/amounts.ts';
import { halfWords } from '../words/customers/half-words.ts';
import { said } from '../words/customers/language.ts';
import { HalfDeal } from './half-deal.tsx';
import { HalfHold } from './half-hold.tsx';
import type { HalfStore } from './half-store.ts';
import {
  lineText,
  numberRange,
  primalName,
  rangeText,
  type Speech,
  thingName,
  weightRange,
} from './half-text.ts';

interface ReviewProps {
  readonly store: HalfStore;
  readonly outbox: Outbox;
  readonly dayId: string;
  readonly speech: Speech;
  readonly who: Session;
}

function Figures({ store, speech, who }: Omit<ReviewProps, 'outbox' | 'dayId'>) {
  const words = said(halfWords).review;
  const day = store.basis.value;
  const seen = store.seen.value;
  if (!seen || typeof day !== 'object' || !('price' in day)) return null;
  const { currency } = who.shop;
  const money = (minor: number): string => moneySaid(minor, currency);
  const each = priceSaid(day.priceMinorPerKg, currency, speech.units);
  const { fromMinor, toMinor, depositMinor } = day.price;
  return (
    <dl class="half-figures">
      <dt>{words.takeHome}</dt>
      <dd class="big">{weightRange(seen.boxedMg.low, seen.boxedMg.high, speech.units)}</dd>
      <dt>{words.boxes}</dt>
      <dd>
        {words.litres(numberRange(seen.freezerLitres))}; {words.coolers(numberRange(seen.coolBoxes))}
      </dd>
      <dt>{words.price}</dt>
      <dd>
        {rangeText(fromMinor, toMinor, money)}, {words.byHanging(each)}
      </dd>
      <dt>{words.deposit}</dt>
      <dd>{depositMinor === 0 ? words.noDeposit : money(depositMinor)}</dd>
    </dl>
  );
}

/** Everything that was chosen, in words, and what becomes of every part. */
export function ReviewStep({ store, outbox, dayId, speech, who }: ReviewProps) {
  const words = said(halfWords);
  const draft = store.draft.value;
  const seen = store.seen.value;
  if (!draft || !seen) return null;
  const handNames = { alike: '', left: words.leftSide, right: words.rightSide };
  return (
    <>
      <section class="slip" aria-labelledby="get-title">
        <h2 id="get-title">{words.review.title}</h2>
        <Figures store={store} speech={speech} who={who} />
        {seen.sides.map(({ hand, preview }) => (
          <div key={hand} class="fates">
            <h3>{[words.review.fates, handNames[hand]].filter((text) => text !== '').join(': ')}</h3>
            {preview.steps.map(({ part, name, gives }) => (
              <div key={part}>
                <h4>{primalName(part, name)}</h4>
                <ul>
                  {gives
                    .filter(({ id, highMg }) => highMg > 0 && !draft.leaves.includes(id))
                    .map((line) => (
                      <li key={`${line.kind} ${line.id}`}>
                        {lineText(line, speech)}
                        {line.usedPercent !== undefined && `, ${words.allUsed(line.usedPercent)}`}
                      </li>
                    ))}
                </ul>
              </div>
            ))}
            <p>
              <b>{words.review.stays}</b>{' '}
              {preview.stays
                .map(
                  ({ id, name, lowMg, highMg }) =>
                    `${thingName(id, name)} ${weightRange(lowMg, highMg, speech.units)}`,
                )
                .join(', ') || '—'}
            </p>
            <p class="soft">
              <b>{words.review.lost}</b> {words.review.lossSays}{' '}
              {preview.lost.map(({ lowMg, highMg }) => weightRange(lowMg, highMg, speech.units)).join(', ')}
            </p>
          </div>
        ))}
        <p class="hint">{words.review.estimate}</p>
        <p class="caution">
          {words.review.cook} <cite>{words.review.cookSource}</cite>
        </p>
      </section>
      <HalfDeal
        seen={seen}
        speech={speech}
        leaves={draft.leaves}
        sharedWith={draft.sharedWith}
        onName={(sharedWith) => store.change({ sharedWith })}
      />
      <div class="field">
        <label for="half-note">{words.review.note}</label>
        <textarea
          id="half-note"
          rows={3}
          maxLength={2000}
          dir="auto"
          value={draft.note}
          onInput={(event) => store.change({ note: event.currentTarget.value })}
        />
      </div>
      <HalfHold store={store} outbox={outbox} dayId={dayId} who={who} />
    </>
  );
}
