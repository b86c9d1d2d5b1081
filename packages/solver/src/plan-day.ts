import { type CuttingDay, type CuttingPlan, type Goals, goalsOf, type Proof } from '@flitchbook/plan';
import { gapOf, solveByColumns } from './columns.ts';
import { compile } from './compile.ts';
import { decode } from './decode.ts';
import { dropEngine, engine } from './engine.ts';
import { Explainer } from './explain.ts';
import { buildExplicit } from './explicit.ts';
import { type Form, solveGoalByGoal } from './goal-by-goal.ts';
import { mostOf } from './most.ts';
import { buildPlain } from './plain.ts';
import type { Budget } from './price-out.ts';
import type { Decision, Problem } from './problem.ts';
import { handOut } from './read-whole.ts';
import { goalOrder, sameWorth } from './sparse-model.ts';

export interface SolveOptions {
  /** the best plan so far is returned when this has passed */
  readonly deadlineSeconds: number;
  /** a plan this close to its bound is good enough: 0.005 is half a percent */
  readonly gap: number;
  readonly seed: number;
  readonly method?: 'columns' | 'plain';
  /** seconds on any clock that runs forward */
  readonly now?: () => number;
}

interface Found {
  /** what the decision speaks of */
  readonly problem: Problem;
  readonly decision: Decision;
  readonly bound: Goals;
  /** the form that gave the plan: the plain model may find nothing in time */
  readonly method: Proof['method'];
}

/** There is always a plan; where none came in time, the first one is waited for. */
const withoutEnd = (budget: Budget): Budget => ({
  ...budget,
  secondsLeft: () => Math.max(5, budget.secondsLeft()),
});

/** Columns of an explicit form that is proven in seconds: the two sides of a hog. */
const finishable = 2200;

/** Every unit apart and everything explicit: exact, and small enough where a day is. */
function explicitForm(day: CuttingDay): Form & { readonly problem: Problem } {
  const problem = compile(day, true);
  const { model, read } = buildExplicit(problem, true);
  return { problem, model, read: (values) => handOut(problem, read(values)) };
}

async function search(problem: Problem, options: SolveOptions, budget: Budget): Promise<Found> {
  const highs = await engine();
  try {
    if (options.method === 'plain') {
      const { decision, bound } = solveGoalByGoal(highs, buildPlain(problem), budget, options.gap);
      if (decision) return { problem, decision, bound, method: 'plain' };
    }
    const columns = solveByColumns(highs, problem, budget, options.gap);
    if (columns && (gapOf(columns.goals, columns.bound) <= options.gap || budget.secondsLeft() <= 0))
      return { ...columns, problem, method: 'columns' };
    const form = explicitForm(problem.day);
    if (columns && form.model.columns > finishable) return { ...columns, problem, method: 'columns' };
    const finished = solveGoalByGoal(
      highs,
      form,
      columns ? budget : withoutEnd(budget),
      options.gap,
      columns,
    );
    const { bound, decision } = finished;
    if (decision) return { problem: form.problem, decision, bound, method: 'columns' };
    if (!columns) throw new Error('no plan was found');
    return { problem, decision: columns.decision, bound, method: 'columns' };
  } catch (fault) {
    dropEngine();
    throw fault;
  }
}

function proofOf(goals: Goals, found: Found, options: SolveOptions, seconds: number): Proof {
  const rounded = (goal: keyof Goals): number =>
    Math.max(goals[goal], Math.floor(Math.min(found.bound[goal], mostOf(found.problem, goal)) + sameWorth));
  const bound = { promised: rounded('promised'), wished: rounded('wished'), rest: rounded('rest') };
  const gap = gapOf(goals, bound);
  const proven = goalOrder.every((goal) => bound[goal] - goals[goal] <= 1);
  const status = proven ? 'optimal' : gap <= options.gap ? 'within-gap' : 'deadline';
  return { goals, bound, gap, status, method: found.method, seconds, seed: options.seed };
}

/**
 * Plans a cutting day: which operation breaks each part, how each bar is cut and who gets what, promised lines first.
 * Always answers: what can't be filled is in the plan with its reason. The same day, options and seed give the same
 * plan unless the deadline cuts the search short. Runs on the calling thread; call it from a worker.
 * @throws Error when the engine fails; the next call starts with a fresh one
 */
export async function planDay(day: CuttingDay, options: SolveOptions): Promise<CuttingPlan> {
  const now = options.now ?? (() => performance.now() / 1000);
  const began = now();
  const problem = compile(day);
  const budget: Budget = { secondsLeft: () => options.deadlineSeconds - (now() - began), seed: options.seed };
  const found: Found =
    problem.classes.length === 0
      ? {
          problem,
          decision: { units: [], assignment: { pieces: [], bulk: [] } },
          bound: { promised: 0, wished: 0, rest: 0 },
          method: options.method ?? 'columns',
        }
      : await search(problem, options, budget);
  const plan = new Explainer(problem, decode(found.problem, found.decision)).explain();
  return { ...plan, proof: proofOf(goalsOf(day, plan), found, options, now() - began) };
}
