import { regionsOf, regionsOfOutput } from './regions.ts';
import { allowedOperations, shareOf, stationsOf } from './side-shape.ts';
import { sources } from './sources.ts';
import type { Operation, Part, Share, SlaughterFact, Species } from './species.ts';

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
  const faults = checkShares(at, operation.outputs);
  if (!known(sources, operation.minutesSource))
    faults.push({ at, says: `no source called ${operation.minutesSource}` });
  for (const output of operation.outputs) {
    if (!known(tables[output.to], output.id))
      faults.push({ at, says: `no ${output.to} called ${output.id}` });
    if (output.needs && !known(species.bulks, output.otherwise ?? ''))
      faults.push({ at, says: `does not say as what ${output.id} counts where it is not there` });
    faults.push(...checkRegionNames(species, at, output.regions ?? []));
  }
  return faults;
}

const checkRegionNames = (species: Species, at: string, regions: readonly string[]): SpeciesFault[] =>
  regions
    .filter((region) => !known(species.regions, region))
    .map((region) => ({ at, says: `no region called ${region}` }));

/** What is made of a part lies where the part lies, and nothing of it escapes: damage must find it again below. */
function checkRegions(species: Species, part: Part): SpeciesFault[] {
  const faults = checkRegionNames(species, part.id, part.regions ?? []);
  if (part.kind === 'bar' || !part.regions) return faults;
  for (const operation of part.operations) {
    const at = `${part.id}/${operation.id}`;
    const held = new Set(
      operation.outputs.flatMap((output) => {
        const made = output.to === 'part' ? species.parts[output.id] : undefined;
        if (made) return regionsOf(made);
        return output.to === 'item'
          ? regionsOfOutput(species, part, operation, output)
          : (output.regions ?? []);
      }),
    );
    for (const region of held)
      if (!part.regions.includes(region))
        faults.push({ at, says: `makes something of ${region}, where the part is not` });
    const isDivided = operation.outputs.some(({ to }) => to === 'part');
    for (const region of part.regions)
      if (isDivided && !held.has(region)) faults.push({ at, says: `loses sight of ${region}` });
  }
  return faults;
}

function checkBar(species: Species, part: Part & { kind: 'bar' }): SpeciesFault[] {
  return part.zones.flatMap((zone) => {
    const at = `${part.id}/${zone.id}`;
    const faults = checkShares(at, [zone.mass]);
    if (!(zone.lengthMm > 0)) faults.push({ at, says: `length must be above 0, got ${zone.lengthMm}` });
    if (!known(sources, zone.lengthSource))
      faults.push({ at, says: `no source called ${zone.lengthSource}` });
    if (stationsOf(zone, species.ribs.min) < 1)
      faults.push({ at, says: `has no station on an animal of ${species.ribs.min} ribs` });
    if (new Set(zone.manners.map(({ stock }) => stock)).size < zone.manners.length)
      faults.push({ at, says: 'makes one stock in two manners' });
    for (const manner of zone.manners) {
      const inManner = `${at}/${manner.id}`;
      faults.push(...checkShares(inManner, [manner.keeps, ...manner.releases]));
      if (!known(species.stocks, manner.stock))
        faults.push({ at: inManner, says: `no stock called ${manner.stock}` });
      for (const source of [manner.lengthSource, manner.minutesSource])
        if (!known(sources, source)) faults.push({ at: inManner, says: `no source called ${source}` });
      for (const release of manner.releases) {
        const table = release.to === 'item' ? species.items : species.bulks;
        if (!known(table, release.id))
          faults.push({ at: inManner, says: `no ${release.to} called ${release.id}` });
        if (release.otherwise && !known(species.bulks, release.otherwise))
          faults.push({ at: inManner, says: `no bulk called ${release.otherwise}` });
        if (release.stationsMin && !known(sources, release.stationsSource ?? ''))
          faults.push({ at: inManner, says: `no source called ${release.stationsSource}` });
        if (release.stationsMin && !release.otherwise)
          faults.push({ at: inManner, says: 'says nothing of a shorter run' });
      }
    }
    return faults;
  });
}

const slaughterFacts: readonly SlaughterFact[] = ['skin-on', 'head', 'feet', 'organs', 'unsplit'];

/** Every way that an animal may come from slaughter. */
const everyDressing: readonly (readonly SlaughterFact[])[] = Array.from(
  { length: 2 ** slaughterFacts.length },
  (_, mask) => slaughterFacts.filter((_, bit) => (mask >> bit) % 2 === 1),
);

/** However it was dressed, each part can be broken down, and weighs the same whichever operation makes it: one id, one thing. */
function checkOneMass(species: Species, facts: readonly SlaughterFact[], made: Set<string>): SpeciesFault[] {
  const share = new Map<string, number>([[species.sideRoot, 1]]);
  const faults: SpeciesFault[] = [];
  const visit = (partId: string, trail: readonly string[]): void => {
    made.add(partId);
    const part = species.parts[partId];
    if (part?.kind !== 'primal') return;
    const operations = allowedOperations(part, { facts });
    if (!operations.some(({ onRequest }) => !onRequest))
      faults.push({
        at: partId,
        says: `has no usual operation with ${facts.join(', ') || 'no slaughter fact'}`,
      });
    for (const { id, outputs } of operations) {
      outputs.forEach((output, index) => {
        if (output.to !== 'part') return;
        if (trail.includes(output.id) || output.id === partId)
          faults.push({
            at: partId,
            says: `is made of itself: ${[...trail, partId, output.id].join(' > ')}`,
          });
        const mine = (share.get(partId) as number) * shareOf(outputs, index);
        const seen = share.get(output.id);
        if (seen !== undefined && Math.abs(seen - mine) > 1e-9)
          faults.push({
            at: `${partId}/${id}`,
            says: `makes ${output.id} weigh ${mine} of the side, elsewhere ${seen}`,
          });
        share.set(output.id, mine);
        if (seen === undefined) visit(output.id, [...trail, partId]);
      });
    }
  };
  visit(species.sideRoot, []);
  return faults;
}

function checkTree(species: Species): SpeciesFault[] {
  const unknown = species.bench
    .filter((partId) => !known(species.parts, partId))
    .map((partId) => ({ at: 'bench', says: `no part called ${partId}` }));
  const made = new Set<string>();
  const faults = everyDressing.flatMap((facts) => checkOneMass(species, facts, made));
  const idle = Object.keys(species.parts).filter((partId) => !made.has(partId));
  const distinct = new Map(faults.map((fault) => [`${fault.at} ${fault.says}`, fault]));
  return [...unknown, ...distinct.values(), ...idle.map((partId) => ({ at: partId, says: 'is never made' }))];
}

function checkSingles(species: Species): SpeciesFault[] {
  const pieces = species.singles.flatMap((single) => [single, ...(single.apart ?? [])]);
  const figures = [
    species.hangingGrams.source,
    species.ribs.source,
    species.lengthGrowth.source,
    ...pieces.map(({ source }) => source),
  ];
  return [
    ...figures
      .filter((source) => !known(sources, source))
      .map((source) => ({ at: species.id, says: `no source called ${source}` })),
    ...pieces
      .filter(({ item }) => !known(species.items, item))
      .map(({ item }) => ({ at: 'singles', says: `no item called ${item}` })),
  ];
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
  const parts = Object.values(species.parts).flatMap((part) => [
    ...checkRegions(species, part),
    ...(part.kind === 'bar'
      ? checkBar(species, part)
      : part.operations.flatMap((operation) =>
          checkOperation(species, `${part.id}/${operation.id}`, operation),
        )),
  ]);
  return [...parts, ...checkTree(species), ...checkSingles(species), ...checkCuts(species)];
}
