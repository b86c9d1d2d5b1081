import type { LearnedFigure } from './learn-yields.ts';

const percent = (ratio: number): string => `${Math.abs(100 * (ratio - 1)).toFixed(0)} %`;
const sidesText = (sides: number): string => (sides === 1 ? '1 side' : `${sides} sides`);

function direction({ kind, value }: Pick<LearnedFigure, 'kind' | 'value'>): string {
  if (Math.abs(value - 1) < 0.005) return 'as published';
  const [more, less] = kind === 'length' ? ['longer', 'shorter'] : ['heavier', 'lighter'];
  return `${percent(value)} ${value > 1 ? more : less} than published`;
}

const signed = (ratio: number): string => {
  const points = Math.round(100 * (ratio - 1));
  return points > 0 ? `+${points}` : `${points}`;
};

/** One learned figure in a sentence: "Belly, sheeted: this farm's run 6 % heavier than published, from 9 sides." */
export function explainFigure(figure: Omit<LearnedFigure, 'says'>, farm: string | null): string {
  const { kind, name, value, low, high, sides, setAside } = figure;
  const whose = farm === null ? "this shop's" : "this farm's";
  const aside = setAside === 0 ? '' : ` ${sidesText(setAside)} set aside as out of line with the others.`;
  if (kind === 'ribs')
    return `${name}: ${whose} have ${value.toFixed(1)} in the mean, from ${sidesText(sides)}.${aside}`;
  return `${name}: ${whose} run ${direction(figure)}, from ${sidesText(sides)}; likely ${signed(low)} to ${signed(high)} %.${aside}`;
}
