import { glyphHeight, setWord } from './glyphs.ts';

interface StencilWordProps {
  readonly text: string;
  /** height of the letters in px */
  readonly height: number;
}

/** A word in the stencil letters. It is a picture: whoever uses it says the word to a screen reader. */
export function StencilWord({ text, height }: StencilWordProps) {
  const { glyphs, width } = setWord(text);
  return (
    <svg
      class="stencil"
      aria-hidden="true"
      width={(width * height) / glyphHeight}
      height={height}
      viewBox={`0 0 ${width} ${glyphHeight}`}
    >
      {glyphs.map(({ path, x }) => (
        <path key={x} d={path} transform={`translate(${x} 0)`} />
      ))}
    </svg>
  );
}
