import { useEffect, useMemo } from 'preact/hooks';
import { cutName, cutSays } from '../coming/find-cuts.ts';
import type { CustomersPageProps } from '../customers/page-props.ts';
import { WaysIn } from '../customers/way-in-page.tsx';
import { PickOne } from '../form/fields.tsx';
import { Link } from '../shell/link.tsx';
import { goInstead, yours } from '../shell/route.ts';
import { Failure, Waiting } from '../shell/states.tsx';
import type { Session } from '../wire/client.ts';
import type { Coming, ComingDay, OfferedCut } from '../wire/customers-client.ts';
import { dateSaid } from '../words/customers/amounts.ts';
import { frameWords } from '../words/customers/frame-words.ts';
import { language, said } from '../words/customers/language.ts';
import { orderWords } from '../words/customers/order-words.ts';
import { AnswerPanel } from './answer-panel.tsx';
import { bonePairOf } from './cut-draft.ts';
import { createCutStore } from './cut-store.ts';
import { PortionFields } from './portion-fields.tsx';
import { WishFields } from './wish-fields.tsx';

interface FoundProps extends CustomersPageProps {
  readonly day: ComingDay;
  readonly offer: OfferedCut;
  readonly got: Coming;
}

function Bone({ day, offer }: Pick<FoundProps, 'day' | 'offer'>) {
  const words = said(orderWords);
  const pair = bonePairOf(day, offer);
  if (!pair) return null;
  const isBoneless = offer.cut === pair.boneless;
  return (
    <PickOne
      name="bone"
      label={words.bone}
      value={isBoneless ? 'boneless' : 'bone-in'}
      options={[
        { id: 'bone-in', name: words.boneIn },
        { id: 'boneless', name: words.boneless },
      ]}
      onPick={(bone) =>
        goInstead(yours.cut(day.dayId, offer.speciesId, bone === 'boneless' ? pair.boneless : pair.boneIn))
      }
    />
  );
}

function CutForm({ day, offer, got, client, outbox, who }: FoundProps & { readonly who: Session }) {
  const units = got.shop;
  const { personId, name } = who.person;
  const store = useMemo(
    () => createCutStore({ client, day, offer, units, owner: name }),
    [offer.cut, day.dayId],
  );
  useEffect(() => store.follow(), [store]);
  // Another order than the one that was refused.
  useEffect(() => {
    if (outbox.state.peek().at === 'refused') outbox.forget();
  }, [store.draft.value]);
  const fields = { store, offer, units };
  return (
    <div class="cut-order">
      <form class="paper-form" noValidate={true} onSubmit={(event) => event.preventDefault()}>
        <Bone day={day} offer={offer} />
        <PortionFields {...fields} />
        <WishFields {...fields} day={day} />
      </form>
      <AnswerPanel {...{ store, outbox, day, offer, units, personId }} coming={got} />
    </div>
  );
}

function Found(props: FoundProps) {
  const frame = said(frameWords);
  const words = said(orderWords);
  const { day, offer, who, client, session } = props;
  const says = cutSays(offer, language.value);
  const name = cutName(offer, language.value);
  useEffect(() => {
    document.title = words.title(name);
  }, [name]);
  return (
    <>
      <div class="page-top">
        <p class="kicker">{dateSaid(day.date)}</p>
        <h1>{name}</h1>
        {says !== '' && <p class="takes">{says}</p>}
      </div>
      {who?.person.role === 'customer' && <CutForm {...props} who={who} />}
      {who && who.person.role !== 'customer' && (
        <Failure isPart={true} title={frame.staffTitle} says={frame.staffSays} />
      )}
      {!who && (
        <>
          <p>{words.signIn}</p>
          <WaysIn client={client} session={session} />
        </>
      )}
    </>
  );
}

/** One cut of one day, ordered. */
export function CutPage(
  props: CustomersPageProps & { readonly dayId: string; readonly speciesId: string; readonly cut: string },
) {
  const frame = said(frameWords);
  const words = said(orderWords);
  const { coming, dayId, speciesId, cut } = props;
  useEffect(() => coming.follow(), [coming]);
  const got = coming.coming.value;
  const day = got?.days.find((each) => each.dayId === dayId);
  const offer = day?.offers.find((each) => each.speciesId === speciesId && each.cut === cut);
  const isMissing = got === null && coming.missing.value !== null;
  return (
    <>
      <Link class="back" to={yours.coming}>
        {words.back}
      </Link>
      {isMissing && (
        <Failure
          title={frame.noNetworkTitle}
          says={frame.noNetwork}
          action={frame.tryAgain}
          onAction={() => void coming.look()}
        />
      )}
      {got === null && !isMissing && <Waiting says={frame.loading} />}
      {got !== null && (!day || !offer) && <Failure title={words.goneTitle} says={words.gone} />}
      {got !== null && day && offer && <Found key={offer.cut} {...props} day={day} offer={offer} got={got} />}
    </>
  );
}
