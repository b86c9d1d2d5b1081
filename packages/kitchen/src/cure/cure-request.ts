/**
 * What a cure is reckoned from, as it is typed or read off a bag and a scale: every figure with its unit. The place and
 * the product come first, because nothing can be reckoned without them.
 */
export interface CureRequest {
  readonly jurisdiction: string;
  readonly product: string;
  readonly method: string;
  /** green weight, before anything goes in: "12.4 lb" */
  readonly meat: string;
  readonly skin: 'on' | 'off';
  /** of the green weight, where the skin is on and does not count: "10 %" */
  readonly skinShare?: string;
  readonly bag: Bag;
  /** what was weighed in, or the level to reach: one of the two */
  readonly cure?: string;
  readonly target?: string;
  /** what the target is stated as; the bag's own salt where left out */
  readonly targetAs?: string;
  /** pumped and soaked: the whole pickle on the scale, cure, salt and sugar in it */
  readonly pickle?: string;
  /** or the pickle before the cure goes in */
  readonly pickleBefore?: string;
  /** pumped: the pump; short soak: what the meat picked up; of green weight */
  readonly uptake?: string;
  /** to reach in what the nitrite is reckoned on; not with `pickleBefore` */
  readonly salt?: string;
  readonly sugar?: string;
  /** ascorbate or erythorbate weighed in */
  readonly ascorbate?: string;
  /** from a laboratory, stated as the residual limit is */
  readonly residual?: string;
  /** what the scale for the cure shows from one step to the next: "1 g" */
  readonly scaleDivision?: string;
}

/** What is printed on the bag. Salt is the rest where the bag does not say. */
export interface Bag {
  readonly nitrite: string;
  /** sodium-nitrite where left out */
  readonly nitriteAs?: string;
  readonly nitrate?: string;
  readonly nitrateAs?: string;
  readonly salt?: string;
  readonly sugar?: string;
}

export const cureFields: readonly (keyof CureRequest)[] = [
  'jurisdiction',
  'product',
  'method',
  'meat',
  'skin',
  'skinShare',
  'bag',
  'cure',
  'target',
  'targetAs',
  'pickle',
  'pickleBefore',
  'uptake',
  'salt',
  'sugar',
  'ascorbate',
  'residual',
  'scaleDivision',
];
