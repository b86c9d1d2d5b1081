import type { OrderMark, Pattern } from './order-marks.ts';

const tile = 8;

/** Each pattern on a tile of 8 by 8. None is a slope: slopes mean a stretch that nobody has. */
const drawings: Record<Pattern, { readonly path: string; readonly filled?: boolean }> = {
  dots: { path: 'M1 2a1 1 0 1 0 2 0a1 1 0 1 0-2 0M5 6a1 1 0 1 0 2 0a1 1 0 1 0-2 0', filled: true },
  upright: { path: 'M2 0V8M6 0V8' },
  level: { path: 'M0 2H8M0 6H8' },
  waves: { path: 'M0 4Q2 0 4 4T8 4' },
  crosses: { path: 'M2 .5V3.5M.5 2H3.5M6 4.5V7.5M4.5 6H7.5' },
  rings: { path: 'M2 4a2 2 0 1 0 4 0a2 2 0 1 0-4 0' },
  chevrons: { path: 'M0 6 4 2.5 8 6' },
};

export const fillOf = (mark: OrderMark): string => `url(#fill-${mark.letter})`;

interface PatternFillsProps {
  readonly marks: readonly OrderMark[];
}

/** The fills of all orders of a day, once for the page. Not display:none: a browser would drop the fills with it. */
export function PatternFills({ marks }: PatternFillsProps) {
  return (
    <svg class="pattern-fills" width="0" height="0" aria-hidden="true">
      <defs>
        {marks.map(({ letter, ink, pattern }) => (
          <pattern
            key={letter}
            id={`fill-${letter}`}
            class={`ink-${ink}`}
            width={tile}
            height={tile}
            patternUnits="userSpaceOnUse"
          >
            <path
              class={drawings[pattern].filled ? 'pattern-solid' : 'pattern-line'}
              d={drawings[pattern].path}
            />
          </pattern>
        ))}
        <pattern id="fill-free" width="10" height="10" patternUnits="userSpaceOnUse">
          <path class="pattern-free" d="M-1 11 11-1M-1 1 1-1M9 11 11 9" />
        </pattern>
      </defs>
    </svg>
  );
}
