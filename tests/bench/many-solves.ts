import { planDay } from '@flitchbook/solver';
import { tinyDay } from '../../packages/solver/src/testing/tiny-days.ts';
import { median, readOptions } from './options.ts';

/** One tiny day planned a thousand times in one process: neither memory nor time may grow after the first fifty. */
const { solves, seed } = readOptions({ solves: 1000, seed: 7 });

const day = tinyDay([{ which: 6, pieces: 3, price: 900, promised: true }]);
const block = 50;

function heldMegabytes(): string {
  globalThis.gc?.();
  const { rss, heapUsed, external, arrayBuffers } = process.memoryUsage();
  return [rss, heapUsed + external + arrayBuffers]
    .map((bytes) => (bytes / 1e6).toFixed(1))
    .join(' MB resident, ');
}

for (let done = 0; done < solves; done += block) {
  const milliseconds: number[] = [];
  for (let solve = 0; solve < block; solve++) {
    const begun = performance.now();
    await planDay(day, { deadlineSeconds: 20, gap: 0.05, seed });
    milliseconds.push(performance.now() - begun);
  }
  console.log(
    `${done + block} solves: ${heldMegabytes()} MB held, median ${median(milliseconds).toFixed(1)} ms`,
  );
}
