import type { ServingsFigure, TakeHomeProfile } from './cutting-style.ts';

const servings = (
  fewestPerPound: number,
  mostPerPound: number,
  ...ids: readonly string[]
): ServingsFigure => ({
  ids,
  fewestPerPound,
  mostPerPound,
  source: 'servings-chart',
});

/** Left behind unless somebody asks: fat, skin, bones, feet. */
const seldomTaken = [
  'leaf-fat',
  'back-fat',
  'fat-trim',
  'skin',
  'cartilage',
  'front-foot',
  'hind-foot',
] as const;
const boned = { blade: 'boned', rib: 'boned', lumbar: 'boned', sirloin: 'boned' } as const;
const boneIn = { blade: 'bone-in', rib: 'bone-in', lumbar: 'bone-in', sirloin: 'bone-in' } as const;

export const hogTakeHome: TakeHomeProfile = {
  speciesId: 'hog',
  styles: [
    {
      id: 'bone-in',
      name: 'Bone in',
      says: 'Legs in halves, butt and loin sawn, picnic whole, hocks and neck bones taken; fat, skin and feet stay.',
      operations: { ham: 'ham-halves', butt: 'butt-across', picnic: 'picnic-whole' },
      manners: boneIn,
      declines: [...seldomTaken, 'bone', 'kidney'],
    },
    {
      id: 'mixed',
      name: 'Chops and grind',
      says: 'Chops on the bone, legs in halves, picnic and trim ground; fat, skin, feet, jowls and neck bones stay.',
      operations: { ham: 'ham-halves', butt: 'butt-across', picnic: 'picnic-ground' },
      manners: boneIn,
      declines: [...seldomTaken, 'bone', 'kidney', 'neck-bones', 'jowl', 'front-hock', 'hind-hock'],
    },
    {
      id: 'boneless',
      name: 'Mostly boneless',
      says: 'Loin, butt, picnic and legs boned, ribs taken; every bone, hock, foot, jowl and all fat stays.',
      operations: { ham: 'ham-seamed', butt: 'butt-boned', picnic: 'picnic-boned' },
      manners: boned,
      declines: [
        ...seldomTaken,
        'bone',
        'kidney',
        'neck-bones',
        'jowl',
        'front-hock',
        'hind-hock',
        'outside-skirt',
      ],
    },
    {
      id: 'everything',
      name: 'Everything',
      says: 'Nothing stays behind: bones for stock, all fat, skin and feet go home too.',
      operations: { ham: 'ham-halves', butt: 'butt-across', picnic: 'picnic-whole' },
      manners: boneIn,
      declines: [],
    },
  ],
  servings: [
    servings(2.5, 3.5, 'blade-bone-in'),
    servings(
      2.5,
      2.5,
      'rib-bone-in',
      'rib-long',
      'lumbar-bone-in',
      'lumbar-with-fillet',
      'sirloin-bone-in',
      'sirloin-with-fillet',
    ),
    servings(3, 4, 'loin-boned', 'sirloin-boned', 'blade-boned'),
    servings(2, 2, 'country-ribs'),
    servings(3, 3, 'ham-whole', 'ham-rump-half', 'ham-shank-half', 'ham-rump-end', 'ham-shank-end'),
    servings(3.5, 3.5, 'ham-centre'),
    servings(4, 4, 'ham-inside', 'ham-outside', 'ham-knuckle', 'ham-rump'),
    servings(2.5, 3.5, 'butt-whole', 'butt-bone-in', 'picnic-whole'),
    servings(3.5, 4, 'butt-boneless', 'butt-braising', 'coppa', 'picnic-boneless'),
    servings(1.5, 1.5, 'back-ribs', 'front-hock', 'hind-hock'),
    servings(1.25, 1.25, 'spareribs', 'st-louis-ribs', 'rib-tips', 'rib-sheet'),
    servings(4, 4, 'tenderloin', 'trim'),
    servings(6, 6, 'belly-slab'),
    servings(5, 5, 'kidney', 'heart'),
    servings(4, 4, 'liver'),
  ],
  freezer: {
    loosestPoundsPerCubicFoot: 20,
    tightestPoundsPerCubicFoot: 40,
    source: 'freezer-reports',
  },
  coolBox: { litres: 94.6, source: 'cool-boxes' },
  lost: ['loss', 'lost'],
};
