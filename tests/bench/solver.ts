import { availableParallelism, cpus } from 'node:os';
import { type CuttingPlan, checkPlan } from '@flitchbook/plan';
import { planDay, type SolveOptions } from '@flitchbook/solver';
import { madeDay } from '@flitchbook/test-harness/days';
import { median, readOptions } from './options.ts';

/**
 * Days of hogs with fifteen order lines to the animal, each planned by patterns and by the plain model on HiGHS with the
 * same gap and deadline, in one run. The gap is the plan's own, against its own proven bound.
 */
const options = readOptions({ animals: 0, seed: 1, runs: 5, deadline: 5 });

interface Size {
  readonly animals: number;
  readonly gap: number;
}

/** Targets of the solver: the gap to reach at each size. */
const sizes: readonly Size[] = [
  { animals: 2, gap: 0 },
  { animals: 5, gap: 0.005 },
  { animals: 10, gap: 0.005 },
  { animals: 40, gap: 0.003 },
  { animals: 80, gap: 0.002 },
  { animals: 320, gap: 0.002 },
];

interface Row {
  readonly animals: number;
  readonly lines: number;
  readonly method: string;
  readonly seconds: number;
  readonly gapPercent: number;
  readonly promised: number;
  readonly boundPromised: number;
}

async function measure({ animals, gap }: Size, method: NonNullable<SolveOptions['method']>): Promise<Row> {
  const lines = animals * 15;
  const day = madeDay({ seed: options.seed, animals, lines });
  const seconds: number[] = [];
  const plans: CuttingPlan[] = [];
  for (let run = 0; run < options.runs; run++) {
    const begun = performance.now();
    plans.push(await planDay(day, { deadlineSeconds: options.deadline, gap, seed: options.seed, method }));
    seconds.push((performance.now() - begun) / 1000);
  }
  const faults = plans.flatMap((plan) => checkPlan(day, plan));
  if (faults.length > 0) throw new Error(JSON.stringify(faults[0]));
  const of = (figure: (plan: CuttingPlan) => number): number => median(plans.map(figure));
  return {
    animals,
    lines,
    // The plain model may find nothing in time: patterns have answered for it then.
    method: plans.every(({ proof }) => proof?.method === method) ? method : `${method}: no plan in time`,
    seconds: median(seconds),
    gapPercent: 100 * of(({ proof }) => proof?.gap ?? Number.NaN),
    promised: of(({ proof }) => proof?.goals.promised ?? 0),
    boundPromised: of(({ proof }) => proof?.bound.promised ?? 0),
  };
}

const machine = `${cpus()[0]?.model}, ${availableParallelism()} cores, Node ${process.version}`;
const rows: Row[] = [];
if (!options.json)
  console.log(
    `${machine}; seed ${options.seed}, median of ${options.runs}, deadline ${options.deadline} s\n\n| animals | lines | method | s | gap % | promised | its bound |\n| --- | --- | --- | --- | --- | --- | --- |`,
  );
for (const size of sizes.filter(({ animals }) => options.animals === 0 || animals === options.animals)) {
  const byPatterns = await measure(size, 'columns');
  const byPlain = await measure(size, 'plain');
  rows.push(byPatterns, byPlain);
  if (options.json) continue;
  for (const { animals, lines, method, seconds, gapPercent, promised, boundPromised } of [
    byPatterns,
    byPlain,
  ])
    console.log(
      `| ${animals} | ${lines} | ${method} | ${seconds.toFixed(2)} | ${gapPercent.toFixed(2)} | ${promised} | ${boundPromised} |`,
    );
}
if (options.json) console.log(JSON.stringify({ machine, ...options, rows }));
