import { glyphHeight, setWord } from './glyphs.ts';
import type { OrderMark } from './order-marks.ts';
import { fillOf } from './pattern-fills.tsx';

interface LetterPlateProps {
  readonly letter: string;
  /** middle of the plate */
  readonly x: number;
  readonly y: number;
  readonly size: number;
}

/** An order's letter on a bare plate, inside a drawing. One letter or two fit. */
export function LetterPlate({ letter, x, y, size }: LetterPlateProps) {
  const { glyphs, width } = setWord(letter);
  const scale = Math.min((size * 0.62) / glyphHeight, (size * 0.8) / width);
  const [left, top] = [x - (width * scale) / 2, y - (glyphHeight * scale) / 2];
  return (
    <g class="plate">
      <rect x={x - size / 2} y={y - size / 2} width={size} height={size} rx={size * 0.18} />
      <g transform={`translate(${left} ${top}) scale(${scale})`}>
        {glyphs.map((glyph) => (
          <path key={glyph.x} d={glyph.path} transform={`translate(${glyph.x} 0)`} />
        ))}
      </g>
    </g>
  );
}

interface OrderSwatchProps {
  readonly mark: OrderMark;
  /** px */
  readonly size: number;
}

/** An order's letter, ink and pattern, as on its pieces. */
export function OrderSwatch({ mark, size }: OrderSwatchProps) {
  return (
    <svg
      class={`swatch ink-${mark.ink}`}
      width={size}
      height={size}
      viewBox={`0 0 ${size} ${size}`}
      aria-hidden="true"
      focusable="false"
    >
      <rect class="tint" x="1" y="1" width={size - 2} height={size - 2} rx="4" />
      <rect x="1" y="1" width={size - 2} height={size - 2} rx="4" fill={fillOf(mark)} />
      <rect class="edge" x="1" y="1" width={size - 2} height={size - 2} rx="4" />
      <LetterPlate letter={mark.letter} x={size / 2} y={size / 2} size={size * 0.66} />
    </svg>
  );
}

/** Where an order's swatch would stand, for meat that nobody has asked for. */
export function CounterSwatch({ size }: { readonly size: number }) {
  return (
    <svg class="swatch" width={size} height={size} aria-hidden="true" focusable="false">
      <rect class="free-ground" x="1" y="1" width={size - 2} height={size - 2} rx="4" />
      <rect x="1" y="1" width={size - 2} height={size - 2} rx="4" fill="url(#fill-free)" />
      <rect class="free-edge" x="1" y="1" width={size - 2} height={size - 2} rx="4" />
    </svg>
  );
}
