import { fromStocks, joints, looseCut, piece, ribsOf, slices, wholeCuts } from '../cut-data.ts';
import type { Cut, Item, Stock } from '../species.ts';
import { named } from '../tree-data.ts';

export const lambItems = named<Item>([
  piece('shoulder-square', 'Square shoulder', 900),
  piece('shoulder-square-short', 'Square shoulder of four ribs', 900),
  piece('shoulder-rolled', 'Rolled shoulder', 1150),
  piece('shoulder-shank-on', 'Shoulder with its shank', 880),
  piece('shoulder-neck-on', 'Shoulder with the neck', 860),
  piece('fore-shank', 'Fore shank', 800),
  piece('neck', 'Neck', 600),
  piece('neck-slices', 'Neck in slices', 650),
  piece('breast-rolled', 'Rolled breast', 700),
  piece('breast-boneless', 'Boneless breast', 600),
  piece('riblets', 'Riblets', 600),
  piece('kidney', 'Kidney', 600),
  piece('fillet', 'Fillet', 2600),
  piece('half-saddle', 'Half of a saddle', 500),
  piece('half-saddle-with-kidney', 'Half of a saddle, kidney in', 500),
  piece('leg-chump-on', 'Leg with the chump', 1150),
  piece('leg-whole', 'Whole leg', 1200),
  piece('leg-shankless', 'Short leg', 1250),
  piece('leg-boned', 'Boned leg', 1500),
  piece('leg-end', 'End of the leg', 1000),
  piece('hind-shank', 'Hind shank', 850),
  piece('chump-roast', 'Chump roast', 1400),
  piece('head', 'Head', 150),
  piece('liver', 'Liver', 500),
  piece('heart', 'Heart', 400),
  piece('caul', 'Caul', 300),
]);

export const lambStocks = named<Stock>([
  piece('rack-bone-in', 'Rack, bone in', 1900),
  piece('rack-of-8-bone-in', 'Rack of eight, bone in', 1850),
  piece('rack-long', 'Rack on long bones', 2000),
  piece('rack-eye', 'Eye of the rack', 2500),
  piece('loin-bone-in', 'Loin, bone in', 1700),
  piece('loin-boned', 'Loin, boneless', 2300),
  piece('saddle-half', 'Half of the saddle', 500),
  piece('shoulder-arm', 'Arm of the shoulder', 950),
  piece('shoulder-blade', 'Blade of the shoulder', 950),
  piece('chump-bar', 'Chump, bone in', 1350),
  piece('leg-centre', 'Centre of the leg', 1400),
]);

const oneRib = { by: 'ribs', ribs: 1 } as const;
const sevenRibs = { by: 'ribs', ribs: 7 } as const;

const portioned: readonly Cut[] = [
  fromStocks('rib-chop', 'Rib chop', 'A chop on one rib of the rack.', {
    stocks: ['rack-bone-in'],
    portions: [ribsOf(1, 2)],
    usual: oneRib,
  }),
  fromStocks('rack', 'Rack of lamb', 'Seven ribs; eight if the shoulder gives one up.', {
    stocks: ['rack-bone-in'],
    portions: [ribsOf(3, 7)],
    usual: sevenRibs,
  }),
  fromStocks('rack-of-8', 'Rack of eight', 'Eight ribs: the shoulder has one less.', {
    stocks: ['rack-of-8-bone-in'],
    portions: [ribsOf(8, 8)],
    usual: { by: 'ribs', ribs: 8 },
  }),
  fromStocks('crown', 'Crown roast', 'Both racks of one lamb bent round and tied: no rib chops are left.', {
    stocks: ['rack-bone-in'],
    portions: [ribsOf(6, 7)],
    usual: sevenRibs,
    bothSides: true,
  }),
  fromStocks('long-bone-chop', 'Long-bone chop', 'A rib chop on its whole rib. That side gives no riblets.', {
    stocks: ['rack-long'],
    portions: [ribsOf(1, 2)],
    usual: oneRib,
  }),
  joints('cannon', 'Cannon', 'The boned eye of rack or loin.', ['rack-eye', 'loin-boned'], [300, 450]),
  slices('noisette', 'Noisette', 'A slice of the boned loin.', ['loin-boned'], 31_750),
  slices('loin-chop', 'Loin chop', 'From the loin, the fillet in it.', ['loin-bone-in'], 25_400),
  fromStocks(
    'barnsley-chop',
    'Barnsley chop',
    'A double chop across both loins of an unsplit lamb, between each two bones.',
    { stocks: ['saddle-half'], portions: [ribsOf(1, 1)], usual: oneRib, bothSides: true },
  ),
  slices('arm-chop', 'Arm chop', 'From the shoulder, round bone in.', ['shoulder-arm'], 19_050),
  slices('blade-chop', 'Blade chop', 'From the shoulder, blade bone in.', ['shoulder-blade'], 19_050),
  slices('chump-chop', 'Chump chop', 'From the hip end.', ['chump-bar'], 25_400),
  slices('leg-steak', 'Leg steak', 'Across the leg, bone in; no whole leg is left.', ['leg-centre'], 19_050),
];

const saddles: readonly Cut[] = [
  {
    id: 'saddle',
    name: 'Saddle roast',
    says: 'Both loins in one, from a lamb that was not split. No loin chops are left.',
    sources: [{ from: 'item', id: 'half-saddle' }],
    portions: [{ by: 'whole' }],
    usual: { by: 'whole' },
    bothSides: true,
  },
  {
    id: 'saddle-with-kidneys',
    name: 'Saddle roast, kidneys in',
    says: 'Both loins in one with their kidneys.',
    sources: [{ from: 'item', id: 'half-saddle-with-kidney' }],
    portions: [{ by: 'whole' }],
    usual: { by: 'whole' },
    bothSides: true,
  },
];

const halves = ['half-saddle', 'half-saddle-with-kidney'];

export const lambCuts = named<Cut>([
  ...portioned,
  ...saddles,
  ...wholeCuts(Object.values(lambItems).filter(({ id }) => !halves.includes(id))),
  looseCut('ground-lamb', 'Ground lamb', 'From the trim.', 'trim'),
  looseCut('soup-bones', 'Soup bones', 'Bones for stock.', 'bone'),
]);
