import { silent } from '../marks/silent.ts';
import { bonesHeight, drawHeight } from './bar-rows.ts';
import type { RulerBar, RulerRun, RulerStation } from './ruler-model.ts';
import { fitText, shorter } from './text-fit.ts';

interface RowProps {
  readonly bar: RulerBar;
  readonly pxPerUm: number;
  readonly y: number;
}

const nameSize = 12;

export function ZoneNames({ bar, pxPerUm, y }: RowProps) {
  return (
    <g class="zone-names" {...silent}>
      {(bar.zones.length > 1 ? bar.zones : []).map((zone, index) => {
        const room = (zone.toUm - zone.fromUm) * pxPerUm - 6;
        const name = fitText(shorter(zone.name), room, nameSize);
        const x = zone.fromUm * pxPerUm;
        return (
          <g key={zone.zoneId}>
            {index > 0 && <path class="zone-part" d={`M${x} ${y + 2}v13`} />}
            {name !== null && (
              <text x={x + (index > 0 ? 5 : 1)} y={y + 12}>
                {name}
              </text>
            )}
          </g>
        );
      })}
    </g>
  );
}

const runAt = (runs: readonly RulerRun[], um: number): RulerRun | undefined =>
  runs.find((run) => run.fromUm <= um && um < run.toUm);

interface BoneProps {
  readonly station: RulerStation;
  readonly isOut: boolean;
  readonly pxPerUm: number;
  readonly y: number;
}

function BoneNumber({ rib, x, y, isOut }: { rib: number; x: number; y: number; isOut: boolean }) {
  return (
    <g class={isOut ? 'bone bone-out' : 'bone'}>
      <text x={x} y={y + 13.8}>
        {rib}
      </text>
    </g>
  );
}

function Bone({ station, isOut, pxPerUm, y }: BoneProps) {
  const middle = ((station.fromUm + station.toUm) / 2) * pxPerUm;
  const wide = (station.toUm - station.fromUm) * pxPerUm;
  const state = isOut ? 'bone bone-out' : 'bone';
  if (station.rib === null) {
    const half = Math.min(6, wide * 0.28);
    return <path class={state} d={`M${middle - half} ${y + 9.5}h${half * 2}M${middle} ${y + 5}v9`} />;
  }
  const width = Math.min(24, wide - 5);
  if (width < 14) return <BoneNumber rib={station.rib} x={middle} y={y} isOut={isOut} />;
  return (
    <g class={state}>
      <rect x={middle - width / 2} y={y + 2} width={width} height={bonesHeight - 4} rx="7" />
      <text x={middle} y={y + 13.8}>
        {station.rib}
      </text>
    </g>
  );
}

/** The bones of a bar in their places: ribs by their number, vertebrae as crosses, those that are cut away hollow. */
export function BoneRow({ bar, pxPerUm, y }: RowProps) {
  return (
    <g class="bones" {...silent}>
      {bar.zones.flatMap((zone) =>
        zone.stations.map((station) => (
          <Bone
            key={station.fromUm}
            station={station}
            isOut={runAt(bar.runs, (station.fromUm + station.toUm) / 2)?.boned ?? false}
            pxPerUm={pxPerUm}
            y={y}
          />
        )),
      )}
    </g>
  );
}

/** How each run comes down from its place in the carcass to the block: boned meat draws up. */
export function DrawUp({ bar, pxPerUm, y }: RowProps) {
  return (
    <g class="draw-up" {...silent}>
      {bar.runs.map((run) => {
        const [from, to, drawnTo] = [run.fromUm * pxPerUm, run.toUm * pxPerUm, run.drawnToUm * pxPerUm];
        return (
          <path
            key={run.fromUm}
            class={run.boned ? 'drawn' : 'straight'}
            d={`M${from + 0.5} ${y}L${to - 0.5} ${y}L${drawnTo - 0.5} ${y + drawHeight}L${from + 0.5} ${y + drawHeight}Z`}
          />
        );
      })}
    </g>
  );
}
