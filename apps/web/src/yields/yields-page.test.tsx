// @vitest-environment happy-dom
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { render } from 'preact';
import { act } from 'preact/test-utils';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { answerDraft, firstDraft, learnFromFile } from './yields-model.ts';
import { YieldsPage } from './yields-page.tsx';

const measured = readFileSync(
  join(import.meta.dirname, '../../../../examples/yields/measured-sides.json'),
  'utf8',
);

let place: HTMLElement;
beforeEach(async () => {
  place = document.body.appendChild(document.createElement('div'));
  await act(async () => {
    render(<YieldsPage units={{ weightUnit: 'lb', lengthUnit: 'in' }} />, place);
  });
});
afterEach(() => {
  render(null, place);
  place.remove();
});

const said = (): string => (place.textContent ?? '').replaceAll('\u00a0', ' ');
async function type(id: string, value: string): Promise<void> {
  const input = place.querySelector<HTMLInputElement>(`#${id}`)!;
  await act(async () => {
    input.value = value;
    input.dispatchEvent(new Event('input', { bubbles: true }));
  });
}
const rowOf = (name: string): string =>
  [...place.querySelectorAll('.yield-tree tbody tr')]
    .map((row) => (row.textContent ?? '').replaceAll('\u00a0', ' '))
    .find((text) => text.startsWith(name)) ?? '';

describe('the page on what an animal gives', () => {
  it('shows the published carcass: 22.5 lb of ham a side, and who says so', () => {
    // National Pork Producers Council: 45.0 lb of ham in 184.2.
    expect(rowOf('Fresh ham')).toMatch(/24\.4 %22\.5 lb.*National Pork Producers Council/);
    expect(said()).toContain('Stays behind: Fat trim');
  });

  it('follows what is typed, and says what is wrong with it', async () => {
    await type('weight', '92');
    expect(rowOf('Fresh ham')).toMatch(/11\.2 lb/);
    await type('weight', '900');
    expect(place.querySelector('.yield-tree')).toBeNull();
    expect(said()).toMatch(/none of a Hog/);
    await type('weight', 'NaN');
    expect(said()).toMatch(/A weight is a number above 0/);
  });

  it('gives no skin when the hog is skinned', async () => {
    expect(rowOf('Skin')).not.toBe('');
    const [skin] = place.querySelectorAll<HTMLInputElement>('.dressing input');
    await act(async () => skin!.click());
    expect(rowOf('Skin')).toBe('');
  });

  it('lists what is believed of a farm and why, from a file', async () => {
    const input = place.querySelector<HTMLInputElement>('#measured')!;
    Object.defineProperty(input, 'files', { value: [new File([measured], 'measured.json')] });
    await act(async () => {
      input.dispatchEvent(new Event('change', { bubbles: true }));
      await new Promise((resolve) => setTimeout(resolve, 20));
    });
    expect(said()).toMatch(/Belly, sheeted: this farm's run \d % heavier than published, from 9 sides/);
    expect(said()).toMatch(/bramble-10: the side does not balance/);
    expect(rowOf('Belly, sheeted')).toMatch(/this farm's run/);
    expect(place.querySelector<HTMLSelectElement>('#farm')!.value).toBe('Bramble Hollow');
  });
});

describe('its model', () => {
  it('questions a weight in the other unit', () => {
    const answer = answerDraft({ ...firstDraft('kg'), weight: '184' }, null);
    expect('warnings' in answer && answer.warnings[0]).toMatch(/Were these pounds/);
  });

  it('names the line of a file that is wrong', () => {
    const read = learnFromFile('{"measured": 1, "species": "hog",\n "sides": 3}');
    expect('faults' in read && read.faults[0]).toMatch(/^Line 2, sides: /);
  });
});
