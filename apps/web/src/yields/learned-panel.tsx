import type { FarmFigures } from '@flitchbook/carcass';
import { Field, Select } from '../form/fields.tsx';
import { words } from '../words/english.ts';
import { type LearnedFrom, learnFromFile } from './yields-model.ts';

interface PanelProps {
  readonly from: LearnedFrom | null;
  readonly figures: FarmFigures | null;
  readonly onFile: (from: LearnedFrom) => void;
  readonly onFarm: (farm: string) => void;
}

/** What is believed of a farm and why, from a file of measured sides; nothing leaves the browser. */
export function LearnedPanel({ from, figures, onFile, onFarm }: PanelProps) {
  const read = async (file: File | undefined): Promise<void> => {
    if (file) onFile(learnFromFile(await file.text()));
  };
  return (
    <section class="learned" aria-labelledby="learned-title">
      <h2 id="learned-title">{words.yields.believed}</h2>
      <Field id="measured" label={words.yields.measured} hint={words.yields.measuredHint}>
        <input
          id="measured"
          type="file"
          accept="application/json,.json"
          onChange={(event) => void read(event.currentTarget.files?.[0])}
        />
      </Field>
      {from && 'faults' in from && (
        <ul class="yield-faults" role="status">
          {from.faults.map((says) => (
            <li key={says}>{says}</li>
          ))}
        </ul>
      )}
      {from && 'learned' in from && (
        <>
          {from.learned.farms.length > 0 && (
            <Field id="farm" label={words.yields.farm}>
              <Select id="farm" value={figures?.farm ?? ''} onChange={onFarm}>
                {from.learned.farms.map(({ farm }) => (
                  <option key={farm} value={farm ?? ''}>
                    {farm}
                  </option>
                ))}
              </Select>
            </Field>
          )}
          <ul class="learned-figures">
            {(figures?.figures ?? []).map(({ kind, id, says }) => (
              <li key={`${kind}/${id}`}>{says}</li>
            ))}
          </ul>
          {from.learned.refused.length > 0 && (
            <>
              <h3>{words.yields.taughtNothing}</h3>
              <ul class="yield-faults">
                {from.learned.refused.map(({ sideId, faults }) => (
                  <li key={sideId}>{words.yields.refusedSide(sideId, faults[0]?.says ?? '')}</li>
                ))}
              </ul>
            </>
          )}
        </>
      )}
      {from === null && <p>{words.yields.asPublished}</p>}
    </section>
  );
}
