import { expect, it } from 'vitest';
import { languageMeant } from './language.ts';

it.each([
  [null, ['es-MX', 'en'], 'spanish'],
  [null, ['fr', 'en-GB'], 'english'],
  [null, [], 'english'],
  ['english', ['es'], 'english'],
  ['klingon', ['es'], 'spanish'],
] as const)('picked %s, asked for %s: %s', (picked, asked, meant) => {
  expect(languageMeant(picked, asked)).toBe(meant);
});
