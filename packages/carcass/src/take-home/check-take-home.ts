import type { SpeciesFault } from '../check-species.ts';
import { sources } from '../sources.ts';
import type { Species } from '../species.ts';
import type { TakeHomeProfile } from './cutting-style.ts';

/** Every fault in what a species' customers are said to take home: a figure without a listed source, a name it lacks. */
export function checkTakeHome(species: Species, profile: TakeHomeProfile): SpeciesFault[] {
  const faults: SpeciesFault[] = [];
  const note = (at: string, says: string): void => void faults.push({ at, says });
  const ends = [species.items, species.stocks, species.bulks];
  const has = (id: string): boolean => ends.some((table) => Object.hasOwn(table, id));
  for (const { ids, source, fewestPerPound, mostPerPound } of profile.servings) {
    const at = `servings of ${ids.join(', ')}`;
    if (!Object.hasOwn(sources, source)) note(at, `no source called ${source}`);
    if (!(fewestPerPound > 0 && mostPerPound >= fewestPerPound))
      note(at, 'must go from the fewest to the most');
    for (const id of ids) if (!has(id)) note(at, `no ${id}`);
  }
  for (const [at, { source }] of Object.entries({ freezer: profile.freezer, coolBox: profile.coolBox }))
    if (!Object.hasOwn(sources, source)) note(at, `no source called ${source}`);
  for (const style of profile.styles) {
    for (const [partId, operationId] of Object.entries(style.operations)) {
      const part = species.parts[partId];
      if (part?.kind !== 'primal' || !part.operations.some(({ id }) => id === operationId))
        note(`style ${style.id}`, `no ${operationId} of ${partId}`);
    }
    for (const id of style.declines) if (!has(id)) note(`style ${style.id}`, `no ${id}`);
  }
  return faults;
}
