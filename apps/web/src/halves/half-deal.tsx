import type { SharePreview } from '@flitchbook/carcass';
import { type DealtPiece, dealPieces, lineWorth } from '@flitchbook/plan';
import { halfWords } from '../words/customers/half-words.ts';
import { said } from '../words/customers/language.ts';
import { weightText } from '../words/measures.ts';
import { type Speech, thingName } from './half-text.ts';

/** The pieces that are likely to come, each at its mean: the plan of the day deals those that are cut. */
function likelyPieces(
  { sides }: SharePreview,
  { species }: Speech,
  leaves: readonly string[],
): readonly DealtPiece[] {
  return sides.flatMap(({ hand, preview }) =>
    preview.steps
      .flatMap(({ gives }) => gives)
      .filter(({ kind, id, massMg }) => kind !== 'bulk' && massMg.mean > 0 && !leaves.includes(id))
      .flatMap((line) => {
        const count = Math.max(1, line.pieces?.likely ?? 1);
        const grams = Math.round(line.massMg.mean / 1000 / count);
        const { worthMinorPerKg = 0 } = species.items[line.id] ?? species.stocks[line.id] ?? {};
        const kind = thingName(line.cut ?? line.id, species.cuts[line.cut ?? '']?.name ?? line.name);
        return Array.from({ length: count }, (_, turn) => ({
          pieceId: `${hand} ${line.kind} ${line.id} ${turn}`,
          kind,
          grams,
          worthMinor: lineWorth(grams, worthMinorPerKg),
        }));
      }),
  );
}

const counted = (pieces: readonly DealtPiece[]): readonly (readonly [string, number])[] => {
  const rows = new Map<string, number>();
  for (const { kind } of pieces) rows.set(kind, (rows.get(kind) ?? 0) + 1);
  return [...rows];
};

interface DealProps {
  readonly seen: SharePreview;
  readonly speech: Speech;
  readonly leaves: readonly string[];
  readonly sharedWith: string;
  readonly onName: (name: string) => void;
}

/** A second name, and who of the two gets what. */
export function HalfDeal({ seen, speech, leaves, sharedWith, onName }: DealProps) {
  const words = said(halfWords);
  const pieces = likelyPieces(seen, speech, leaves);
  const deal = dealPieces(pieces);
  const second = sharedWith.trim();
  const percent = (Math.round(deal.apart * 1000) / 10).toString();
  return (
    <section class="slip" aria-labelledby="deal-title">
      <h2 id="deal-title">{words.share.title}</h2>
      <div class="field">
        <label for="shared-with">{words.share.name}</label>
        <input
          id="shared-with"
          type="text"
          dir="auto"
          maxLength={200}
          autocomplete="off"
          value={sharedWith}
          aria-describedby="shared-hint"
          onInput={(event) => onName(event.currentTarget.value)}
        />
        <p class="hint" id="shared-hint">
          {words.share.hint}
        </p>
      </div>
      {second !== '' && (
        <>
          <div class="piles">
            {deal.piles.map((pile, turn) => (
              <div key={turn === 0 ? 'first' : 'second'} class="pile">
                <h3>
                  <bdi>
                    {turn === 0
                      ? words.share.mine(weightText(pile.grams * 1000, speech.units))
                      : words.share.theirs(second, weightText(pile.grams * 1000, speech.units))}
                  </bdi>
                </h3>
                <ul>
                  {counted(pieces.filter(({ pieceId }) => pile.pieceIds.includes(pieceId))).map(
                    ([name, count]) => (
                      <li key={name}>
                        {count} × {name}
                      </li>
                    ),
                  )}
                </ul>
              </div>
            ))}
          </div>
          <p class={deal.fair ? 'told' : 'caution'}>
            {deal.fair ? words.share.fair(percent) : words.share.unfair(percent)}
          </p>
        </>
      )}
    </section>
  );
}
