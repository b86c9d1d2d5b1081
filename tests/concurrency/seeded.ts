/** Numbers that a seed gives again (mulberry32): whole ones from 0 up to but not including `below`. */
export function seededBelow(seed: number): (below: number) => number {
  let state = seed >>> 0;
  return (below) => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return Math.floor((((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296) * below);
  };
}

export function shuffled<T>(list: readonly T[], below: (count: number) => number): T[] {
  const all = [...list];
  for (let last = all.length - 1; last > 0; last--) {
    const other = below(last + 1);
    [all[last], all[other]] = [all[other] as T, all[last] as T];
  }
  return all;
}
