import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { PatternFills } from '../marks/pattern-fills.tsx';
import { Failure, Waiting } from '../shell/states.tsx';
import { words } from '../words/english.ts';
import type { BoardView } from './board-model.ts';
import type { BoardStore } from './board-store.ts';
import { DayHead } from './day-head.tsx';
import { pxPerMmOf, type ScaleChoice, useWidth } from './drawing-scale.ts';
import { OrderList } from './order-list.tsx';
import { PieceTray } from './piece-tray.tsx';
import { AnimalSheet } from './side-sheet.tsx';
import { TotalsSection } from './totals.tsx';
import { NoticeBar, TrialBar } from './trial-bar.tsx';

type Part = 'sides' | 'orders' | 'left';
const parts: readonly Part[] = ['sides', 'orders', 'left'];

interface Looked {
  readonly view: BoardView;
  readonly store: BoardStore;
}

interface SwitchProps<T extends string> {
  readonly label: string;
  readonly names: Readonly<Record<T, string>>;
  readonly values: readonly T[];
  readonly value: T;
  readonly onTurn: (value: T) => void;
  readonly kind: string;
}

function Switch<T extends string>({ label, names, values, value, onTurn, kind }: SwitchProps<T>) {
  return (
    <fieldset class={`switch ${kind}`} aria-label={label}>
      {values.map((each) => (
        <button key={each} type="button" aria-pressed={each === value} onClick={() => onTurn(each)}>
          {names[each]}
        </button>
      ))}
    </fieldset>
  );
}

function Sides({ view, store }: Looked) {
  const scale = useSignal<ScaleChoice>('fit');
  const { element, widthPx, onPaper } = useWidth();
  const pxPerMm = pxPerMmOf(onPaper ? 'fit' : scale.value, widthPx, view.longestUm);
  return (
    <section class="sides" aria-labelledby="sides-title">
      <header class="column-head">
        <h2 id="sides-title">{words.sides.title}</h2>
        <Switch
          kind="scale-switch"
          label={words.day.scale.label}
          names={words.day.scale}
          values={['fit', 'close']}
          value={scale.value}
          onTurn={(value) => {
            scale.value = value;
          }}
        />
      </header>
      <div ref={element} class="measure" />
      {view.plan &&
        view.animals.map((animal) => (
          <AnimalSheet key={animal.animalId} animal={animal} view={view} store={store} pxPerMm={pxPerMm} />
        ))}
    </section>
  );
}

function DayState({ view, store }: Looked) {
  if (view.animals.length === 0) {
    return <Failure isPart={true} title={words.failures.emptyDayTitle} says={words.failures.emptyDay} />;
  }
  if (view.plan) return null;
  const isPlanning = store.busy.value === 'planning';
  return (
    <Failure
      isPart={true}
      title={words.failures.noPlanTitle}
      says={words.failures.noPlan}
      {...(store.may.settle && {
        action: isPlanning ? words.day.planning : words.day.planFirst,
        onAction: () => void store.planAgain(),
      })}
    />
  );
}

const lookAgainMs = 2_000;

/** Keeps up with the day: while the service is planning it again, and when the screen is looked at again. */
function useFreshDay({ view, store }: Looked): void {
  useEffect(() => {
    const { plannedVersion, version } = view.board.day;
    if (plannedVersion === version || view.animals.length === 0 || store.trial.peek()) return;
    const timer = setTimeout(() => void store.load(), lookAgainMs);
    return () => clearTimeout(timer);
  }, [view, store]);
  useEffect(() => {
    const look = (): void => {
      if (document.visibilityState === 'visible' && store.busy.peek() === null) void store.load();
    };
    document.addEventListener('visibilitychange', look);
    return () => document.removeEventListener('visibilitychange', look);
  }, [store]);
}

function DayBoard({ view, store }: Looked) {
  useFreshDay({ view, store });
  useEffect(() => {
    document.title = words.title(view.board.day.date);
  }, [view.board.day.date]);

  const part = useSignal<Part>('sides');
  const clear = (event: KeyboardEvent): void => {
    if (event.key === 'Escape') store.chooseOrder(null);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: Escape lets go of what is lit, wherever the focus is
    <div class={`board show-${part.value}${store.busy.value ? ' is-busy' : ''}`} onKeyDown={clear}>
      <PatternFills marks={[...view.marks.values()]} />
      <DayHead
        view={view}
        store={store}
        onShowShort={() => {
          part.value = 'orders';
          store.shortOnly.value = true;
        }}
      />
      <NoticeBar view={view} store={store} />
      <TrialBar view={view} store={store} />
      <DayState view={view} store={store} />
      <Switch
        kind="part-switch"
        label={words.day.views.label}
        names={words.day.views}
        values={parts}
        value={part.value}
        onTurn={(value) => {
          part.value = value;
        }}
      />
      <div class="bench">
        <OrderList view={view} store={store} />
        <div class="beside">
          {view.plan && <Sides view={view} store={store} />}
          <TotalsSection view={view} />
        </div>
      </div>
      <PieceTray view={view} store={store} />
    </div>
  );
}

/** The day board: who gets what of tomorrow's animals, and why not. */
export function BoardPage({ store }: { readonly store: BoardStore }) {
  useEffect(() => void store.load(), [store]);
  const reading = store.reading.value;
  const view = store.view.value;
  if (view) return <DayBoard view={view} store={store} />;
  switch (reading.at) {
    case 'no-network':
      return (
        <Failure
          title={words.failures.noNetworkTitle}
          says={words.failures.noNetwork}
          action={words.tryAgain}
          onAction={() => void store.load()}
        />
      );
    case 'refused':
      return <Failure title={reading.problem.title} says={reading.problem.detail} />;
    default:
      return <Waiting says={words.failures.loading} />;
  }
}
