import { yieldSources } from './yield/yield-sources.ts';

/** Where each figure in the data comes from. Marks: (derived), (memory) and (practice) say how far it can be trusted. */
export const sources: Readonly<Record<string, string>> = {
  nppc: 'National Pork Producers Council, hog carcass breakdown, 250 lb live, 184 lb carcass, as reproduced by the University of Kentucky College of Agriculture (undated). Both sides; halved here.',
  'nppc-split':
    'Division of one line of the National Pork Producers Council breakdown between the parts named here (derived: the line is kept, its parts follow weighed lists of households and growers).',
  'fat-lists':
    'Weighed lists of two halves of 127.5 lb and 48 lb (growers’ pages): leaf fat 1.1 lb, back fat 7.3 lb, bones and neck 3.7 lb a half.',
  'ears-2017': 'Weighed list of one half of 127.5 lb (grower’s page, 2017): one ear 0.6 lb.',
  oklahoma:
    'Oklahoma Department of Agriculture, Food and Forestry, hog weight brochure: 180 lb carcass to 144 lb.',
  'ahdb-fifth-quarter':
    'AHDB Pork Yield Guide, fifth quarter of a pig of 111.5 kg live: head 4.40 kg, tongue 0.45, liver 1.81, heart 0.34, caul 0.13.',
  'weighed-173':
    'Weighed list of one hog of 173 lb carcass (grower’s page): tail 1.14 lb, St Louis ribs 4.05 lb and riblets 3.44 lb a hog.',
  'jas-2016':
    'Journal of Animal Science 94:4903 (2016), tables 1 to 3: carcass length 868 mm at 103.6 kg; 432 mm of boneless loin gave 17 chops of 25.4 mm.',
  'jas-2016-derived':
    'Derived from Journal of Animal Science 94:4903 (2016): 868 mm over 23.5 vertebrae is 36.9 mm a vertebra.',
  'length-growth':
    'Derived: carcass length 787 mm at 81.8 kg (Frontiers in Genetics 2:18, 2011) and 868 mm at 103.6 kg (Journal of Animal Science 94:4903, 2016) give an exponent of 0.415.',
  'jas-2017-belly':
    'Journal of Animal Science 95:4958 (2017), table 2: belly 681.5 mm long at 94.7 kg; carried to 103.6 kg with the exponent above (707 mm).',
  'jas-1996':
    'Journal of Animal Science (January 1996), 180 loins of four suppliers: bone-in keeps 92.8 to 95.3 % in 223 to 319 s a loin; mostly boneless keeps 71.1 to 77.9 % in 453 to 631 s.',
  'herd-2011':
    'Frontiers in Genetics 2:18 (2011), table 1, 947 sides: coefficients of variation ham 8 %, loin 10 %, belly 13 %, butt 14 %, picnic 15 %, spareribs 13 %.',
  'ribs-2004':
    'Abstract on ribs and vertebrae in a Piétrain cross, 2 711 pigs: ribs 13 to 17, mean 15.5, standard deviation 0.6.',
  'imps-400':
    'USDA AMS Institutional Meat Purchase Specifications, Fresh Pork Series 400 (2014), wording seen in reproductions: back ribs at least 8 ribs, spareribs at least 11, country-style ribs 3 to 6 ribs of the blade end, loin with at least 2 sacral vertebrae; item numbers where the data has one.',
  'lamb-army':
    'Handbook on cutting lamb, prepared for the US Army: cutting test of the National Live Stock and Meat Board, per 100 lb: legs 32, shoulders 23, breasts, shanks and necks 21, loin 13, rack of 8 ribs 11; boneless loin 54 %, rack 60, shoulder 69, breast, shank and neck 38.',
  'lamb-army-split':
    'Division of one line of the US Army’s lamb cutting test between the parts named here (derived).',
  'ahdb-lamb':
    'AHDB Lamb Yield Guide, fifth quarter of a lamb of 40.05 kg live: head 1.63 kg, liver 0.69, heart 0.22, caul 0.70, kidneys 0.10.',
  'cornell-2009':
    'Cornell small ruminant extension, market kid retail cuts (2009): Boer kid of 77 lb live and 39.5 lb carcass, 31.0 lb of cuts.',
  'cornell-split':
    'Division of what Cornell’s Boer kid lost in bone, trim and shrink between its parts (derived).',
  'wsda-beef':
    'Washington State Department of Agriculture, processing percentage charts: front quarter of 140 lb: rib 12, stew 6, short ribs 4, hamburger 38, chuck 37, waste 43.',
  'wsda-split':
    'Division of the Washington front quarter between the parts named here (derived: its lines are kept).',
  'hanger-800': 'News interview with a butcher: a hanger of about 1.5 lb from a beast of 800 lb.',
  practice: 'Common practice, no published source.',
  memory: 'From memory, unverified: to be weighed by the shop.',
  ...yieldSources,
};
