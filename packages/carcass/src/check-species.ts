import { sources } from './sources.ts';
import type { Operation, Part, Share, Species } from './species.ts';

/** A fault in species data, with the place it stands. */
export interface SpeciesFault {
  readonly at: string;
  readonly says: string;
}

const known = (table: Readonly<Record<string, unknown>>, id: string): boolean => Object.hasOwn(table, id);

function checkShares(at: string, shares: readonly Share[]): SpeciesFault[] {
  const faults: SpeciesFault[] = [];
  for (const share of shares) {
    if (!(share.parts > 0) || !Number.isFinite(share.parts))
      faults.push({ at, says: `share must be above 0, got ${share.parts}` });
    if (!known(sources, share.source)) faults.push({ at, says: `no source called ${share.source}` });
  }
  return faults;
}

function checkOperation(species: Species, at: string, operation: Operation): SpeciesFault[] {
  const tables = { part: species.parts, item: species.items, bulk: species.bulks };
  const missing = operation.outputs
    .filter((output) => !known(tables[output.to], output.id))
    .map((output) => ({ at, says: `no ${output.to} called ${output.id}` }));
  return [...checkShares(at, operation.outputs), ...missing];
}

function checkBar(species: Species, part: Part & { kind: 'bar' }): SpeciesFault[] {
  return part.zones.flatMap((zone) => {
    const at = `${part.id}/${zone.id}`;
    const faults = checkShares(at, [zone.mass]);
    if (!(zone.lengthMm > 0)) faults.push({ at, says: `length must be above 0, got ${zone.lengthMm}` });
    if (!known(sources, zone.lengthSource))
      faults.push({ at, says: `no source called ${zone.lengthSource}` });
    for (const manner of zone.manners) {
      const inManner = `${at}/${manner.id}`;
      faults.push(...checkShares(inManner, [manner.keeps, ...manner.releases]));
      if (!known(species.stocks, manner.stock))
        faults.push({ at: inManner, says: `no stock called ${manner.stock}` });
      if (!known(sources, manner.lengthSource))
        faults.push({ at: inManner, says: `no source called ${manner.lengthSource}` });
      for (const release of manner.releases) {
        const table = release.to === 'item' ? species.items : species.bulks;
        if (!known(table, release.id))
          faults.push({ at: inManner, says: `no ${release.to} called ${release.id}` });
        if (release.otherwise && !known(species.bulks, release.otherwise))
          faults.push({ at: inManner, says: `no bulk called ${release.otherwise}` });
        if (release.stationsMin && !release.otherwise)
          faults.push({ at: inManner, says: 'says nothing of a shorter run' });
      }
    }
    return faults;
  });
}

/** A part must weigh the same whichever operation makes it: one id, one thing. */
function checkOneMass(species: Species): SpeciesFault[] {
  const share = new Map<string, number>([[species.sideRoot, 1]]);
  const faults: SpeciesFault[] = [];
  const visit = (partId: string, trail: readonly string[]): void => {
    if (trail.includes(partId)) {
      faults.push({ at: partId, says: `is made of itself: ${[...trail, partId].join(' > ')}` });
      return;
    }
    const part = species.parts[partId];
    if (part?.kind !== 'primal') return;
    for (const operation of part.operations) {
      const sum = operation.outputs.reduce((running, output) => running + output.parts, 0);
      for (const output of operation.outputs) {
        if (output.to !== 'part') continue;
        const mine = ((share.get(partId) as number) * output.parts) / sum;
        const seen = share.get(output.id);
        if (seen !== undefined && Math.abs(seen - mine) > 1e-9) {
          faults.push({
            at: `${partId}/${operation.id}`,
            says: `makes ${output.id} weigh ${mine} of the side, elsewhere ${seen}`,
          });
        }
        share.set(output.id, mine);
        visit(output.id, [...trail, partId]);
      }
    }
  };
  visit(species.sideRoot, []);
  const idle = Object.keys(species.parts).filter((partId) => !share.has(partId));
  return [...faults, ...idle.map((partId) => ({ at: partId, says: 'is never made' }))];
}

function checkCuts(species: Species): SpeciesFault[] {
  const tables = { item: species.items, stock: species.stocks, bulk: species.bulks };
  return Object.values(species.cuts).flatMap((cut) => {
    const faults = cut.sources
      .filter((source) => !known(tables[source.from], source.id))
      .map((source) => ({ at: cut.id, says: `no ${source.from} called ${source.id}` }));
    if (!cut.portions.some((rule) => rule.by === cut.usual.by))
      faults.push({ at: cut.id, says: `usual portion is by ${cut.usual.by}, which it does not allow` });
    return faults;
  });
}

/** Every fault in a species' data: dangling names, missing sources, shares that can't be, parts of two weights. Empty is right. */
export function checkSpecies(species: Species): SpeciesFault[] {
  const parts = Object.values(species.parts).flatMap((part) => {
    if (part.kind === 'bar') return checkBar(species, part);
    return part.operations.flatMap((operation) =>
      checkOperation(species, `${part.id}/${operation.id}`, operation),
    );
  });
  return [...parts, ...checkOneMass(species), ...checkCuts(species)];
}
