import { cutName } from '../coming/find-cuts.ts';
import { Select } from '../form/fields.tsx';
import type { ComingDay } from '../wire/customers-client.ts';
import { language, said } from '../words/customers/language.ts';
import { orderWords } from '../words/customers/order-words.ts';
import { noteLengthMost, stepsFor } from './cut-draft.ts';
import type { CutFieldsProps } from './portion-fields.tsx';

const packSizes = [1, 2, 3, 4, 6];
const insteadMost = 3;

function Preparation({ store, offer }: CutFieldsProps) {
  const words = said(orderWords);
  const possible = stepsFor(offer);
  const ticked = store.draft.value.steps;
  if (possible.length === 0) return null;
  return (
    <fieldset>
      <legend>{words.prepare}</legend>
      {possible.map((step) => (
        <label key={step} class="check">
          <input
            type="checkbox"
            checked={ticked.includes(step)}
            onChange={({ currentTarget }) =>
              store.change({
                steps: currentTarget.checked ? [...ticked, step] : ticked.filter((each) => each !== step),
              })
            }
          />
          <span>{words.steps[step]}</span>
        </label>
      ))}
    </fieldset>
  );
}

function Instead({ store, offer, day }: CutFieldsProps & { readonly day: ComingDay }) {
  const words = said(orderWords);
  const { instead } = store.draft.value;
  const others = day.offers.filter(
    ({ speciesId, cut, usual }) =>
      speciesId === offer.speciesId &&
      cut !== offer.cut &&
      (usual.by === 'bulk') === (offer.usual.by === 'bulk'),
  );
  return (
    <details>
      <summary>{words.instead}</summary>
      <p class="hint">{words.insteadSays}</p>
      {Array.from({ length: Math.min(insteadMost, instead.length + 1) }, (_, nth) => (
        <div class="field" key={`${offer.cut}-${nth}`}>
          <label for={`instead-${nth}`}>{words.insteadNth(nth + 1)}</label>
          <Select
            id={`instead-${nth}`}
            value={instead[nth] ?? ''}
            onChange={(value) =>
              store.change({
                instead: value === '' ? instead.toSpliced(nth, 1) : instead.toSpliced(nth, 1, value),
              })
            }
          >
            <option value="">{words.noInstead}</option>
            {others
              .filter(({ cut }) => cut === instead[nth] || !instead.includes(cut))
              .map((other) => (
                <option key={other.cut} value={other.cut}>
                  {cutName(other, language.value)}
                </option>
              ))}
          </Select>
        </div>
      ))}
    </details>
  );
}

/** What matters beside the cut itself: packs, getting it ready, what else would do, own words. */
export function WishFields(props: CutFieldsProps & { readonly day: ComingDay }) {
  const words = said(orderWords);
  const { store } = props;
  const { pack, note, by } = store.draft.value;
  return (
    <>
      {by !== 'bulk' && (
        <div class="field">
          <label for="pack">{words.pack}</label>
          <Select
            id="pack"
            value={pack === null ? '' : String(pack)}
            onChange={(value) => store.change({ pack: value === '' ? null : Number(value) })}
          >
            <option value="">{words.packAll}</option>
            {packSizes.map((size) => (
              <option key={size} value={String(size)}>
                {words.packs(size)}
              </option>
            ))}
          </Select>
        </div>
      )}
      <Preparation {...props} />
      <Instead {...props} />
      <div class="field">
        <label for="note">{words.note}</label>
        <textarea
          id="note"
          rows={2}
          dir="auto"
          maxLength={noteLengthMost}
          value={note}
          onInput={({ currentTarget }) => store.change({ note: currentTarget.value })}
        />
        {note.length > noteLengthMost - 200 && (
          <p class="hint">{words.noteLeft(noteLengthMost - note.length)}</p>
        )}
      </div>
    </>
  );
}
