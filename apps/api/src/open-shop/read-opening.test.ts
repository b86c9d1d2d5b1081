import { describe, expect, it } from 'vitest';
import { readOpening } from './read-opening.ts';

const words = (change: Readonly<Record<string, string>> = {}): readonly string[] =>
  Object.entries({
    shop: 'Upper Croft Meats',
    owner: 'Ida Vorst',
    email: 'ida@croft.example',
    ...change,
  }).flatMap(([name, value]) => [`--${name}`, value]);

describe('what a shop is opened with', () => {
  it('has the usual units where none are given', () => {
    expect(readOpening(words())).toEqual({
      ok: true,
      opening: {
        shop: {
          name: 'Upper Croft Meats',
          currency: 'USD',
          timeZone: 'America/New_York',
          weightUnit: 'lb',
          lengthUnit: 'in',
        },
        owner: { name: 'Ida Vorst', email: 'ida@croft.example' },
      },
    });
  });

  it.each([
    [{ email: 'ida' }, '--email: must be an e-mail address. It is "ida".'],
    [{ currency: 'USB' }, '--currency: must be a code of ISO 4217, such as USD. It is "USB".'],
    [
      { 'time-zone': 'Croft' },
      '--time-zone: must be a name of the time zone database, such as Europe/Paris. It is "Croft".',
    ],
    [{ weights: 'stone' }, '--weights: must be lb or kg. It is "stone".'],
    [{ lengths: 'ell' }, '--lengths: must be in or mm. It is "ell".'],
    [{ shop: 'A\nB' }, '--shop: must be one line of text. It is "A\\nB".'],
  ])('is refused with %j', (change, says) => {
    expect(readOpening(words(change))).toEqual({ ok: false, says: [says] });
  });

  it('names all that is missing, and a word that is none of its own', () => {
    expect(readOpening(['--shop', 'Upper Croft Meats'])).toEqual({
      ok: false,
      says: ['--owner is missing.', '--email is missing.'],
    });
    expect(readOpening([...words(), '--password', 'x'])).toMatchObject({
      ok: false,
      says: [expect.stringContaining('--password')],
    });
  });
});
