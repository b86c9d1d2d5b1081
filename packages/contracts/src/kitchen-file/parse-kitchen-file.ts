import { readJson } from '../day-file/read-json.ts';
import { readShape } from '../shape-faults.ts';
import type { FieldFault } from '../wire/problems.ts';
import { type KitchenFile, kitchenFileShape } from './kitchen-file-shape.ts';

const limits = { length: 1_000_000, depth: 32 } as const;

function currencyOf(value: unknown): string | undefined {
  const named =
    typeof value === 'object' && value !== null && 'currency' in value ? value.currency : undefined;
  if (named === undefined) return 'USD';
  return typeof named === 'string' && /^[A-Z]{3}$/.test(named) ? named : undefined;
}

/**
 * Reads the text of a kitchen file (docs/kitchen-file.md).
 * @returns its parts, or every fault with its field and value; never throws
 */
export function parseKitchenFile(
  text: string,
): { readonly file: KitchenFile } | { readonly faults: readonly FieldFault[] } {
  const json = readJson(text, limits);
  if ('fault' in json) {
    const { line, column, found, says } = json.fault;
    return { faults: [{ at: `line ${line}, column ${column}`, value: found, says }] };
  }
  const currency = currencyOf(json.value);
  if (currency === undefined) {
    const says = 'Must be three capitals, as ISO 4217 has them: "USD".';
    return { faults: [{ at: 'currency', value: (json.value as { currency: unknown }).currency, says }] };
  }
  const read = readShape(kitchenFileShape(currency), json.value);
  return 'faults' in read ? read : { file: read.value };
}
