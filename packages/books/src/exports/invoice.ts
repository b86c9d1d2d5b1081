import { XMLBuilder } from 'fast-xml-parser';
import type { Bill, BillLine } from '../bill/draw-bill.ts';
import { decimalText } from './money-text.ts';

export interface Party {
  readonly name: string;
  /** ISO 3166-1, two capitals */
  readonly country: string;
  readonly street: string;
  readonly city: string;
  readonly postcode: string;
  readonly taxNumber: string | null;
}

export interface InvoiceFacts {
  readonly number: number;
  readonly issuedOn: string;
  readonly dueOn: string;
  readonly currency: string;
  readonly orderNumber: number;
  readonly seller: Party;
  readonly buyer: Party;
  readonly bill: Bill;
  readonly paidMinor: number;
}

const namespaces = {
  '@xmlns': 'urn:oasis:names:specification:ubl:schema:xsd:Invoice-2',
  '@xmlns:cac': 'urn:oasis:names:specification:ubl:schema:xsd:CommonAggregateComponents-2',
  '@xmlns:cbc': 'urn:oasis:names:specification:ubl:schema:xsd:CommonBasicComponents-2',
};

const writer = new XMLBuilder({
  attributeNamePrefix: '@',
  textNodeName: '#',
  ignoreAttributes: false,
  format: true,
});

/** UN/ECE Recommendation 20. */
const unitCodes = { kg: 'KGM', g: 'GRM', lb: 'LBR', oz: 'ONZ' } as const;

const party = ({ name, country, street, city, postcode, taxNumber }: Party) => ({
  'cac:Party': {
    'cac:PartyName': { 'cbc:Name': name },
    'cac:PostalAddress': {
      'cbc:StreetName': street,
      'cbc:CityName': city,
      'cbc:PostalZone': postcode,
      'cac:Country': { 'cbc:IdentificationCode': country },
    },
    ...(taxNumber === null
      ? {}
      : { 'cac:PartyTaxScheme': { 'cbc:CompanyID': taxNumber, 'cac:TaxScheme': { 'cbc:ID': 'VAT' } } }),
    'cac:PartyLegalEntity': { 'cbc:RegistrationName': name },
  },
});

const percent = (ratePpm: number): string => String(ratePpm / 10_000);

/** Standard rate, or zero rated (UNCL 5305). */
const category = (ratePpm: number) => ({
  'cbc:ID': ratePpm === 0 ? 'Z' : 'S',
  'cbc:Percent': percent(ratePpm),
  'cac:TaxScheme': { 'cbc:ID': 'VAT' },
});

/** A price by weight is for one unit; anything else is the amount itself, for one. */
function line(each: BillLine, place: number, { bill, currency }: InvoiceFacts) {
  const money = (minor: number) => ({ '@currencyID': currency, '#': decimalText(minor, currency) });
  const rate = bill.taxes.find(({ taxClass }) => taxClass === each.taxClass)?.ratePpm ?? 0;
  const byWeight = each.weight !== null && each.price !== null && each.weight.unit === each.price.per;
  // A price is never negative (BR-27): what is not charged is a negative quantity.
  const quantity = byWeight
    ? { '@unitCode': unitCodes[each.weight.unit], '#': each.weight.text }
    : { '@unitCode': 'C62', '#': each.amountMinor < 0 ? '-1' : '1' };
  const price = byWeight ? each.price.minor : Math.abs(each.amountMinor);
  return {
    'cbc:ID': String(place + 1),
    'cbc:InvoicedQuantity': quantity,
    'cbc:LineExtensionAmount': money(each.amountMinor),
    'cac:Item': { 'cbc:Name': each.name, 'cac:ClassifiedTaxCategory': category(rate) },
    'cac:Price': { 'cbc:PriceAmount': money(price) },
  };
}

/**
 * An invoice in the Universal Business Language 2.1 (OASIS), with the fields that the European norm EN 16931 asks for.
 * For business customers; it says what the stored bill says, line by line.
 */
export function ublInvoice(facts: InvoiceFacts): string {
  const { bill, currency, paidMinor } = facts;
  const money = (minor: number) => ({ '@currencyID': currency, '#': decimalText(minor, currency) });
  const root = {
    Invoice: {
      ...namespaces,
      'cbc:CustomizationID': 'urn:cen.eu:en16931:2017',
      'cbc:ID': String(facts.number),
      'cbc:IssueDate': facts.issuedOn,
      'cbc:DueDate': facts.dueOn,
      'cbc:InvoiceTypeCode': '380',
      'cbc:DocumentCurrencyCode': currency,
      'cac:OrderReference': { 'cbc:ID': String(facts.orderNumber) },
      'cac:AccountingSupplierParty': party(facts.seller),
      'cac:AccountingCustomerParty': party(facts.buyer),
      'cac:TaxTotal': {
        'cbc:TaxAmount': money(bill.taxMinor),
        'cac:TaxSubtotal': bill.taxes.map(({ netMinor, taxMinor, ratePpm }) => ({
          'cbc:TaxableAmount': money(netMinor),
          'cbc:TaxAmount': money(taxMinor),
          'cac:TaxCategory': category(ratePpm),
        })),
      },
      'cac:LegalMonetaryTotal': {
        'cbc:LineExtensionAmount': money(bill.netMinor),
        'cbc:TaxExclusiveAmount': money(bill.netMinor),
        'cbc:TaxInclusiveAmount': money(bill.totalMinor),
        'cbc:PrepaidAmount': money(paidMinor),
        'cbc:PayableAmount': money(bill.totalMinor - paidMinor),
      },
      'cac:InvoiceLine': bill.lines.map((each, place) => line(each, place, facts)),
    },
  };
  return `<?xml version="1.0" encoding="UTF-8"?>\n${writer.build(root)}`;
}
