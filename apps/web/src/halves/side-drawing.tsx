import { regionNames } from '../words/customers/half-names.ts';
import { halfWords } from '../words/customers/half-words.ts';
import { said } from '../words/customers/language.ts';

/** Where each region of a hog lies on a side that hangs by nothing: head to the left, drawn for this project. */
const outlines: Readonly<Record<string, string>> = {
  neck: 'M40 97C58 62 94 46 130 42L136 110L70 123Z',
  jowl: 'M40 97L70 123L136 110L140 150C106 168 54 158 26 122C28 112 33 104 40 97Z',
  butt: 'M130 42C158 36 188 34 214 34L217 112L136 110Z',
  picnic: 'M136 110L217 112L222 192C202 202 180 197 166 183C152 171 143 161 140 150Z',
  'fore-shank': 'M166 183C180 197 202 202 216 195L204 230L200 262H174L178 228Z',
  blade: 'M214 34L282 32L284 92L216 92Z',
  loin: 'M282 32L426 34L424 92L284 92Z',
  sirloin: 'M426 34C450 36 470 42 486 51L478 99L424 92Z',
  fillet: 'M332 92L424 92L478 99L475 113L332 107Z',
  cavity: 'M216 92H332V107L475 113L472 128L217 119Z',
  'spare-ribs': 'M217 119L362 123L352 160L220 160Z',
  belly: 'M220 160L352 160L362 123L472 128L469 184C420 208 300 216 222 197Z',
  ham: 'M486 51C532 58 568 90 574 130C574 160 552 186 520 197L469 184L478 99Z',
  'hind-shank': 'M520 197C548 187 566 171 573 148L598 178L626 198L614 217L580 208L546 216Z',
};

interface DrawingProps {
  readonly lit: readonly string[];
  /** null where nothing can be picked */
  readonly onPick: ((region: string) => void) | null;
}

/** A side with what is being asked about in ink. The buttons beside it do the same without eyes or a mouse. */
export function SideDrawing({ lit, onPick }: DrawingProps) {
  const words = said(halfWords);
  const names = said(regionNames);
  const where = lit.map((region) => names[region] ?? region).join(', ');
  return (
    <svg class="side-drawing" viewBox="14 20 626 250" role="img" aria-label={words.drawing(where)}>
      {Object.entries(outlines).map(([region, outline]) => (
        // biome-ignore lint/a11y/noStaticElementInteractions: the list of primals is the way for keyboards
        <path
          key={region}
          d={outline}
          class={lit.includes(region) ? 'lit' : ''}
          onClick={onPick ? () => onPick(region) : undefined}
        />
      ))}
    </svg>
  );
}

/** Whether a species has a drawing. */
export const isDrawn = (regions: readonly string[]): boolean =>
  regions.length > 0 && regions.every((region) => Object.hasOwn(outlines, region));
