import '../look/halves.css';
import { useSignal } from '@preact/signals';
import { useEffect, useMemo } from 'preact/hooks';
import type { Outbox } from '../customers/outbox.ts';
import type { CustomersPageProps } from '../customers/page-props.ts';
import { WaysIn } from '../customers/way-in-page.tsx';
import { PickOne } from '../form/fields.tsx';
import { Failure, Waiting } from '../shell/states.tsx';
import type { Session } from '../wire/client.ts';
import { frameWords } from '../words/customers/frame-words.ts';
import { halfWords } from '../words/customers/half-words.ts';
import { said } from '../words/customers/language.ts';
import { createHalfStore, type HalfStore } from './half-store.ts';
import { primalName, type Speech, weightRange } from './half-text.ts';
import { HomeStep } from './home-step.tsx';
import { QuestionCard } from './question-card.tsx';
import { ReviewStep } from './review-step.tsx';
import { isDrawn, SideDrawing } from './side-drawing.tsx';
import { StartStep } from './start-step.tsx';

interface PrimalProps {
  readonly store: HalfStore;
  readonly speech: Speech;
  readonly part: string;
  readonly onLook: (regions: readonly string[]) => void;
}

/** The choices of one primal. */
function PrimalStep({ store, speech, part, onLook }: PrimalProps) {
  const words = said(halfWords);
  const step = store.shown.value?.preview.steps.find((each) => each.part === part);
  if (!step) return null;
  return (
    <>
      <p>{words.weighs(weightRange(step.lowMg, step.highMg, speech.units))}</p>
      {store.draft.value?.right && (
        <PickOne
          name="hand"
          label={words.side}
          value={store.hand.value}
          options={[
            { id: 'left', name: words.leftSide },
            { id: 'right', name: words.rightSide },
          ]}
          onPick={(hand) => {
            store.hand.value = hand;
          }}
        />
      )}
      {step.questions.map((question) => (
        <QuestionCard
          key={`${question.about} ${question.id}`}
          question={question}
          speech={speech}
          onOpen={() => onLook(question.regions)}
          onPick={(answerId) => store.answer(question, answerId)}
        />
      ))}
    </>
  );
}

interface StepsProps {
  readonly store: HalfStore;
  readonly outbox: Outbox;
  readonly dayId: string;
  readonly who: Session;
}

/** Step by step round the side, on its drawing. */
function Steps({ store, outbox, dayId, who }: StepsProps) {
  const words = said(halfWords);
  const at = useSignal(0);
  const lit = useSignal<readonly string[]>([]);
  const model = store.model.value;
  const primals = store.shown.value?.preview.steps ?? [];
  if (!model || primals.length === 0) return null;
  const { weightUnit, lengthUnit } = who.shop;
  const speech: Speech = { species: model.species, units: { weightUnit, lengthUnit } };
  const names = [
    words.start.name,
    ...primals.map(({ part, name }) => primalName(part, name)),
    words.home.name,
    words.review.name,
  ];
  const here = Math.min(at.value, names.length - 1);
  const primal = primals[here - 1];
  const go = (step: number): void => {
    at.value = step;
    lit.value = primals[step - 1]?.regions ?? [];
    document.getElementById('half-step')?.focus();
  };
  const drawn = isDrawn(primals.flatMap(({ regions }) => regions));
  return (
    <>
      <nav class="half-steps" aria-label={words.steps}>
        <ol>
          {names.map((name, step) => (
            <li key={name}>
              <button
                type="button"
                aria-label={`${step + 1} ${name}`}
                aria-current={step === here ? 'step' : undefined}
                onClick={() => go(step)}
              >
                <span class="step-number">{step + 1}</span>
                <span class="step-name">{name}</span>
              </button>
            </li>
          ))}
        </ol>
      </nav>
      <div class="half-sheet">
        {drawn && (
          <SideDrawing
            lit={lit.value}
            onPick={(region) => {
              const step = primals.findIndex(({ regions }) => regions.includes(region));
              if (step >= 0) go(step + 1);
            }}
          />
        )}
        <div class="half-step">
          <h2 id="half-step" tabIndex={-1}>
            {words.step(here + 1, names.length, names[here] ?? '')}
          </h2>
          {here === 0 && <StartStep store={store} speech={speech} />}
          {primal && (
            <PrimalStep
              store={store}
              speech={speech}
              part={primal.part}
              onLook={(regions) => {
                lit.value = regions;
              }}
            />
          )}
          {here === names.length - 2 && <HomeStep store={store} speech={speech} />}
          {here === names.length - 1 && (
            <ReviewStep store={store} outbox={outbox} dayId={dayId} speech={speech} who={who} />
          )}
          <p class="half-moves">
            {here > 0 && (
              <button type="button" onClick={() => go(here - 1)}>
                {words.back}
              </button>
            )}
            {here < names.length - 1 && (
              <button type="button" class="main" onClick={() => go(here + 1)}>
                {words.next(names[here + 1] ?? '')}
              </button>
            )}
          </p>
        </div>
      </div>
    </>
  );
}

function Guide({ store, outbox, dayId, who }: StepsProps) {
  const words = said(halfWords);
  const frame = said(frameWords);
  const day = store.basis.value;
  useEffect(() => void store.look(), [store]);
  if (day === 'looking') return <Waiting says={frame.loading} />;
  if (day === 'no-network')
    return (
      <Failure
        isPart={true}
        title={frame.noNetworkTitle}
        says={frame.noNetwork}
        action={frame.tryAgain}
        onAction={() => void store.look()}
      />
    );
  if ('problem' in day) return <p class="caution">{words.none}</p>;
  return (
    <>
      {store.isResumed.value && (
        <p class="told">
          {words.resumed}{' '}
          <button
            type="button"
            onClick={() => {
              store.isResumed.value = false;
              store.startWith(store.draft.value?.style ?? '');
            }}
          >
            {words.startAgain}
          </button>
        </p>
      )}
      <Steps store={store} outbox={outbox} dayId={dayId} who={who} />
    </>
  );
}

/** Half an animal or a whole one, cut to instructions. */
export function HalfOrWholePage({
  dayId,
  client,
  who,
  session,
  outbox,
}: CustomersPageProps & { readonly dayId: string }) {
  const words = said(halfWords);
  const frame = said(frameWords);
  const store = useMemo(
    () => createHalfStore({ client, dayId, storing: globalThis.localStorage }),
    [client, dayId],
  );
  useEffect(() => {
    document.title = words.title;
  }, [words.title]);
  return (
    <>
      <h1>{words.title}</h1>
      <p>{words.says}</p>
      {who ? (
        <Guide store={store} outbox={outbox} dayId={dayId} who={who} />
      ) : (
        <>
          <p>{frame.signInFirst}</p>
          <WaysIn client={client} session={session} />
        </>
      )}
    </>
  );
}
