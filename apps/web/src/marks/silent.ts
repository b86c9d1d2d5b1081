/** Drawn, not said: the same stands in words on the piece or the bar. */
export const silent = { 'aria-hidden': true } as const;
