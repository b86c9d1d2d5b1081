import type { Catalogue } from './language.ts';

const english = {
  title: 'What’s coming',
  lead: 'What we can still promise from the animals that hang next. It changes as people order.',
  search: 'What would you like to cook?',
  searchHint: 'Try “grill”, “pulled pork”, “stock”, or the name of a cut.',
  onlyFree: 'Only what is free right now',
  found: (count: number) => (count === 1 ? '1 cut' : `${count} cuts`),
  nothing: 'Nothing here fits those words. Try fewer letters, or a dish.',
  noDaysTitle: 'No cutting day is open',
  noDays: 'When the shop opens its next cutting day, it stands here.',
  cutOn: 'Cutting day',
  from: (farms: string) => `from ${farms}`,
  until: (when: string) => `Order until ${when}.`,
  untilClosed: 'Order until the shop closes the day.',
  animals: (count: number, name: string) =>
    `${count} ${count === 1 ? name.toLowerCase() : `${name.toLowerCase()}s`}`,
  halfOrWhole: 'Half or whole animal',
  free: 'Free right now',
  ask: 'Ask for it',
  askSays:
    'None of these is lying free in today’s plan. Ask all the same: we look whether the sides can be cut another way, and tell you yes or no at once.',
  unplanned: 'The day is being planned. Ask: the answer is yes or no at once.',
  more: (count: number, portion: string) =>
    portion === '' ? `about ${count} more` : `about ${count} more at ${portion}`,
  moreLoose: (weight: string) => `about ${weight} more`,
  sure: '“About” is today’s plan. Yours is sure once you hold it.',
  goodFor: 'Good for',
  order: (cut: string) => `Order: ${cut}`,
  unitsTurn: (unit: string) => `Show in ${unit}`,
};

const spanish: typeof english = {
  title: 'Lo que viene',
  lead: 'Lo que todavía podemos prometer de los próximos animales. Cambia según la gente va pidiendo.',
  search: '¿Qué quiere cocinar?',
  searchHint: 'Pruebe «parrilla», «carnitas», «caldo» o el nombre de un corte.',
  onlyFree: 'Solo lo que está libre ahora',
  found: (count) => (count === 1 ? '1 corte' : `${count} cortes`),
  nothing: 'Nada encaja con esas palabras. Pruebe con menos letras, o con un plato.',
  noDaysTitle: 'No hay ningún día de corte abierto',
  noDays: 'Cuando la carnicería abra el próximo día de corte, aparecerá aquí.',
  cutOn: 'Día de corte',
  from: (farms) => `de ${farms}`,
  until: (when) => `Pida hasta el ${when}.`,
  untilClosed: 'Pida hasta que la carnicería cierre el día.',
  animals: (count, name) => {
    const names: Readonly<Record<string, readonly [string, string]>> = {
      Hog: ['cerdo', 'cerdos'],
      Lamb: ['cordero', 'corderos'],
      Goat: ['cabrito', 'cabritos'],
      Beef: ['res', 'reses'],
    };
    const [one, many] = names[name] ?? [name.toLowerCase(), name.toLowerCase()];
    return `${count} ${count === 1 ? one : many}`;
  },
  halfOrWhole: 'Medio animal o entero',
  free: 'Libre ahora mismo',
  ask: 'Pregunte',
  askSays:
    'Ninguno de estos está libre en el plan de hoy. Pregunte de todos modos: miramos si las canales se pueden cortar de otra manera y le decimos sí o no en el acto.',
  unplanned: 'El día se está planeando. Pregunte: la respuesta es sí o no en el acto.',
  more: (count, portion) => (portion === '' ? `unos ${count} más` : `unos ${count} más de ${portion}`),
  moreLoose: (weight) => `unos ${weight} más`,
  sure: '«Unos» es el plan de hoy. Lo suyo es seguro cuando lo guarda.',
  goodFor: 'Bueno para',
  order: (cut) => `Pedir: ${cut}`,
  unitsTurn: (unit) => `Ver en ${unit}`,
};

export const comingWords: Catalogue<typeof english> = { english, spanish };
