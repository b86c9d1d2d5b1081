import { moneyText } from '@flitchbook/books';
import { type Portion, spanishHogNames } from '@flitchbook/carcass';
import { knownSpecies } from '@flitchbook/contracts';
import type { BillRecord, OrderRecord, Shop } from '@flitchbook/db';
import { type CuttingPlan, lengthText, weightText } from '@flitchbook/plan';
import type { MailList } from './lay-mail.ts';
import type { MailWords } from './mail-words.ts';

/** Whose words and units a list is written in. */
export interface MailVoice {
  readonly words: MailWords;
  readonly shop: Shop;
}

const cutName = (words: MailWords, speciesId: string, cut: string): string => {
  const english = knownSpecies[speciesId]?.cuts[cut]?.name ?? cut;
  return words.tag === 'es' ? (spanishHogNames.things[cut] ?? english) : english;
};

const speciesName = (words: MailWords, speciesId: string): string =>
  words.species[speciesId] ?? knownSpecies[speciesId]?.name ?? speciesId;

function portionSaid({ words, shop }: MailVoice, portion: Portion): string {
  if (portion.by === 'thickness') return lengthText(portion.um, shop);
  if (portion.by === 'ribs') return words.ribs(portion.ribs);
  if (portion.by !== 'weight') return '';
  const [from, to] = [portion.fromGrams, portion.toGrams].map((grams) => weightText(grams * 1000, shop));
  return `${from} – ${to}`;
}

const lineName = (voice: MailVoice, { speciesId, cut, portion }: OrderRecord['lines'][number]): string =>
  [cutName(voice.words, speciesId, cut), portionSaid(voice, portion)]
    .filter((text) => text !== '')
    .join(', ');

const amount = (ask: OrderRecord['lines'][number]['ask'], shop: Shop): string =>
  'pieces' in ask ? String(ask.pieces) : weightText(ask.grams * 1000, shop);

/** What was asked for, and the deposit where there is one. */
export function askedList(voice: MailVoice, order: OrderRecord): MailList {
  const { words, shop } = voice;
  const shares = order.shares.map(({ size, speciesId, instructions: { sharedWith } }) => {
    const name = words[size](speciesName(words, speciesId));
    const how = [words.ownWay, ...(sharedWith === undefined ? [] : [words.sharedWith(sharedWith)])];
    return [name, how.join(', ')] as const;
  });
  const deposit =
    order.depositMinor === 0 ? [] : [[words.deposit, moneyText(order.depositMinor, shop.currency)] as const];
  const lines = order.lines.map((line) => [lineName(voice, line), amount(line.ask, shop)] as const);
  return { title: words.ordered, rows: [...lines, ...shares, ...deposit] };
}

/** What the plan cannot give of an order any more. */
export function lackingList(voice: MailVoice, order: OrderRecord, plan: CuttingPlan): MailList {
  const { words, shop } = voice;
  const lines = order.lines.flatMap((line) => {
    const fill = plan.lines.find(({ lineId }) => lineId === line.lineId);
    if (!fill || fill.filled >= fill.asked) return [];
    const said = (count: number): string =>
      'pieces' in line.ask ? String(count) : weightText(count * 1000, shop);
    return [[lineName(voice, line), words.ofAsked(said(fill.filled), said(fill.asked))] as const];
  });
  const shares = order.shares
    .filter(({ shareId }) =>
      plan.shares.some((fill) => fill.shareId === shareId && fill.sideIds.length === 0),
    )
    .map(({ size, speciesId }) => [words[size](speciesName(words, speciesId)), words.noSide] as const);
  return { title: words.lacks, rows: [...lines, ...shares] };
}

interface PackSaid {
  readonly name: string;
  readonly net: { readonly text: string; readonly unit: string };
}

/** What is packed, as the scale showed it. */
export const packedList = ({ words }: MailVoice, packs: readonly PackSaid[]): MailList => ({
  title: `${words.weighed}: ${words.packs(packs.length)}`,
  rows: packs.map(({ name, net }) => [name, `${net.text} ${net.unit}`] as const),
});

/** What was weighed and what it comes to, to the cent that is on the bill. */
export function billList({ words, shop }: MailVoice, bill: BillRecord, dueMinor: number): MailList {
  const money = (minor: number): string => moneyText(minor, shop.currency);
  const lines = bill.lines.map(({ name, count, weight, amountMinor }) => {
    const of = weight === null && count > 1 ? `${count} × ${name}` : name;
    return [
      of,
      [...(weight ? [`${weight.text} ${weight.unit}`] : []), money(amountMinor)].join(', '),
    ] as const;
  });
  const due = dueMinor < 0 ? [words.owed, money(-dueMinor)] : [words.due, money(dueMinor)];
  return {
    title: `${words.bill} ${bill.number}, ${bill.issuedOn}`,
    rows: [...lines, [words.total, money(bill.totalMinor)], due as [string, string]],
  };
}
