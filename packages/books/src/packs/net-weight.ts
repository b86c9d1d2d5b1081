import { readingToGrams, type ScaleReading, type WeightUnit } from '@flitchbook/carcass';
import { type Made, made, slip } from '../slips.ts';

/** A pack on the scale: everything as it was read, and the net in the unit of the gross. */
export interface NetWeight {
  readonly gross: ScaleReading;
  readonly tare: ScaleReading;
  readonly net: ScaleReading;
  readonly netGrams: number;
}

/** Units that turn into each other without a remainder: a thousandth, a sixteenth. */
const family: Readonly<Record<WeightUnit, { readonly of: 'metric' | 'pounds'; readonly size: bigint }>> = {
  kg: { of: 'metric', size: 1000n },
  g: { of: 'metric', size: 1n },
  lb: { of: 'pounds', size: 16n },
  oz: { of: 'pounds', size: 1n },
};

const decimals = 12;
const one = 10n ** BigInt(decimals);
const readable = /^\d{1,7}(\.\d{1,6})?$/;

const toTrillionths = (text: string): bigint => {
  const [whole = '0', fraction = ''] = text.split('.');
  return BigInt(whole + fraction.padEnd(decimals, '0'));
};

/** With the decimals that the scale shows, and more only where the tare has more. */
function toText(value: bigint, shown: number): string {
  const fraction = String(value % one).padStart(decimals, '0');
  const kept = Math.max(shown, fraction.replace(/0+$/, '').length);
  return `${value / one}${kept === 0 ? '' : `.${fraction.slice(0, kept)}`}`;
}

/** Net is gross less tare, in exact decimals: what is sold is never weighed with its wrap. */
export function netWeight(gross: ScaleReading, tare: ScaleReading): Made<NetWeight> {
  for (const [at, { text }] of [
    ['gross', gross],
    ['tare', tare],
  ] as const)
    if (!readable.test(text))
      return slip(`${at}.text`, text, 'must be a plain decimal number, as the scale shows it');
  const [heavy, light] = [family[gross.unit], family[tare.unit]];
  if (heavy.of !== light.of)
    return slip('tare.unit', tare.unit, `must go with ${gross.unit}: both metric, or both pounds and ounces`);
  const net = toTrillionths(gross.text) - (toTrillionths(tare.text) * light.size) / heavy.size;
  if (net < 0n)
    return slip('tare.text', tare.text, `is more than the gross weight of ${gross.text} ${gross.unit}`);
  if (net === 0n) return slip('gross.text', gross.text, 'is the tare alone: nothing is in the pack');
  const text = toText(net, gross.text.split('.')[1]?.length ?? 0);
  if (!readable.test(text))
    return slip('tare.text', tare.text, `leaves a net weight of ${text} ${gross.unit}, finer than is kept`);
  const reading = { text, unit: gross.unit };
  const netGrams = readingToGrams(reading);
  if (netGrams === 0) return slip('gross.text', gross.text, 'leaves less than half a gram');
  return made({ gross, tare, net: reading, netGrams });
}
