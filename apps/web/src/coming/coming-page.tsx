import { type Signal, useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { FormField } from '../customers/form-field.tsx';
import type { CustomersPageProps } from '../customers/page-props.ts';
import { Link } from '../shell/link.tsx';
import { yours } from '../shell/route.ts';
import { Failure, Waiting } from '../shell/states.tsx';
import type { ComingDay, OfferedCut } from '../wire/customers-client.ts';
import {
  dateSaid,
  instantSaid,
  portionSaid,
  priceSaid,
  turned,
  weightSaid,
} from '../words/customers/amounts.ts';
import { comingWords } from '../words/customers/coming-words.ts';
import { frameWords } from '../words/customers/frame-words.ts';
import { language, said } from '../words/customers/language.ts';
import type { Units } from '../words/measures.ts';
import { cutName, cutSays, dishesOf, findCuts } from './find-cuts.ts';

interface OfferProps {
  readonly dayId: string;
  readonly offer: OfferedCut;
  readonly currency: string;
  readonly units: Units;
}

function moreSaid({ more, usual }: OfferedCut, units: Units): string | null {
  const words = said(comingWords);
  if (more === null || more === 0) return null;
  return usual.by === 'bulk'
    ? words.moreLoose(weightSaid(more, units))
    : words.more(more, portionSaid(usual, units));
}

function Offer({ dayId, offer, currency, units }: OfferProps) {
  const words = said(comingWords);
  const more = moreSaid(offer, units);
  const suits = dishesOf(offer).map(({ words: names }) => names[language.value][0]);
  return (
    <li>
      <Link class="slip offer" to={yours.cut(dayId, offer.speciesId, offer.cut)}>
        <strong class="offer-name">{cutName(offer, language.value)}</strong>
        <span class="offer-price">{priceSaid(offer.priceMinorPerKg, currency, units)}</span>
        {more !== null && <span class="offer-more">{more}</span>}
        <span class="offer-says">{cutSays(offer, language.value)}</span>
        {suits.length > 0 && (
          <span class="offer-suits">
            {words.goodFor}: {suits.join(', ')}
          </span>
        )}
      </Link>
    </li>
  );
}

interface DayProps extends Omit<OfferProps, 'offer' | 'dayId'> {
  readonly day: ComingDay;
  readonly timeZone: string;
  readonly search: string;
  readonly onlyFree: boolean;
}

function Offers({
  title,
  says,
  offers,
  ...rest
}: Omit<OfferProps, 'offer'> & {
  readonly title?: string;
  readonly says?: string;
  readonly offers: readonly OfferedCut[];
}) {
  if (offers.length === 0) return null;
  return (
    <section class="offers">
      {title !== undefined && <h3>{title}</h3>}
      {says !== undefined && <p>{says}</p>}
      <ul>
        {offers.map((offer) => (
          <Offer key={`${offer.speciesId}/${offer.cut}`} offer={offer} {...rest} />
        ))}
      </ul>
    </section>
  );
}

/** The long rest of what a day's animals could give: drawn when it is opened, so that the page is there at once. */
function Folded({
  title,
  count,
  says,
  isOpen,
  offers,
  ...rest
}: Omit<OfferProps, 'offer'> & {
  readonly title: string;
  readonly count: string;
  readonly says: string;
  readonly isOpen: boolean;
  readonly offers: readonly OfferedCut[];
}) {
  const opened = useSignal(isOpen);
  return (
    <details
      class="folded"
      open={opened.value}
      onToggle={({ currentTarget }) => {
        opened.value = currentTarget.open;
      }}
    >
      <summary>
        {title} ({count})
      </summary>
      {opened.value && <Offers says={says} offers={offers} {...rest} />}
    </details>
  );
}

function Day({ day, timeZone, search, onlyFree, currency, units }: DayProps) {
  const words = said(comingWords);
  const found = findCuts(day.offers, search);
  const free = found.filter(({ more }) => more !== null && more > 0);
  const rest = onlyFree ? [] : found.filter(({ more }) => more === null || more === 0);
  const isPlanned = day.offers.some(({ more }) => more !== null);
  // What was searched for, or is all there is, is not folded away.
  const isOpen = search.trim() !== '' || free.length === 0;
  const given = { dayId: day.dayId, currency, units };
  const animals = day.animals.map(({ count, name }) => words.animals(count, name)).join(', ');
  return (
    <section class="coming-day" aria-labelledby={`day-${day.dayId}`}>
      <header>
        <p class="kicker">{words.cutOn}</p>
        <h2 id={`day-${day.dayId}`}>{dateSaid(day.date)}</h2>
        <p>
          {[animals, day.farms.length > 0 && words.from(day.farms.join(', '))].filter(Boolean).join(' ')}
          {'. '}
          {day.customersUntil === null
            ? words.untilClosed
            : words.until(instantSaid(day.customersUntil, timeZone))}
        </p>
        <Link class="button" to={yours.halfOrWhole(day.dayId)}>
          {words.halfOrWhole}
        </Link>
      </header>
      <p role="status" class="found">
        {words.found(free.length + rest.length)}
      </p>
      {free.length + rest.length === 0 && <p>{words.nothing}</p>}
      <Offers title={words.free} says={words.sure} offers={free} {...given} />
      {rest.length > 0 && (
        <Folded
          key={String(isOpen)}
          title={words.ask}
          count={words.found(rest.length)}
          says={isPlanned ? words.askSays : words.unplanned}
          isOpen={isOpen}
          offers={rest}
          {...given}
        />
      )}
    </section>
  );
}

function SearchBar({
  search,
  onlyFree,
}: {
  readonly search: Signal<string>;
  readonly onlyFree: Signal<boolean>;
}) {
  const words = said(comingWords);
  return (
    <search class="search-bar">
      <FormField id="search" label={words.search} hint={words.searchHint} value={search} />
      <label class="check">
        <input
          type="checkbox"
          checked={onlyFree.value}
          onChange={(event) => {
            onlyFree.value = event.currentTarget.checked;
          }}
        />
        <span>{words.onlyFree}</span>
      </label>
    </search>
  );
}

/** What can still be promised, day by day, as it is now. */
export function ComingPage({ coming }: CustomersPageProps) {
  const frame = said(frameWords);
  const words = said(comingWords);
  const search = useSignal('');
  const onlyFree = useSignal(false);
  const isTurned = useSignal(false);
  useEffect(() => {
    document.title = words.title;
  }, [words]);
  useEffect(() => coming.follow(), [coming]);
  const got = coming.coming.value;
  if (got === null && coming.missing.value === null) return <Waiting says={frame.loading} />;
  if (got === null) {
    return (
      <Failure
        title={frame.noNetworkTitle}
        says={frame.noNetwork}
        action={frame.tryAgain}
        onAction={() => void coming.look()}
      />
    );
  }
  const units = isTurned.value ? turned(got.shop) : got.shop;
  return (
    <>
      <div class="page-top">
        <p class="kicker">{got.shop.name}</p>
        <h1>{words.title}</h1>
        <p>{words.lead}</p>
      </div>
      {got.days.length === 0 ? (
        <Failure isPart={true} title={words.noDaysTitle} says={words.noDays} />
      ) : (
        <SearchBar search={search} onlyFree={onlyFree} />
      )}
      <button
        type="button"
        class="turn-units"
        onClick={() => {
          isTurned.value = !isTurned.value;
        }}
      >
        {words.unitsTurn(turned(units).weightUnit)}
      </button>
      {got.days.map((day) => (
        <Day
          key={day.dayId}
          day={day}
          timeZone={got.shop.timeZone}
          currency={got.shop.currency}
          units={units}
          search={search.value}
          onlyFree={onlyFree.value}
        />
      ))}
    </>
  );
}
