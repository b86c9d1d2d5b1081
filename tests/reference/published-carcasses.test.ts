import { readFileSync } from 'node:fs';
import { sources } from '@flitchbook/carcass';
import { describe, expect, it } from 'vitest';
import { publishedCarcasses } from './published-carcasses.ts';
import { compareLines, publishedCarcassesText } from './yield-table.ts';

it('docs/sources.md lists every source, by its key', () => {
  const listed = readFileSync(new URL('../../docs/sources.md', import.meta.url), 'utf8');
  expect(Object.keys(sources).filter((key) => !listed.includes(`\`${key}\``))).toEqual([]);
});

describe('the comparison with published carcasses', () => {
  it('is what docs/published-carcasses.md shows (npm run documents writes it anew)', async () => {
    await expect(publishedCarcassesText()).toMatchFileSnapshot('../../docs/published-carcasses.md');
  });

  it('covers at least eight, and explains every figure that the model does not hold', () => {
    expect(publishedCarcasses.length).toBeGreaterThanOrEqual(8);
    const unexplained = publishedCarcasses.flatMap((carcass) =>
      compareLines(carcass)
        .filter(({ held, because }) => !held && because === '')
        .map(({ name, printed, mean, span }) => `${carcass.title}: ${name} ${printed}, ${mean} (${span})`),
    );
    expect(unexplained).toEqual([]);
  });

  it('holds every line of the carcass that the shares come from', () => {
    expect(compareLines(publishedCarcasses[0]!).every(({ held }) => held)).toBe(true);
  });
});
