import { useSignal } from '@preact/signals';
import { LockSign } from '../marks/lock-sign.tsx';
import { words } from '../words/english.ts';
import type { SideView } from './board-model.ts';
import type { BoardStore } from './board-store.ts';
import type { BarChoice, Choice, Option, PartChoice, ZoneChoice } from './choices-model.ts';
import type { Edit } from './edits-model.ts';

const settle = (option: Option): Edit => ({ edit: 'settle', lock: option.lock });

/** What a choice stands at now, in a few words. */
function sayNow(choice: Choice): string {
  if (choice.kind === 'part') return choice.options.find(({ id }) => id === choice.chosen)?.name ?? '';
  const along = choice.allAlong.find(({ isNow }) => isNow);
  if (along) return words.split.allAlong(along.manner);
  if (choice.allAlong.length > 0) return words.split.mixed;
  return choice.zones.flatMap(({ chosen }) => chosen.map(({ name }) => name)).join(', ');
}

const isLocked = (choice: Choice): boolean =>
  choice.kind === 'part' ? choice.locked : choice.zones.some(({ locked }) => locked);

interface OptionListProps {
  readonly label: string;
  readonly options: readonly Option[];
  readonly chosen: (option: Option) => boolean;
  readonly onPick: (option: Option) => void;
}

function OptionList({ label, options, chosen, onPick }: OptionListProps) {
  return (
    <ul class="options" aria-label={label}>
      {options.map((option) => (
        <li key={option.id}>
          <button type="button" class="option" aria-pressed={chosen(option)} onClick={() => onPick(option)}>
            <span class="option-name">{option.name}</span>
            {option.says !== '' && <span class="option-says">{option.says}</span>}
            <span class="option-minutes">{words.split.minutes(option.minutes)}</span>
          </button>
        </li>
      ))}
    </ul>
  );
}

interface LockButtonProps {
  readonly what: string;
  readonly locked: boolean;
  readonly options: readonly Option[];
  /** ids chosen now; only a single choice can be locked */
  readonly chosen: readonly string[];
  readonly store: BoardStore;
}

function LockButton({ what, locked, options, chosen, store }: LockButtonProps) {
  const [only, ...others] = options.filter(({ id }) => chosen.includes(id));
  if (!locked && (!only || others.length > 0)) return null;
  const target = only ?? options[0];
  if (!target) return null;
  return (
    <button
      type="button"
      class="lock"
      aria-pressed={locked}
      aria-label={locked ? words.split.unlockIt(what) : words.split.lockIt(what)}
      disabled={store.busy.value === 'keeping'}
      onClick={() => void store.turnLock({ edit: locked ? 'free' : 'settle', lock: target.lock })}
    >
      <LockSign shut={locked} />
      {locked ? words.split.locked : words.split.lock}
    </button>
  );
}

function PartPanel({ choice, store }: { readonly choice: PartChoice; readonly store: BoardStore }) {
  return (
    <div class="choice-panel">
      <div class="choice-row">
        <h5>{choice.name}</h5>
        <LockButton
          what={choice.name}
          locked={choice.locked}
          options={choice.options}
          chosen={choice.chosen === null ? [] : [choice.chosen]}
          store={store}
        />
      </div>
      <OptionList
        label={choice.name}
        options={choice.options}
        chosen={({ id }) => id === choice.chosen}
        onPick={(option) => void store.tryOut([settle(option)])}
      />
    </div>
  );
}

function ZoneRow({ zone, store }: { readonly zone: ZoneChoice; readonly store: BoardStore }) {
  const isParted = zone.chosen.length > 1;
  return (
    <div class="zone-choice">
      <div class="choice-row">
        <h5>{zone.name}</h5>
        <LockButton
          what={zone.name}
          locked={zone.locked}
          options={zone.options}
          chosen={zone.chosen.map(({ manner }) => manner)}
          store={store}
        />
      </div>
      {isParted && <p class="parted">{words.split.parted(zone.chosen)}</p>}
      <OptionList
        label={zone.name}
        options={zone.options}
        chosen={({ id }) => !isParted && zone.chosen[0]?.manner === id}
        onPick={(option) => void store.tryOut([settle(option)])}
      />
    </div>
  );
}

function BarPanel({ choice, store }: { readonly choice: BarChoice; readonly store: BoardStore }) {
  return (
    <div class="choice-panel">
      {choice.allAlong.length > 0 && (
        <div class="all-along">
          {choice.allAlong.map(({ manner, locks, isNow }) => (
            <button
              key={manner}
              type="button"
              class="option"
              aria-pressed={isNow}
              onClick={() => void store.tryOut(locks.map((lock) => ({ edit: 'settle', lock })))}
            >
              <span class="option-name">{words.split.allAlong(manner)}</span>
            </button>
          ))}
        </div>
      )}
      <div class="zone-choices">
        {choice.zones.map((zone) => (
          <ZoneRow key={zone.zoneId} zone={zone} store={store} />
        ))}
      </div>
    </div>
  );
}

interface OwnedSplitProps {
  readonly side: SideView;
  readonly owner: string;
  readonly store: BoardStore;
}

interface Locked {
  readonly key: string;
  readonly name: string;
  readonly now: string;
  readonly options: readonly Option[];
}

function lockedIn(choice: Choice): Locked[] {
  if (choice.kind === 'part') {
    const { key, name, options, locked } = choice;
    return locked ? [{ key, name, options, now: sayNow(choice) }] : [];
  }
  return choice.zones.flatMap(({ zoneId, name, options, chosen, locked }) =>
    locked ? [{ key: zoneId, name, options, now: chosen.map((manner) => manner.name).join(', ') }] : [],
  );
}

/** A side that one customer has: their instructions decide. Locks from before can still be seen and opened. */
function OwnedSplit({ side, owner, store }: OwnedSplitProps) {
  return (
    <>
      <p class="owned-split">{words.split.owned(owner)}</p>
      {side.choices.flatMap(lockedIn).map(({ key, name, now, options }) => (
        <div key={key} class="choice-row">
          <p>
            {name}: <strong>{now}</strong>
          </p>
          {store.may.settle && (
            <LockButton what={name} locked={true} options={options} chosen={[]} store={store} />
          )}
        </div>
      ))}
    </>
  );
}

/** How a side is split, for whoever may not change it. */
function SplitTold({ side }: { readonly side: SideView }) {
  return (
    <ul class="choices">
      {side.choices.map((choice) => (
        <li key={choice.key} class="choice told">
          <span class="choice-name">{choice.name}</span>
          <span class="choice-now">{sayNow(choice)}</span>
        </li>
      ))}
    </ul>
  );
}

interface SplitPanelProps {
  readonly side: SideView;
  /** who has the whole side: then the instructions decide and nothing is offered */
  readonly owner: string | null;
  readonly store: BoardStore;
}

/** How a side is split, as a row of questions; each opens on its answers. */
export function SplitPanel({ side, owner, store }: SplitPanelProps) {
  const openKey = useSignal<string | null>(null);
  const open = side.choices.find(({ key }) => key === openKey.value);
  const panelId = `split-${side.sideId}`;
  if (owner !== null) return <OwnedSplit side={side} owner={owner} store={store} />;
  if (!store.may.settle) return <SplitTold side={side} />;
  return (
    <div class="split">
      <h4 class="visually-hidden">{words.sides.howSplit}</h4>
      <ul class="choices">
        {side.choices.map((choice) => (
          <li key={choice.key}>
            <button
              type="button"
              class="choice"
              aria-expanded={choice.key === openKey.value}
              aria-controls={panelId}
              onClick={() => {
                openKey.value = choice.key === openKey.value ? null : choice.key;
              }}
            >
              <span class="choice-name">{choice.name}</span>
              <span class="choice-now">
                {isLocked(choice) && <LockSign shut={true} />}
                {isLocked(choice) && <span class="visually-hidden">{`${words.split.locked}: `}</span>}
                {sayNow(choice)}
              </span>
            </button>
          </li>
        ))}
      </ul>
      <div id={panelId}>
        {open?.kind === 'part' && <PartPanel choice={open} store={store} />}
        {open?.kind === 'bar' && <BarPanel choice={open} store={store} />}
      </div>
    </div>
  );
}
