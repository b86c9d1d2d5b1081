/** Measures of one hog carcass in the pounds and inches of the printed equations. */
export interface RibbedMeasures {
  /** hot carcass, skin on */
  readonly hotPounds: number;
  /** fat over the loin at the tenth rib */
  readonly tenthRibFatInches: number;
  readonly loinEyeSquareInches: number;
}

export interface LeanContent {
  readonly pounds: number;
  readonly percent: number;
}

const percentOf = (pounds: number, hotPounds: number): LeanContent => ({
  pounds,
  percent: (100 * pounds) / hotPounds,
});

/** Fat-free lean of a ribbed carcass (source `slides-lean`, unrounded: with 0.5 for 0.465 it is 7 lb off at 200 lb). */
export function fatFreeLean({
  hotPounds,
  tenthRibFatInches,
  loinEyeSquareInches,
}: RibbedMeasures): LeanContent {
  return percentOf(
    8.588 + 0.465 * hotPounds - 21.896 * tenthRibFatInches + 3.005 * loinEyeSquareInches,
    hotPounds,
  );
}

/** Fat-free lean of a carcass that was not ribbed (source `slides-georgia`, printed rounded). */
export function fatFreeLeanUnribbed(hotPounds: number, lastRibFatInches: number): LeanContent {
  return percentOf(23.7 + 0.5 * hotPounds - 21.3 * lastRibFatInches, hotPounds);
}

/** 1 thin, 2 average, 3 thick. */
export type MuscleScore = 1 | 2 | 3;

/**
 * USDA grade number of a hog carcass (source `usda-grades`).
 * @returns the grade, and what the rules made of the bare equation
 */
export function porkGrade(
  lastRibFatInches: number,
  muscle: MuscleScore,
): { readonly grade: number; readonly raised: 'thin' | 'floor' | null } {
  const bare = 4 * lastRibFatInches - muscle;
  // In thousandths: 4 x 0.4 is not 1.6 in binary.
  const grade = Math.round(bare * 1000) / 1000;
  if (muscle === 1 && grade < 2) return { grade: 2, raised: 'thin' };
  return grade < 1 ? { grade: 1, raised: 'floor' } : { grade, raised: null };
}
