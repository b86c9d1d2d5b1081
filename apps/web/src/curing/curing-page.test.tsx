// @vitest-environment happy-dom
import { render } from 'preact';
import { act } from 'preact/test-utils';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { chosen, firstDraft, methodsOf, viewOf } from './curing-model.ts';
import { CuringPage } from './curing-page.tsx';

let place: HTMLElement;
beforeEach(async () => {
  place = document.body.appendChild(document.createElement('div'));
  await act(async () => {
    render(<CuringPage units={{ weightUnit: 'lb', lengthUnit: 'in' }} />, place);
  });
});
afterEach(() => {
  render(null, place);
  place.remove();
});

const said = (): string => (place.textContent ?? '').replaceAll('\u00a0', ' ');
async function type(id: string, value: string, event = 'input'): Promise<void> {
  const input = place.querySelector<HTMLInputElement>(`#${id}`)!;
  await act(async () => {
    input.value = value;
    input.dispatchEvent(new Event(event, { bubbles: true }));
  });
}

describe('the page on curing', () => {
  it('gives 10.80 g for 12.4 lb of skinless belly at 120 ppm, and 18.00 g as the most (worked out from 9 CFR 424.22(b))', () => {
    expect(said()).toContain('Cure to weigh10.80 g');
    expect(said()).toContain('At most, of this cure18.00 g');
    expect(said()).toContain('9 CFR 424.22(b)');
  });

  it('refuses what is over the limit, and shows no dose', async () => {
    await type('target', '201 ppm');
    expect(said()).toContain('Above a limit: do not use');
    expect(said()).not.toContain('Cure to weigh');
  });

  it('says at the field that 6.25 could be a percentage or a fraction, and gives no answer', async () => {
    await type('nitrite', '6.25');
    expect(place.querySelector('#nitrite-fault')!.textContent).toMatch(/must say that it is a percentage/);
    expect(place.querySelector('.cure-answer')).toBeNull();
  });

  it('asks for the pickle and the pump where the meat is pumped', async () => {
    await type('method', 'pumped', 'change');
    expect(place.querySelector('#pickle-fault')!.textContent).toMatch(/weigh the whole pickle/);
    await type('pickle', '2 lb');
    await type('uptake', '10 %');
    // 2 lb at 10 % are for 20 lb of meat: 550 ppm of that is 4.99 g, and none was entered.
    expect(said()).toContain('Look at this first');
    expect(said()).toContain('Ascorbate it needs4.99 g');
  });

  it('goes from the day it goes in to the day to look, and never says safe', async () => {
    await type('rule', 'equilibrium-bag', 'change');
    await type('start', '2026-11-26');
    expect(said()).toMatch(/Look at it on .*December 3.* at the earliest/);
    await type('thickness', '0');
    expect(said()).toContain('A thickness is a number above 0');
    expect(said()).not.toMatch(/\bsafe\b/i);
  });
});

describe('the choices', () => {
  it('offers only ways of curing that have a limit', () => {
    expect(methodsOf('us', 'ground')).toEqual(['mixed-in']);
    expect(methodsOf('us', 'bacon')).toEqual(['dry-rub', 'short-soak', 'long-soak', 'pumped']);
    expect(methodsOf('uk', 'dry-cured-bacon')).toHaveLength(5);
    expect(methodsOf('nowhere', 'bacon')).toEqual([]);
  });

  it('chooses anew what no longer fits', () => {
    expect(chosen(firstDraft, { jurisdiction: 'eu' })).toMatchObject({
      product: 'not-heat-treated',
      method: 'dry-rub',
    });
    expect(chosen(firstDraft, { product: 'ground' })).toMatchObject({
      product: 'ground',
      method: 'mixed-in',
    });
  });

  it('answers in every place, for every product and every way, or says what is missing', () => {
    for (const id of ['us', 'eu', 'uk', 'ca', 'br', 'au-nz']) {
      const view = viewOf(chosen(firstDraft, { jurisdiction: id, target: '1 ppm' }), 'in', '');
      expect(view.answer?.outcome ?? Object.keys(view.faults).join()).toMatch(/within|flagged/);
    }
  });
});
