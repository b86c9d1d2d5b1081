import type { Catalogue } from './language.ts';

const english = {
  title: 'Half or whole',
  askTheShop: 'The shop takes halves and whole animals at the counter and by telephone for now.',
};

const spanish: typeof english = {
  title: 'Medio o entero',
  askTheShop: 'De momento, los medios y los enteros se piden en la carnicería o por teléfono.',
};

export const halfWords: Catalogue<typeof english> = { english, spanish };
