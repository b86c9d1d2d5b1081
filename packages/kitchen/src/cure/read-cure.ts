import { minus, plus, type Ratio, ratio } from '@flitchbook/carcass';
import { FaultList, type KitchenFault } from '../faults.ts';
import { one, type Read, readMassMg, readPpm, readShare, shareText } from '../quantities.ts';
import type { CureRequest } from './cure-request.ts';
import { cureFields } from './cure-request.ts';
import {
  type CureLimit,
  type CureMethod,
  type CureRules,
  cureMethods,
  type Jurisdiction,
  type ProductClass,
} from './cure-rules.ts';
import { isNitrite, isSubstance, type Substance } from './substances.ts';

/** A request as exact numbers: milligrams, and fractions of one. */
export interface CureEntry {
  readonly jurisdiction: Jurisdiction;
  readonly product: ProductClass;
  readonly method: CureMethod;
  /** those of the class that speak of this method */
  readonly limits: readonly CureLimit[];
  readonly meat: Ratio;
  /** the meat that the limits count */
  readonly counted: Ratio;
  readonly bag: BagEntry;
  readonly cure: Ratio | null;
  readonly target: Ratio | null;
  readonly targetAs: Substance;
  readonly pickle: { readonly weight: Ratio; readonly holdsCure: boolean } | null;
  readonly uptake: Ratio | null;
  readonly salt: Ratio | null;
  readonly sugar: Ratio | null;
  readonly ascorbate: Ratio | null;
  readonly residual: Ratio | null;
  readonly scaleDivision: Ratio | null;
}

interface BagEntry {
  readonly nitrite: Ratio;
  readonly nitriteAs: Substance;
  readonly nitrate: Ratio;
  readonly nitrateAs: Substance;
  readonly salt: Ratio;
  readonly sugar: Ratio;
}

/** Entries outside are taken for a slip of the pen: no bag holds less nitrite, no pump or soak brings more or less. */
const plausible = {
  nitriteAtLeast: ratio(1, 1000),
  uptakeAtLeast: ratio(1, 100),
  uptakeAtMost: ratio(60, 100),
  skinAtMost: ratio(25, 100),
} as const;

const zero = ratio(0);
const below = (left: Ratio, right: Ratio): boolean => minus(left, right).over < 0n;

class CureReader extends FaultList {
  private quantity(at: string, text: unknown, read: (text: string) => Read): Ratio | null {
    if (text === undefined) return null;
    if (typeof text !== 'string') {
      this.add(at, text, 'must be a text with its unit, such as "6.25 %" or "12.4 lb"');
      return null;
    }
    const result = read(text);
    if ('value' in result) return result.value;
    this.add(at, text, result.says);
    return null;
  }

  share(at: string, text: unknown): Ratio | null {
    return this.quantity(at, text, readShare);
  }

  ppm(at: string, text: unknown): Ratio | null {
    return this.quantity(at, text, readPpm);
  }

  weight(at: string, text: unknown): Ratio | null {
    const value = this.quantity(at, text, readMassMg);
    if (value && value.over === 0n) this.add(at, text, 'must be above 0');
    return value;
  }

  substance(at: string, name: string | undefined, usual: Substance, nitrite: boolean): Substance {
    if (name === undefined) return usual;
    if (isSubstance(name) && isNitrite(name) === nitrite) return name;
    this.add(
      at,
      name,
      `must be sodium-${nitrite ? 'nitrite' : 'nitrate'}, potassium-${nitrite ? 'nitrite' : 'nitrate'} or ${nitrite ? 'nitrite' : 'nitrate'}-ion`,
    );
    return usual;
  }
}

interface Place {
  readonly jurisdiction: Jurisdiction;
  readonly product: ProductClass;
  readonly method: CureMethod;
  readonly limits: readonly CureLimit[];
}

const names = (list: readonly { readonly id: string }[]): string => list.map(({ id }) => id).join(', ');

/** Whether a limit can say that there is too much nitrite: what is left in the meat counts only where nothing else does. */
function decides({ of, kind, basis }: CureLimit, product: ProductClass): boolean {
  if ((of !== 'nitrite' && of !== 'nitrite-and-nitrate') || kind === 'at-least') return false;
  return (
    basis === 'ingoing' ||
    !product.limits.some((other) => other.of === 'nitrite' && other.basis === 'ingoing')
  );
}

function readPlace(reader: CureReader, request: CureRequest, rules: CureRules): Place | undefined {
  const jurisdiction = rules.jurisdictions.find(({ id }) => id === request.jurisdiction);
  if (!jurisdiction)
    return reader.add('jurisdiction', request.jurisdiction, `must be one of ${names(rules.jurisdictions)}`);
  const product = jurisdiction.classes.find(({ id }) => id === request.product);
  if (!product)
    return reader.add('product', request.product, `must be one of ${names(jurisdiction.classes)}`);
  const method = cureMethods.find((name) => name === request.method);
  if (!method) return reader.add('method', request.method, `must be one of ${cureMethods.join(', ')}`);
  const limits = product.limits.filter(({ methods }) => methods.includes(method));
  const speaks = limits.some((limit) => decides(limit, product));
  if (!speaks)
    return reader.add(
      'method',
      method,
      `has no limit for ${product.name} in ${jurisdiction.name}: ask the authority`,
    );
  return { jurisdiction, product, method, limits };
}

function readBag(reader: CureReader, request: CureRequest): BagEntry {
  const { bag } = request;
  const nitrite = reader.share('bag.nitrite', bag?.nitrite);
  if (!nitrite) {
    if (bag?.nitrite === undefined)
      reader.add(
        'bag.nitrite',
        bag?.nitrite,
        'must be the percentage printed on the bag: a cure of unknown strength is not used',
      );
  } else if (nitrite.over === 0n)
    reader.add('bag.nitrite', bag.nitrite, 'must be above 0 %: a cure of unknown strength is not used');
  else if (below(nitrite, plausible.nitriteAtLeast))
    reader.add(
      'bag.nitrite',
      bag.nitrite,
      `must be at least ${shareText(plausible.nitriteAtLeast)}: is a fraction typed as a percentage? 0.0625 of it is 6.25 %`,
    );
  const nitrate = reader.share('bag.nitrate', bag?.nitrate) ?? zero;
  const sugar = reader.share('bag.sugar', bag?.sugar) ?? zero;
  const named = plus(plus(nitrite ?? zero, nitrate), sugar);
  const salt = reader.share('bag.salt', bag?.salt) ?? (below(one, named) ? zero : minus(one, named));
  reader.need(!below(one, plus(named, salt)), 'bag', bag, 'holds more than 100 % altogether');
  return {
    nitrite: nitrite ?? one,
    nitriteAs: reader.substance('bag.nitriteAs', bag?.nitriteAs, 'sodium-nitrite', true),
    nitrate,
    nitrateAs: reader.substance('bag.nitrateAs', bag?.nitrateAs, 'sodium-nitrate', false),
    salt,
    sugar,
  };
}

function readCounted(
  reader: CureReader,
  request: CureRequest,
  meat: Ratio,
  limits: readonly CureLimit[],
): Ratio {
  reader.need(request.skin === 'on' || request.skin === 'off', 'skin', request.skin, 'must be on or off');
  if (request.skin !== 'on' || !limits.some(({ skinFree }) => skinFree)) return meat;
  if (request.skinShare === undefined) {
    reader.add(
      'skinShare',
      undefined,
      'is needed: this limit counts the weight without skin. About 10 % is quoted from the handbook; weigh your own',
    );
    return meat;
  }
  const share = reader.share('skinShare', request.skinShare) ?? zero;
  reader.need(
    !below(plausible.skinAtMost, share),
    'skinShare',
    request.skinShare,
    `must be at most ${shareText(plausible.skinAtMost)}`,
  );
  return ratio(meat.over * (share.under - share.over), meat.under * share.under);
}

const isWet = (method: CureMethod): boolean => method !== 'mixed-in' && method !== 'dry-rub';

function readPickle(reader: CureReader, request: CureRequest, method: CureMethod): CureEntry['pickle'] {
  const whole = reader.weight('pickle', request.pickle);
  const before = reader.weight('pickleBefore', request.pickleBefore);
  if (!isWet(method)) {
    for (const at of ['pickle', 'pickleBefore', 'uptake'] as const)
      reader.need(
        request[at] === undefined,
        at,
        request[at],
        `has no place where the cure is ${method === 'dry-rub' ? 'rubbed on dry' : 'mixed in'}`,
      );
    return null;
  }
  const both = request.pickle !== undefined && request.pickleBefore !== undefined;
  const none = request.pickle === undefined && request.pickleBefore === undefined;
  if (both) reader.add('pickleBefore', request.pickleBefore, 'stands beside pickle: give one of the two');
  if (none)
    reader.add(
      'pickle',
      undefined,
      'is needed: weigh the whole pickle, water, salt, sugar and cure together',
    );
  if (before) return { weight: before, holdsCure: false };
  return whole && { weight: whole, holdsCure: true };
}

function readUptake(reader: CureReader, request: CureRequest, method: CureMethod): Ratio | null {
  if (method === 'long-soak')
    reader.need(
      request.uptake === undefined,
      'uptake',
      request.uptake,
      'has no place in a long soak: meat and pickle are reckoned as one',
    );
  if (method !== 'pumped' && method !== 'short-soak') return null;
  const uptake = reader.share('uptake', request.uptake);
  if (request.uptake === undefined)
    reader.add(
      'uptake',
      undefined,
      `is needed: ${method === 'pumped' ? 'the pump' : 'what the meat picked up'}, of green weight, such as "10 %"`,
    );
  if (!uptake) return null;
  const fits = !below(uptake, plausible.uptakeAtLeast) && !below(plausible.uptakeAtMost, uptake);
  reader.need(
    fits,
    'uptake',
    request.uptake,
    `must be from ${shareText(plausible.uptakeAtLeast)} to ${shareText(plausible.uptakeAtMost)}`,
  );
  return uptake;
}

function readAmount(reader: CureReader, request: CureRequest): Pick<CureEntry, 'cure' | 'target'> {
  const cure = reader.weight('cure', request.cure);
  const target = reader.ppm('target', request.target);
  if (target) reader.need(target.over > 0n, 'target', request.target, 'must be above 0');
  if ((request.cure === undefined) === (request.target === undefined))
    reader.add(
      'cure',
      request.cure,
      'or target: give the cure that was weighed, or the level to reach, and not both',
    );
  return { cure, target };
}

function noUnknownFields(reader: CureReader, request: CureRequest): void {
  for (const name of Object.keys(request))
    if (!(cureFields as readonly string[]).includes(name))
      reader.add(name, request[name as keyof CureRequest], 'is not a field here');
}

function needRoom(reader: CureReader, request: CureRequest, entry: CureEntry): void {
  const { cure, pickle, meat } = entry;
  if (cure && pickle?.holdsCure)
    reader.need(below(cure, pickle.weight), 'cure', request.cure, 'must be less than the whole pickle');
  if (cure && !pickle) reader.need(below(cure, meat), 'cure', request.cure, 'must be less than the meat');
  if (pickle && !pickle.holdsCure)
    for (const at of ['salt', 'sugar'] as const)
      reader.need(
        request[at] === undefined,
        at,
        request[at],
        'can only be reckoned for a whole pickle: give pickle',
      );
}

/** @returns the entry as exact numbers, or every fault of it */
export function readCure(
  request: CureRequest,
  rules: CureRules,
): { readonly entry: CureEntry } | { readonly faults: readonly KitchenFault[] } {
  const reader = new CureReader();
  noUnknownFields(reader, request);
  const place = readPlace(reader, request, rules);
  const bag = readBag(reader, request);
  const meat = reader.weight('meat', request.meat);
  if (request.meat === undefined)
    reader.add('meat', undefined, 'is needed: the green weight, such as "12.4 lb"');
  if (!place || !meat) return { faults: reader.faults };
  const entry: CureEntry = {
    ...place,
    meat,
    counted: readCounted(reader, request, meat, place.limits),
    bag,
    ...readAmount(reader, request),
    targetAs: reader.substance('targetAs', request.targetAs, bag.nitriteAs, true),
    pickle: readPickle(reader, request, place.method),
    uptake: readUptake(reader, request, place.method),
    salt: reader.share('salt', request.salt),
    sugar: reader.share('sugar', request.sugar),
    ascorbate: reader.weight('ascorbate', request.ascorbate),
    residual: reader.ppm('residual', request.residual),
    scaleDivision: reader.weight('scaleDivision', request.scaleDivision),
  };
  needRoom(reader, request, entry);
  return reader.faults.length > 0 ? { faults: reader.faults } : { entry };
}
