export { checkSpecies, type SpeciesFault } from './check-species.ts';
export { hog } from './hog/hog.ts';
export { readingToGrams, type ScaleReading, type WeightUnit } from './reading.ts';
export * from './runs.ts';
export * from './side-shape.ts';
export { sources } from './sources.ts';
export * from './species.ts';
export { splitExactly } from './split-exactly.ts';
export * from './units.ts';
