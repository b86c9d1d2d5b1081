import { describe, expect, it } from 'vitest';
import { checkSpecies } from './check-species.ts';
import { hog } from './hog/hog.ts';
import type { Bar, Operation, Part, Primal, Species, Zone } from './species.ts';

const withPart = (part: Part): Species => ({ ...hog, parts: { ...hog.parts, [part.id]: part } });
const primal = (id: string): Primal => hog.parts[id] as Primal;
const loin = hog.parts['loin-out'] as Bar;

const withOperation = (partId: string, at: number, change: Partial<Operation>): Species => {
  const part = primal(partId);
  const operations = part.operations.map((each, index) => (index === at ? { ...each, ...change } : each));
  return withPart({ ...part, operations });
};
const withZone = (change: Partial<Zone>): Species =>
  withPart({ ...loin, zones: loin.zones.map((zone) => (zone.id === 'rib' ? { ...zone, ...change } : zone)) });

const said = (species: Species): string =>
  checkSpecies(species)
    .map(({ at, says }) => `${at}: ${says}`)
    .join('\n');

describe('D1 to D5: the check of a species', () => {
  it('finds nothing wrong with the hog', () => {
    expect(checkSpecies(hog)).toEqual([]);
  });

  it.each<[string, Species, string]>([
    [
      'a figure without a source',
      withOperation('ham', 0, { outputs: [{ to: 'item', id: 'ham-whole', parts: 1, source: 'hearsay' }] }),
      'no source called hearsay',
    ],
    [
      'minutes without a source',
      withOperation('ham', 0, { minutesSource: 'hearsay' }),
      'no source called hearsay',
    ],
    [
      'a zone without a station on the animal of fewest ribs',
      withZone({ stations: { fromRib: 14 } }),
      'has no station on an animal of 13 ribs',
    ],
    [
      'a part of two weights',
      withOperation('leg', 2, {
        outputs: [
          { to: 'part', id: 'ham', parts: 20, source: 'nppc' },
          { to: 'item', id: 'hind-foot-long', parts: 4.25, source: 'nppc', regions: ['hind-shank'] },
        ],
      }),
      'makes ham weigh',
    ],
    [
      'a part made of itself',
      withOperation('ham-shankless', 0, {
        outputs: [{ to: 'part', id: 'ham-shankless', parts: 1, source: 'nppc' }],
      }),
      'is made of itself',
    ],
    [
      'a fact without saying what else the mass is',
      withOperation('ham', 0, {
        outputs: [{ to: 'item', id: 'ham-whole', parts: 1, source: 'nppc', needs: ['skin-on'] }],
      }),
      'does not say as what ham-whole counts',
    ],
    [
      'no usual way where a fact is missing',
      withOperation('middle', 0, { needs: ['organs'] }),
      'has no usual operation',
    ],
    [
      'damage that would escape below',
      withPart({ ...primal('belly-ribbed'), regions: ['belly', 'spare-ribs', 'cavity'] }),
      'loses sight of cavity',
    ],
    ['a part where its whole is not', withPart({ ...loin, regions: ['ham'] }), 'makes something of ham'],
    ['a part that nothing makes', withPart({ ...loin, id: 'loin-lost' }), 'is never made'],
  ])('names %s', (_, species, fault) => {
    expect(said(species)).toContain(fault);
  });
});
