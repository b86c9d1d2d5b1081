/**
 * Splits a whole total over weights so that the parts add up to the total exactly.
 * Largest remainder; ties go to the earlier part, so the answer is the same on every run.
 * @param total whole number of 0 or more, up to 2^53 - 1
 * @param weights finite numbers of 0 or more, at least one above 0 unless the total is 0
 * @returns whole numbers, one for each weight
 * @throws RangeError on any other input
 */
export function splitExactly(total: number, weights: readonly number[]): number[] {
  if (!Number.isSafeInteger(total) || total < 0)
    throw new RangeError(`total must be a whole number of 0 or more, got ${total}`);
  const sum = weights.reduce((running, weight) => {
    if (!Number.isFinite(weight) || weight < 0)
      throw new RangeError(`weight must be finite and not negative, got ${weight}`);
    return running + weight;
  }, 0);
  if (sum === 0) {
    if (total === 0) return weights.map(() => 0);
    throw new RangeError(`nothing to split ${total} over`);
  }
  const quotas = weights.map((weight) => (total * weight) / sum);
  const parts = quotas.map(Math.floor);
  let rest = total - parts.reduce((running, part) => running + part, 0);
  const byRemainder = quotas
    .map((quota, index) => ({ index, remainder: quota - Math.floor(quota), live: (weights[index] ?? 0) > 0 }))
    .filter((entry) => entry.live)
    .sort((left, right) => right.remainder - left.remainder || left.index - right.index);
  for (let turn = 0; rest !== 0; turn++) {
    const step = Math.sign(rest);
    const { index } = byRemainder[turn % byRemainder.length] as { index: number };
    if ((parts[index] as number) + step < 0) continue;
    parts[index] = (parts[index] as number) + step;
    rest -= step;
  }
  return parts;
}
