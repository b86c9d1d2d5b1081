import { umPerInch } from '@flitchbook/carcass';
import { lengthSaid } from '../words/customers/amounts.ts';
import { said } from '../words/customers/language.ts';
import { orderWords } from '../words/customers/order-words.ts';
import type { Units } from '../words/measures.ts';

/** Diameters of coins that people have in hand. US Mint: quarter 24.26 mm; European Central Bank: 1 euro 23.25 mm. */
const coinUm = { in: 24_260, mm: 23_250 } as const;

const longUm = 3 * umPerInch;
const gapUm = umPerInch / 2;
const rulerUm = umPerInch / 2;

/** Marks along the edge: eighths of an inch or five millimetres, the whole ones longer. */
function marks(
  thicknessUm: number,
  { lengthUnit }: Units,
): { readonly at: number; readonly isLong: boolean }[] {
  const step = lengthUnit === 'in' ? umPerInch / 8 : 5000;
  const long = lengthUnit === 'in' ? 8 : 2;
  return Array.from({ length: Math.floor(thicknessUm / step) + 1 }, (_, nth) => ({
    at: nth * step,
    isLong: nth % long === 0,
  }));
}

/**
 * A piece seen from its side, with a ruler up its edge and a coin beside it, all to one scale: how large an inch is on a
 * screen nobody knows, how large a coin is everybody does.
 */
export function SliceDrawing({ um, units }: { readonly um: number; readonly units: Units }) {
  const words = said(orderWords);
  const coin = coinUm[units.lengthUnit];
  const width = rulerUm + longUm + gapUm + coin;
  const height = Math.max(um, coin) + umPerInch / 4;
  const floor = height - umPerInch / 8;
  const top = floor - um;
  return (
    <figure class="slice">
      <svg
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={`${lengthSaid(um, units)}. ${words.drawn}`}
        style={{ width: `${(width / umPerInch) * 60}px` }}
      >
        <rect class="slice-ruler" x={0} y={top} width={rulerUm} height={um} />
        {marks(um, units).map(({ at, isLong }) => (
          <line
            key={at}
            class="slice-mark"
            x1={rulerUm * (isLong ? 0.35 : 0.7)}
            x2={rulerUm}
            y1={floor - at}
            y2={floor - at}
          />
        ))}
        <rect class="slice-meat" x={rulerUm} y={top} width={longUm} height={um} rx={umPerInch / 8} />
        <rect
          class="slice-fat"
          x={rulerUm + longUm - umPerInch / 4}
          y={top}
          width={umPerInch / 4}
          height={um}
          rx={umPerInch / 10}
        />
        <circle class="slice-coin" cx={width - coin / 2} cy={floor - coin / 2} r={coin / 2} />
      </svg>
      <figcaption>
        <strong>{lengthSaid(um, units)}</strong>{' '}
        <span>
          {words.drawn} ({words.coin[units.lengthUnit]})
        </span>
      </figcaption>
    </figure>
  );
}
