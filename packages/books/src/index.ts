export * from './animal/balance.ts';
export * from './animal/ladder.ts';
export * from './animal/margin.ts';
export * from './bill/account.ts';
export * from './bill/draw-bill.ts';
export * from './bill/estimate.ts';
export * from './bill/money-rules.ts';
export { calendarFeed } from './exports/calendar.ts';
export { csv } from './exports/csv.ts';
export { type Party, ublInvoice } from './exports/invoice.ts';
export * from './exports/journal.ts';
export { decimalText, moneyText } from './exports/money-text.ts';
export { hasCheckDigit, withCheckDigit } from './gs1/check-digit.ts';
export { bracketed, type Element, readElements } from './gs1/element-string.ts';
export { longDate, packElements } from './gs1/pack-elements.ts';
export { checkLayout, type RetailLayout, retailNumber } from './gs1/retail-number.ts';
export { type DrawnSymbol, drawSymbol, type SymbolKind } from './gs1/symbol.ts';
export * from './hand-over/ageing.ts';
export * from './hand-over/checklist.ts';
export * from './hand-over/no-show.ts';
export * from './hand-over/windows.ts';
export { type Label, labelOf, type PackOnLabel } from './label/label.ts';
export * from './label/lay-out.ts';
export * from './label/stock.ts';
export { type NetWeight, netWeight } from './packs/net-weight.ts';
export { packPrice, shownPrice } from './packs/pack-price.ts';
export { type PackedThing, type PackToMake, packsToMake } from './packs/packs-to-make.ts';
export {
  type BookSettings,
  exampleGtin,
  type SoldThing,
  usualBookSettings,
} from './settings/book-settings.ts';
export type { Made, Slip } from './slips.ts';
