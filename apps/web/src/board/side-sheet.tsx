import { OrderSwatch } from '../marks/letter-plate.tsx';
import { words } from '../words/english.ts';
import { gramsText, weightText } from '../words/measures.ts';
import { BarRuler } from './bar-ruler.tsx';
import type { AnimalView, BoardView, SideView } from './board-model.ts';
import type { BoardStore } from './board-store.ts';
import { PieceChip } from './piece-chip.tsx';
import type { Piece } from './pieces-model.ts';
import { SplitPanel } from './split-panel.tsx';

interface Looked {
  readonly view: BoardView;
  readonly store: BoardStore;
  readonly pxPerMm: number;
}

interface ChipRowProps extends Looked {
  readonly title: string;
  readonly quiet?: boolean;
  readonly pieces: readonly Piece[];
}

function ChipRow({ title, pieces, view, store, quiet = false }: ChipRowProps) {
  if (pieces.length === 0) return null;
  return (
    <div class={quiet ? 'chip-row quiet-chips' : 'chip-row'}>
      <h4>{title}</h4>
      <ul class="chips">
        {pieces.map((piece) => (
          <li key={piece.pieceId}>
            <PieceChip piece={piece} view={view} store={store} />
          </li>
        ))}
      </ul>
    </div>
  );
}

/** Pieces that leave whole: first those with an owner, then in small what goes to the counter. */
function WholePieces(props: ChipRowProps) {
  const owned = props.pieces.filter(({ holder }) => holder !== null);
  const free = props.pieces.filter(({ holder }) => holder === null);
  const title = owned.length > 0 ? words.sides.toCounter : `${props.title}: ${words.counter}`;
  return (
    <>
      <ChipRow {...props} pieces={owned} />
      <ChipRow {...props} title={title} pieces={free} quiet={true} />
    </>
  );
}

function Stamp({ owner, letter }: { readonly owner: string; readonly letter: string }) {
  return (
    <p class="stamp">
      <span class="stamp-what">{words.sides.stamp}</span>
      <span class="stamp-owner">{owner}</span>
      <span class="stamp-letter">{letter}</span>
    </p>
  );
}

function TrimLine({ side, view }: { readonly side: SideView; readonly view: BoardView }) {
  const kinds = view.totals?.bulks.filter(({ bulkId }) => (side.bulkMg[bulkId] ?? 0) > 0) ?? [];
  if (kinds.length === 0) return null;
  return (
    <p class="trim-line">
      <span class="trim-title">{words.sides.trim}</span>
      {kinds.map(({ bulkId, name }) => (
        <span key={bulkId} class="trim-kind">
          {name} {weightText(side.bulkMg[bulkId] ?? 0, view.board.shop)}
        </span>
      ))}
    </p>
  );
}

interface SideSheetProps extends Looked {
  readonly side: SideView;
  readonly animal: AnimalView;
}

function SideSheet({ side, animal, view, store, pxPerMm }: SideSheetProps) {
  const owner = view.orderById.get(side.stampedFor ?? '');
  const titleId = `side-${side.sideId}`;
  return (
    <section class="side" aria-labelledby={titleId}>
      <header class="side-head">
        <h3 id={titleId}>
          <span class="visually-hidden">{`${animal.name}, `}</span>
          {words.hands[side.hand]}
        </h3>
        <p class="side-weight">{weightText(side.massMg, view.board.shop)}</p>
        {side.lostParts.length > 0 && <p class="lost">{words.sides.lost(side.lostParts.join(', '))}</p>}
        {owner && <Stamp owner={owner.owner} letter={owner.mark.letter} />}
      </header>
      <SplitPanel side={side} owner={owner?.owner ?? null} store={store} />
      <div class="bars">
        {side.bars.map((bar) => (
          <BarRuler key={bar.barId} bar={bar} view={view} store={store} pxPerMm={pxPerMm} />
        ))}
      </div>
      <WholePieces
        title={words.sides.leavesWhole}
        pieces={side.items}
        view={view}
        store={store}
        pxPerMm={pxPerMm}
      />
      <TrimLine side={side} view={view} />
    </section>
  );
}

/** Whose letters stand on this animal: on paper the orders are on another sheet. */
function SheetKey({ animal, view }: { readonly animal: AnimalView; readonly view: BoardView }) {
  const here = new Set(
    [...view.pieces.values()]
      .filter((piece) => piece.animalId === animal.animalId)
      .map(({ holder }) => holder?.orderId),
  );
  const orders = [...view.marks.keys()].flatMap((orderId) =>
    here.has(orderId) ? [view.orderById.get(orderId)] : [],
  );
  return (
    <ul class="sheet-key" aria-hidden="true">
      {orders.map(
        (order) =>
          order && (
            <li key={order.orderId}>
              <OrderSwatch mark={order.mark} size={28} />
              {order.owner}
            </li>
          ),
      )}
    </ul>
  );
}

/** An animal: its tag, what belongs to no side, and its sides. */
export function AnimalSheet({ animal, view, store, pxPerMm }: Looked & { readonly animal: AnimalView }) {
  return (
    <article class="animal">
      <header class="animal-head">
        <h2 class="tag">{animal.name}</h2>
        <p>
          {[
            animal.speciesName,
            words.sides.hanging(gramsText(animal.carcassGrams, view.board.shop)),
            words.sides.ribs(animal.ribs),
          ].join(' · ')}
        </p>
      </header>
      {animal.sides.map((side) => (
        <SideSheet
          key={side.sideId}
          side={side}
          animal={animal}
          view={view}
          store={store}
          pxPerMm={pxPerMm}
        />
      ))}
      <div class="of-animal">
        <WholePieces
          title={words.sides.ofAnimal}
          pieces={animal.singles}
          view={view}
          store={store}
          pxPerMm={pxPerMm}
        />
      </div>
      <SheetKey animal={animal} view={view} />
    </article>
  );
}
