/** What is said where a figure can hurt someone. Local law and the inspector decide. */
export interface Caution {
  readonly id: string;
  readonly says: string;
  readonly source: string;
  /** when the source was last looked at */
  readonly checkedOn: string;
}

const checkedOn = '2026-11-25';
const caution = (id: string, says: string, source: string): Caution => ({ id, says, source, checkedOn });

export const cautions = {
  cureWeigh: caution(
    'cure-weigh',
    'Weigh the cure, and type the percentage that is printed on the bag. No guessing, no spoons: two spoons of one size can differ by a fifth.',
    'FSIS Processing Inspectors’ Calculations Handbook (Directive 7620.3, 1995); NIST Handbook 44 (2023)',
  ),
  cureProduct: caution(
    'cure-product',
    'Bacon, ham and sausage each have their own limit, and so has each way of curing. Choose them before anything else.',
    '9 CFR 424.21(c) and 424.22(b)',
  ),
  cureResult: caution(
    'cure-result',
    'This is arithmetic and no approval. Hold it against your own approved recipe and rule book; above the limit set here, do not use it.',
    '9 CFR 424.21(c) and 424.22(b)',
  ),
  cureAuthority: caution(
    'cure-authority',
    'A shop that cures, smokes to keep, or packs under vacuum usually needs a variance and a written plan. Ask your authority first.',
    'FDA Food Code 3-502.11 and 3-502.12, as adopted by states',
  ),
  cureSmallBatch: caution(
    'cure-small-batch',
    'So small a dose is more than this scale can weigh well. Take a finer scale or cure more meat at once.',
    'NIST Handbook 44 (2023), 2.20, table 8: at least 20 divisions on a class III scale',
  ),
  cureSoak: caution(
    'cure-soak',
    'A short dip and a long soak are reckoned in two ways that give very different figures. Say which it was, and weigh the whole pickle.',
    'FSIS Processing Inspectors’ Calculations Handbook (Directive 7620.3, 1995), immersion',
  ),
  cureCalendar: caution(
    'cure-calendar',
    'The dates are reckoned from thickness: the earliest day to look, and no proof that the cure reached the middle. Test the middle, and keep it between 36 and 40 °F (2 and 4 °C).',
    'USDA farmers’ bulletin on pork, curing chapter; home-curing guidance quoting a university centre',
  ),
  trimApart: caution(
    'trim-apart',
    'Each animal’s trim stays apart unless you mean to mix it and its owner agreed. With any beef in it the law asks for a grinding log; pork sausage is not on that federal list.',
    '9 CFR 320.1(b)(4), effective 20 June 2016',
  ),
  readyToEat: caution(
    'ready-to-eat',
    'Pork that is eaten without cooking, such as country ham or dry sausage, needs a proven control of parasites and bacteria. Ask for a process that you can show an inspector.',
    '83 FR 25302, 31 May 2018 (which removed 9 CFR 318.10); FSIS guidance',
  ),
  allergens: caution(
    'allergens',
    'Spice and binder bags change. Read the bag in your hand, then confirm the list.',
    'FSIS and FDA on the nine major allergens; FASTER Act, 23 April 2021',
  ),
  groundCooking: caution(
    'ground-cooking',
    'Ground pork and sausage are cooked to 160 °F (71 °C) in the middle; with poultry in it 165 °F (74 °C). Use a thermometer.',
    'USDA cooking temperatures, 2011',
  ),
  lard: caution(
    'lard',
    'Name it by the fat that was used, and cool it quickly. The quality figures of the standard are for the name, and are no test for a kitchen.',
    '9 CFR 319.702',
  ),
  keepCold: caution(
    'keep-cold',
    'Storage times are guides at 40 °F (4 °C) or below. Your own package, refrigerator and process decide.',
    'FoodSafety.gov cold storage chart',
  ),
} as const satisfies Readonly<Record<string, Caution>>;
