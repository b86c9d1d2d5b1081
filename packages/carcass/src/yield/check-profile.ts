import type { SpeciesFault } from '../check-species.ts';
import { sources } from '../sources.ts';
import type { Species } from '../species.ts';
import { breakdownOf } from './breakdown.ts';
import type { YieldProfile } from './yield-profile.ts';

const figureFields = new Set(['value', 'mean', 'min', 'share', 'points']);

/** Every `source` and `sdSource` in a value, with the path to it, and every figure that has none. */
function* figuresOf(value: unknown, at: string): Generator<{ at: string; source: unknown }> {
  if (typeof value !== 'object' || value === null) return;
  const entries = Object.entries(value);
  const figured = entries.some(([field, inner]) => figureFields.has(field) && typeof inner === 'number');
  for (const [field, inner] of entries) {
    if (field === 'source' || field === 'sdSource') yield { at: `${at}.${field}`, source: inner };
    else yield* figuresOf(inner, at === '' ? field : `${at}.${field}`);
  }
  if (figured && !('source' in value)) yield { at, source: undefined };
}

function* idsOf(profile: YieldProfile): Generator<{ at: string; id: string }> {
  for (const { id: at, takes } of profile.dressing)
    for (const { id } of takes) yield { at: `dressing.${at}`, id };
  for (const measure of [profile.lastRibFatMm, profile.leanPercent])
    for (const { ids } of measure?.moves ?? []) for (const id of ids) yield { at: 'moves', id };
}

/** Every fault in a species' yield figures: a figure without a listed source, a name that its tree does not have. */
export function checkProfile(species: Species, profile: YieldProfile): SpeciesFault[] {
  const sourceFaults = [...figuresOf(profile, '')]
    .filter(({ source }) => typeof source !== 'string' || !Object.hasOwn(sources, source))
    .map(({ at, source }) => ({ at, says: `no source called ${source}` }));
  const breakdown = breakdownOf(species);
  const nameFaults = [...idsOf(profile)]
    .filter(({ id }) => !breakdown.held.has(id))
    .map(({ at, id }) => ({ at, says: `the usual way of cutting has no ${id}` }));
  const partFaults = Object.keys(profile.concentration.of)
    .filter((id) => species.parts[id]?.kind !== 'primal')
    .map((id) => ({ at: `concentration.${id}`, says: 'is no part that is broken down' }));
  return [...sourceFaults, ...nameFaults, ...partFaults];
}
