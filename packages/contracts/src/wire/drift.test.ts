import type { Portion, ScaleReading, SideFacts, Tools } from '@flitchbook/carcass';
import type { CarcassShare, CuttingDay, CuttingPlan, DayAnimal, DemandLine, Lock } from '@flitchbook/plan';
import { describe, expect, expectTypeOf, it } from 'vitest';
import type { z } from 'zod';
import type { portionShape, readingShape, sideFactsShape, toolsShape } from './carcass.ts';
import type {
  carcassShareShape,
  dayAnimalShape,
  demandLineShape,
  lockShape,
  TravellingDay,
} from './cutting-day.ts';
import { travellingDayShape } from './cutting-day.ts';
import { cuttingPlanShape } from './cutting-plan.ts';

/** Both sides written alike, so that only names, kinds and what may be left out are compared. */
type Plain<T> = T extends readonly (infer Item)[]
  ? readonly Plain<Item>[]
  : T extends object
    ? { readonly [Key in keyof T]: Plain<T[Key]> }
    : T;

/** True only when neither side has anything that the other lacks. */
type Same<Shape, Domain> =
  (<T>() => T extends Plain<Shape> ? 1 : 2) extends <T>() => T extends Plain<Domain> ? 1 : 2 ? true : false;

// A difference fails the type check.
const hold = <Equal extends true>(equal: Equal): void => expect(equal).toBe(true);

describe('shapes of the wire and types of the domain', () => {
  it('are the same, part by part', () => {
    hold<Same<z.infer<typeof portionShape>, Portion>>(true);
    hold<Same<z.infer<typeof readingShape>, ScaleReading>>(true);
    hold<Same<z.infer<typeof sideFactsShape>, SideFacts>>(true);
    hold<Same<z.infer<typeof toolsShape>, Tools>>(true);
    hold<Same<z.infer<typeof dayAnimalShape>, DayAnimal>>(true);
    hold<Same<z.infer<typeof demandLineShape>, DemandLine>>(true);
    hold<Same<z.infer<typeof carcassShareShape>, CarcassShare>>(true);
    hold<Same<z.infer<typeof lockShape>, Lock>>(true);
    hold<Same<TravellingDay, Omit<CuttingDay, 'species'>>>(true);
    hold<Same<z.infer<typeof cuttingPlanShape>, CuttingPlan>>(true);
  });

  it('let a domain value go out and a parsed one come in as they are', () => {
    expectTypeOf<Omit<CuttingDay, 'species'>>().toExtend<z.input<typeof travellingDayShape>>();
    expectTypeOf<CuttingPlan>().toExtend<z.input<typeof cuttingPlanShape>>();
    expectTypeOf<TravellingDay>().toExtend<Omit<CuttingDay, 'species'>>();
    expect(travellingDayShape.safeParse(undefined).success).toBe(false);
    expect(cuttingPlanShape.safeParse(undefined).success).toBe(false);
  });
});
