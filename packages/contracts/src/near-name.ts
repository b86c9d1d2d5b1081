const bare = (name: string): string => name.toLowerCase().replace(/[^a-z0-9]+/g, '');

/** Changes of one letter (put in, left out, another, two swapped) that lead from one word to the other. */
function distance(from: string, to: string): number {
  let before: number[] = [];
  let last = Array.from({ length: to.length + 1 }, (_, at) => at);
  for (let row = 1; row <= from.length; row++) {
    const next = [row];
    for (let at = 1; at <= to.length; at++) {
      const same = from[row - 1] === to[at - 1] ? 0 : 1;
      let least = Math.min((last[at] ?? 0) + 1, (next[at - 1] ?? 0) + 1, (last[at - 1] ?? 0) + same);
      const swapped = row > 1 && at > 1 && from[row - 1] === to[at - 2] && from[row - 2] === to[at - 1];
      if (swapped) least = Math.min(least, (before[at - 2] ?? 0) + 1);
      next.push(least);
    }
    before = last;
    last = next;
  }
  return last[to.length] ?? 0;
}

const longestLookedAt = 60;

/** The known name that was most likely meant, or undefined when none is near. */
function nearName(given: string, known: readonly string[]): string | undefined {
  const mine = bare(given);
  if (mine === '' || mine.length > longestLookedAt) return undefined;
  const holds = known.filter(
    (name) => mine.length >= 3 && (bare(name).startsWith(mine) || mine.startsWith(bare(name))),
  );
  const [held] = [...holds].sort((left, right) => left.length - right.length);
  const reach = Math.max(1, Math.floor(mine.length / 3));
  const [nearest] = known
    .map((name) => ({ name, far: distance(mine, bare(name)) }))
    .filter(({ far }) => far <= reach)
    .sort((left, right) => left.far - right.far);
  return nearest?.name ?? held;
}

/** ' Maybe "thickness"?', or nothing. */
export function maybeName(given: string, known: readonly string[]): string {
  const near = nearName(given, known);
  return near === undefined ? '' : ` Maybe "${near}"?`;
}
