import { spanishHogNames } from '@flitchbook/carcass';
import type { Catalogue } from './language.ts';

type Names = Readonly<Record<string, string>>;

/** Questions whose part has a name that only a butcher knows. What is not here has the name of the species' data. */
const englishQuestions: Names = {
  side: 'Where the side is parted',
  'upper-shoulder': 'Neck and jowl',
  'lower-shoulder': 'Front hock and foot',
  'middle-open': 'The tenderloin',
  'middle-fillet-out': 'Loin and belly',
  'middle-fillet-in': 'Loin and belly',
  'belly-ribbed': 'Belly and spareribs',
  leg: 'Back hock and foot',
  ham: 'The ham',
  blade: 'Shoulder end of the loin',
  rib: 'Rib end of the loin',
  lumbar: 'Loin end',
  sirloin: 'Hip end of the loin',
};

/** Names of primals, by the part of the side. */
export const primalNames: Catalogue<Names> = {
  english: { middle: 'Loin and belly', leg: 'Ham' },
  spanish: { shoulder: 'Paleta', middle: 'Lomo y panceta', leg: 'Pierna' },
};

/** Names of parts, zones and stretches, by id. */
export const questionNames: Catalogue<Names> = {
  english: englishQuestions,
  spanish: spanishHogNames.questions,
};

/** Names of operations and manners, by id. */
export const answerNames: Catalogue<Names> = { english: {}, spanish: spanishHogNames.answers };

/** Names of items, stretches, loose meat and cuts, by id. */
export const thingNames: Catalogue<Names> = { english: {}, spanish: spanishHogNames.things };

export const regionNames: Catalogue<Names> = {
  english: {
    neck: 'neck',
    jowl: 'jowl',
    butt: 'butt',
    picnic: 'picnic',
    'fore-shank': 'front hock and foot',
    cavity: 'leaf fat, kidney and skirt',
    fillet: 'tenderloin',
    blade: 'shoulder end of the loin',
    loin: 'centre of the loin',
    sirloin: 'hip end of the loin',
    belly: 'belly',
    'spare-ribs': 'spareribs',
    ham: 'ham',
    'hind-shank': 'back hock and foot',
  },
  spanish: {
    neck: 'cuello',
    jowl: 'papada',
    butt: 'aguja',
    picnic: 'paletilla',
    'fore-shank': 'codillo y mano delanteros',
    cavity: 'manteca, riñón y entraña',
    fillet: 'solomillo',
    blade: 'lomo del lado de la aguja',
    loin: 'centro del lomo',
    sirloin: 'lomo del lado de la cadera',
    belly: 'panceta',
    'spare-ribs': 'costillar',
    ham: 'pierna',
    'hind-shank': 'codillo y pata traseros',
  },
};
