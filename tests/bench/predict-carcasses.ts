// npx tsx tests/bench/predict-carcasses.ts: how long 10 000 predicted hogs take. A figure to look at, never a test.
import { breakdownOf, hog, hogYields, predictYields } from '@flitchbook/carcass';

const carcasses = 10_000;
const breakdown = breakdownOf(hog);
const dressing = { skin: true, head: false, feet: true, 'leaf-fat': true };
const beliefs = {
  'as published': { shares: {}, lengths: 1 },
  'with learned figures': { shares: { 'belly-slab': 1.06, ham: 0.97, 'ham-inside': 1.05 }, lengths: 1.02 },
};

function secondsFor(belief: { shares: Record<string, number>; lengths: number }) {
  const [start, before] = [performance.now(), process.cpuUsage()];
  for (let turn = 0; turn < carcasses; turn++) {
    const known = { coldGrams: 60_000 + 5 * turn, lastRibFatMm: 10 + turn / 400, dressing };
    predictYields(breakdown, hogYields, known, belief);
  }
  const { user, system } = process.cpuUsage(before);
  return { wall: (performance.now() - start) / 1000, processor: (user + system) / 1e6 };
}

for (const [name, belief] of Object.entries(beliefs)) {
  secondsFor(belief);
  const { wall, processor } = secondsFor(belief);
  console.log(`${carcasses} hogs ${name}: ${wall.toFixed(2)} s, ${processor.toFixed(2)} s of the processor`);
}
