import type { BookSettings } from '@flitchbook/books';
import { usualBookSettings } from '@flitchbook/books';
import { expect, expectTypeOf, it } from 'vitest';
import type { z } from 'zod';
import { bookSettingsShape } from './book-settings.ts';

it('the settings on the wire are those of the books, and the usual ones pass', () => {
  expectTypeOf<z.output<typeof bookSettingsShape>>().toExtend<BookSettings>();
  expectTypeOf<BookSettings>().toExtend<z.input<typeof bookSettingsShape>>();
  expect(bookSettingsShape.parse(usualBookSettings)).toEqual(usualBookSettings);
  const { seller } = usualBookSettings;
  expect(
    bookSettingsShape.safeParse({ ...usualBookSettings, seller: { ...seller, country: 'Usa' } }).success,
  ).toBe(false);
});
