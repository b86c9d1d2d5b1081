import { hog, spanishHogNames } from '@flitchbook/carcass';
import { describe, expect, it } from 'vitest';
import { spanishSays } from '../words/customers/cut-says.ts';
import { dishes } from '../words/customers/dishes.ts';
import { cutName, findCuts } from './find-cuts.ts';

const offers = Object.values(hog.cuts).map(({ id, name, says }) => ({
  speciesId: 'hog',
  cut: id,
  name,
  says,
}));
const found = (search: string): string[] => findCuts(offers, search).map(({ cut }) => cut);

describe('search by dish, plain word or name of the trade', () => {
  it.each([
    ['pulled', 'butt-roast'],
    ['PULLED PORK', 'butt-whole'],
    ['for braising'.replace('for ', ''), 'blade-chop'],
    ['braise', 'shank-slice'],
    ['grill', 'rib-chop'],
    ['parrilla', 't-bone-chop'],
    ['sarten', 'boneless-chop'],
    ['stock', 'soup-bones'],
    ['back ribs', 'back-ribs'],
    ['solomillo', 'tenderloin'],
    ['secreto', 'secreto'],
  ])('%s finds %s', (search, cut) => {
    expect(found(search)).toContain(cut);
  });
  it('finds everything for no word and nothing for what nobody cuts', () => {
    expect(found('  ')).toHaveLength(offers.length);
    expect(found('🐖 \u202e<script>')).not.toContain('rib-chop');
    expect(found('zebra')).toEqual([]);
  });
});

it('has a Spanish name for every cut of the hog, and no word for one that is not there', () => {
  expect(offers.filter(({ cut }) => !spanishHogNames.things[cut]).map(({ cut }) => cut)).toEqual([]);
  const known = new Set(offers.map(({ cut }) => cut));
  const named = [...Object.keys(spanishSays), ...dishes.flatMap(({ cuts }) => cuts)];
  expect(named.filter((cut) => !known.has(cut))).toEqual([]);
  const { items, stocks, bulks } = hog;
  const things = new Set([...known, ...[items, stocks, bulks].flatMap((table) => Object.keys(table))]);
  expect(Object.keys(spanishHogNames.things).filter((id) => !things.has(id))).toEqual([]);
  expect(cutName({ speciesId: 'hog', cut: 'tenderloin', name: 'Tenderloin' }, 'spanish')).toBe('Solomillo');
  expect(cutName({ speciesId: 'lamb', cut: 'tenderloin', name: 'Fillet' }, 'spanish')).toBe('Fillet');
});
