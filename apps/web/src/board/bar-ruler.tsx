import { useSignal } from '@preact/signals';
import type { TargetedKeyboardEvent, TargetedMouseEvent } from 'preact';
import { useRef } from 'preact/hooks';
import { words } from '../words/english.ts';
import { rowsOf } from './bar-rows.ts';
import type { BoardView } from './board-model.ts';
import type { BoardStore } from './board-store.ts';
import { BoneRow, DrawUp, ZoneNames } from './bone-row.tsx';
import { leastBlockPx, type MeatLook, MeatRow, RunCaption } from './meat-row.tsx';
import { RuleEdge } from './rule-edge.tsx';
import type { RulerBar } from './ruler-model.ts';
import { nearestBlock, stepAlong } from './walk-model.ts';

interface BarRulerProps {
  readonly bar: RulerBar;
  readonly view: BoardView;
  readonly store: BoardStore;
  readonly pxPerMm: number;
}

/** Focuses a block of any bar by its id; the board may have drawn it a moment ago. */
export const focusBlock = (root: ParentNode | null | undefined, pieceId: string): void => {
  root?.querySelector<SVGGElement>(`[data-piece="${CSS.escape(pieceId)}"]`)?.focus();
};

/** One bar of a side, to scale: zones, bones, pieces, rule. One stop of the tab key; arrow keys go along it. */
export function BarRuler({ bar, view, store, pxPerMm }: BarRulerProps) {
  const drawing = useRef<SVGSVGElement>(null);
  const current = useSignal<string | null>(null);
  const pxPerUm = pxPerMm / 1000;
  const blocks = bar.runs
    .flatMap((run) => run.blocks)
    .filter((block) => (block.toUm - block.fromUm) * pxPerUm >= leastBlockPx);
  const known = blocks.some(({ pieceId }) => pieceId === current.value);
  const rows = rowsOf(bar);
  const width = Math.ceil(bar.lengthUm * pxPerUm);
  const look: MeatLook = {
    view,
    pxPerUm,
    y: rows.meat,
    litOrderId: store.litOrderId.value,
    chosenPieceId: store.chosenPieceId.value,
    currentId: known ? current.value : (blocks[0]?.pieceId ?? null),
    onTake: (pieceId) => {
      current.value = pieceId;
      store.choosePiece(pieceId);
    },
  };

  const onClick = (event: TargetedMouseEvent<SVGSVGElement>): void => {
    const { left } = event.currentTarget.getBoundingClientRect();
    const hit = nearestBlock(blocks, (event.clientX - left) / pxPerUm);
    if (hit) focusBlock(drawing.current, hit.pieceId);
  };
  const onKeyDown = (event: TargetedKeyboardEvent<SVGSVGElement>): void => {
    const next = stepAlong(blocks, look.currentId, event.key);
    if (!next) return;
    event.preventDefault();
    focusBlock(drawing.current, next.pieceId);
  };

  return (
    <figure class="bar">
      <figcaption class="bar-name">{bar.name}</figcaption>
      {/* biome-ignore lint/a11y/useSemanticElements: a drawing of pieces that can be chosen; a fieldset cannot be drawn */}
      <svg
        ref={drawing}
        width={width}
        height={rows.height}
        viewBox={`0 0 ${width} ${rows.height}`}
        role="group"
        aria-label={words.sides.bar(bar.name, blocks.filter(({ isFree }) => !isFree).length)}
        onClick={onClick}
        onKeyDown={onKeyDown}
      >
        <ZoneNames bar={bar} pxPerUm={pxPerUm} y={rows.names} />
        {rows.bones !== null && <BoneRow bar={bar} pxPerUm={pxPerUm} y={rows.bones} />}
        {rows.meat - rows.draw > 2 && <DrawUp bar={bar} pxPerUm={pxPerUm} y={rows.draw} />}
        {bar.runs.map((run) => (
          <MeatRow key={run.fromUm} run={run} look={look} />
        ))}
        {rows.rule - rows.captions > 6 &&
          bar.runs.map((run) => (
            <RunCaption key={run.fromUm} run={run} look={{ ...look, y: rows.captions + 12 }} />
          ))}
        <RuleEdge
          lengthUm={bar.lengthUm}
          pxPerMm={pxPerMm}
          y={rows.rule}
          inchesFirst={view.board.shop.lengthUnit === 'in'}
        />
      </svg>
    </figure>
  );
}
