import type { RulerBlock } from './ruler-model.ts';

/** The block under a place on a bar, or the one nearest to it: a finger is wider than a chop. */
export function nearestBlock(blocks: readonly RulerBlock[], um: number): RulerBlock | undefined {
  const away = ({ fromUm, toUm }: RulerBlock): number => Math.max(fromUm - um, um - toUm, 0);
  return blocks.reduce<RulerBlock | undefined>(
    (best, block) => (best === undefined || away(block) < away(best) ? block : best),
    undefined,
  );
}

/** Where a key leads along a bar; nothing for a key that does not, or at the end. */
export function stepAlong(
  blocks: readonly RulerBlock[],
  currentId: string | null,
  key: string,
): RulerBlock | undefined {
  const at = blocks.findIndex(({ pieceId }) => pieceId === currentId);
  switch (key) {
    case 'ArrowRight':
      return blocks[at + 1];
    case 'ArrowLeft':
      return at > 0 ? blocks[at - 1] : undefined;
    case 'Home':
      return blocks[0];
    case 'End':
      return blocks.at(-1);
    default:
      return undefined;
  }
}
