/** @jsxImportSource hono/jsx */
import { type Drawing, type LabelStock, type Mark, placesOn } from '@flitchbook/books';

const mm = (um: number): string => `${um / 1000}`;

function Marks({ marks }: { readonly marks: readonly Mark[] }) {
  return (
    <>
      {marks.map((mark) =>
        mark.mark === 'text' ? (
          <text
            x={mm(mark.xUm)}
            y={mm(mark.baselineUm)}
            font-size={mm(mark.sizeUm)}
            font-weight={mark.isBold ? '700' : '400'}
            textLength={mm(mark.widthUm)}
            lengthAdjust="spacingAndGlyphs"
          >
            {mark.text}
          </text>
        ) : (
          <rect
            class={mark.mark}
            x={mm(mark.xUm)}
            y={mm(mark.yUm)}
            width={mm(mark.widthUm)}
            height={mm(mark.heightUm)}
          />
        ),
      )}
    </>
  );
}

interface LabelsPageProps {
  readonly drawings: readonly Drawing[];
  readonly stock: LabelStock;
  readonly skip: number;
  readonly style: string;
}

/** Labels to print from a browser: a page of the stock each. */
export function LabelsPage({ drawings, stock, skip, style }: LabelsPageProps) {
  const places = placesOn(stock, drawings.length, skip);
  const pages = [...new Set(places.map(({ page }) => page))];
  const [width, height] =
    stock.on === 'roll' ? [stock.widthUm, stock.heightUm] : [stock.pageWidthUm, stock.pageHeightUm];
  return (
    <html lang="en">
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <title>Labels</title>
        <link rel="stylesheet" href={style} />
      </head>
      <body>
        <h1 class="screen">{drawings.length === 1 ? '1 label' : `${drawings.length} labels`}</h1>
        {pages.map((page) => (
          <svg viewBox={`0 0 ${mm(width)} ${mm(height)}`} width={`${mm(width)}mm`} height={`${mm(height)}mm`}>
            <title>{`Page ${page + 1}`}</title>
            {places.map((place, index) =>
              place.page === page ? (
                <g transform={`translate(${mm(place.xUm)} ${mm(place.yUm)})`}>
                  <Marks marks={drawings[index]?.marks ?? []} />
                </g>
              ) : null,
            )}
          </svg>
        ))}
      </body>
    </html>
  );
}

/** Paper of the stock's size; nothing but labels is printed. */
export function labelsStyle(stock: LabelStock): string {
  const [width, height] =
    stock.on === 'roll' ? [stock.widthUm, stock.heightUm] : [stock.pageWidthUm, stock.pageHeightUm];
  return `@page { size: ${mm(width)}mm ${mm(height)}mm; margin: 0 }
body { margin: 0; font-family: Roboto, Helvetica, Arial, sans-serif; background: #ddd }
svg { display: block; margin: 4mm auto; background: #fff; break-after: page }
.frame { fill: none; stroke: #000; stroke-width: 0.2 }
.screen { font-size: 1rem; text-align: center }
@media print { body { background: #fff } svg { margin: 0 } .screen { display: none } }
`;
}
