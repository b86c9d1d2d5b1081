import { silent } from '../marks/silent.ts';
import { ruleHeight } from './bar-rows.ts';
import { inchTicks, millimetreTicks, type RuleTick } from './ruler-model.ts';

const inchReach = { long: 10, middle: 6, short: 3.5 };
const millimetreReach = { long: 9, middle: 4.5, short: 2.5 };

const marks = (
  ticks: readonly RuleTick[],
  pxPerUm: number,
  line: (x: number, tick: RuleTick) => string,
): string => ticks.map((tick) => line(Math.round(tick.um * pxPerUm * 10) / 10, tick)).join('');

interface RuleEdgeProps {
  readonly lengthUm: number;
  readonly pxPerMm: number;
  readonly y: number;
  readonly inchesFirst: boolean;
}

/** The boxwood rule under a bar: inches along the upper edge, millimetres along the lower. */
export function RuleEdge({ lengthUm, pxPerMm, y, inchesFirst }: RuleEdgeProps) {
  const pxPerUm = pxPerMm / 1000;
  const [inches, millimetres] = [inchTicks(lengthUm, pxPerMm), millimetreTicks(lengthUm, pxPerMm)];
  const width = lengthUm * pxPerUm;
  const bottom = ruleHeight;
  return (
    <g class="rule" transform={`translate(0 ${y})`} {...silent}>
      <rect class="rule-wood" x="0" y="0" width={width} height={ruleHeight} rx="2" />
      <path
        class="rule-marks"
        d={marks(inches, pxPerUm, (x, { height }) => `M${x} 0v${inchReach[height]}`)}
      />
      <path
        class="rule-marks"
        d={marks(millimetres, pxPerUm, (x, { height }) => `M${x} ${bottom}v${-millimetreReach[height]}`)}
      />
      {inches.map(({ um, label }) =>
        label !== null && um * pxPerUm < width - 15 ? (
          <text key={um} class={inchesFirst ? 'rule-main' : 'rule-minor'} x={um * pxPerUm + 2} y="10.5">
            {label}
          </text>
        ) : null,
      )}
      {millimetres.map(({ um, label }) =>
        label !== null && um * pxPerUm < width - 20 ? (
          <text
            key={um}
            class={inchesFirst ? 'rule-minor' : 'rule-main'}
            x={um * pxPerUm + 2}
            y={bottom - 2.5}
          >
            {label}
          </text>
        ) : null,
      )}
    </g>
  );
}
