/** Width of a letter as a share of its height, generously: text that fits by this fits in every font of the stack. */
const letterShare = 0.6;

const textWidthPx = (text: string, sizePx: number): number => text.length * sizePx * letterShare;

/** The first of several wordings that fits, or none. Put the fullest first. */
export const fitText = (wordings: readonly string[], roomPx: number, sizePx: number): string | null =>
  wordings.find((text) => textWidthPx(text, sizePx) <= roomPx) ?? null;

/** Wordings of a name from full to short: up to the first comma, then its first word. */
export const shorter = (name: string): readonly string[] => {
  const head = name.split(',')[0] ?? name;
  return [name, head, head.split(' ')[0] ?? head];
};
