export const rule = '─'.repeat(78);

/** Lines of at most 78 characters, each with the indent. */
export function wrap(text: string, indent: string): string {
  const lines: string[] = [];
  let line = indent;
  for (const word of text.split(' ')) {
    if (line.length + word.length + 1 > 78 && line.trim() !== '') {
      lines.push(line);
      line = indent;
    }
    line = line === indent ? `${indent}${word}` : `${line} ${word}`;
  }
  return [...lines, line].join('\n');
}
