import { useEffect, useRef, useState } from 'preact/hooks';

export type ScaleChoice = 'fit' | 'close';

/** Close up, an inch is a finger wide: 44 px. */
const closePxPerMm = 44 / 25.4;
const mostPxPerMm = 1.5;
/** Width of the drawing on paper, px: A4 and Letter upright, less margins. */
const paperPx = 670;

/** Scale of all bars of a day: the longest fits the width, unless a closer look is wanted. */
export function pxPerMmOf(choice: ScaleChoice, widthPx: number, longestUm: number): number {
  if (longestUm <= 0 || widthPx <= 0) return 1;
  const fit = Math.min(mostPxPerMm, widthPx / (longestUm / 1000));
  return choice === 'fit' ? fit : Math.max(fit, closePxPerMm);
}

/** The width of an element as it is laid out now; on paper, the width of the sheet. */
export function useWidth() {
  const element = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(0);
  const [onPaper, setOnPaper] = useState(false);
  useEffect(() => {
    const { current } = element;
    if (!current) return;
    const measure = (): void => setWidth(current.clientWidth);
    const observer = new ResizeObserver(measure);
    observer.observe(current);
    measure();
    const paper = matchMedia('print');
    const turn = (): void => setOnPaper(paper.matches);
    paper.addEventListener('change', turn);
    return () => {
      observer.disconnect();
      paper.removeEventListener('change', turn);
    };
  }, []);
  return { element, widthPx: onPaper ? paperPx : width, onPaper };
}
