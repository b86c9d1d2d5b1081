const customers = (number: number): string => (number === 1 ? 'One customer is' : `${number} customers are`);

/** What the page says that watches over promises. */
export const watchWords = {
  label: 'Pages of the day',
  board: 'Board',
  title: 'Promised beyond the animals',
  pageTitle: (date: string) => `Promised beyond the animals, ${date}`,
  noPlan: 'The day has no plan yet. What is short is known once it is planned.',
  promised: 'Promises',
  wished: 'Wishes',
  settle: (number: number, date: string) =>
    `${customers(number)} promised more than the animals give. Call them before the first cut on ${date}: offer something else, another day, or the money back.`,
  nonePromised: 'Every promise has its meat.',
  wishes: (number: number) =>
    `${customers(number)} left with an open wish. Nothing was promised; a word before the cutting is kind.`,
  noneWished: 'Every wish has its meat too.',
  gets: (fill: string) => `gets ${fill}`,
  others: (names: readonly string[]) => `The same meat is wanted by ${names.join(', ')}.`,
} as const;
