import type { Primal } from '../species.ts';
import { onRequest, operation, outputsOf, primal } from '../tree-data.ts';

/** Pounds of the reference side; what names no source of its own splits a published line. */
export const { part, item, bulk } = outputsOf('nppc-split');

/** Regions that damage may name. */
export const hogRegions = {
  neck: 'Neck',
  jowl: 'Jowl',
  butt: 'Butt',
  picnic: 'Picnic',
  'fore-shank': 'Front hock and foot',
  cavity: 'Cavity: leaf fat, kidney, skirt',
  fillet: 'Tenderloin',
  blade: 'Blade end of the loin',
  loin: 'Centre of the loin',
  sirloin: 'Sirloin',
  belly: 'Belly',
  'spare-ribs': 'Spareribs',
  ham: 'Leg',
  'hind-shank': 'Hind hock and foot',
} as const;

export const shoulderRegions = ['neck', 'jowl', 'butt', 'picnic', 'fore-shank'];

/** What two lines settle for the middle. */
export interface MiddleForm {
  /** end of part ids: nothing for the usual lines */
  readonly suffix: '' | '-from-5' | '-hipless' | '-from-5-hipless';
  readonly name: string;
  /** shoulder off between ribs 2 and 3, or 4 and 5 */
  readonly firstRib: 3 | 5;
  /** the long leg takes the sirloin and the last lumbar vertebra */
  readonly hip: 'loin' | 'leg';
}

export const usualMiddle: MiddleForm = { suffix: '', name: '', firstRib: 3, hip: 'loin' };
const from5: MiddleForm = { suffix: '-from-5', name: ', from rib 5', firstRib: 5, hip: 'loin' };
const hipless: MiddleForm = { suffix: '-hipless', name: ', without the hip', firstRib: 3, hip: 'leg' };
const both: MiddleForm = {
  suffix: '-from-5-hipless',
  name: ', from rib 5, without the hip',
  firstRib: 5,
  hip: 'leg',
};

export const middleForms: readonly MiddleForm[] = [usualMiddle, from5, hipless, both];

/** What moves with a line, pounds: two ribs of the blade end; the sirloin and one of five lumbar vertebrae, fillet apart. */
export const moves = { blade: 2.15, hip: 3.822 } as const;

export const regionsOfMiddle = ({ hip }: MiddleForm): readonly string[] => [
  'cavity',
  'fillet',
  'blade',
  'loin',
  ...(hip === 'loin' ? ['sirloin'] : []),
  'belly',
  'spare-ribs',
];

const linesOf = ({ suffix, firstRib, hip }: MiddleForm) => {
  const forward = firstRib === 3 ? 0 : moves.blade;
  const back = hip === 'loin' ? 0 : moves.hip;
  return [
    part(firstRib === 3 ? 'shoulder' : 'shoulder-long', 22.98 + forward, 'nppc-split', { cvPercent: 14 }),
    part(`middle${suffix}`, 43.97 - forward - back),
    part(hip === 'loin' ? 'leg' : 'leg-long', 24.25 + back, 'nppc-split', { cvPercent: 8 }),
    bulk('loss', 0.9, 'nppc'),
  ];
};

export const hogSide: Primal = primal('side', 'Side', Object.keys(hogRegions), [
  operation(
    'break-side',
    'Break the side',
    'Shoulder off between ribs 2 and 3, leg off just ahead of the hip; the middle stays whole.',
    6,
    linesOf(usualMiddle),
  ),
  operation(
    'shoulder-at-rib-5',
    'Break the side, shoulder long',
    'Shoulder off between ribs 4 and 5: the coppa runs long and the blade end of the loin keeps two ribs.',
    6,
    linesOf(from5),
    onRequest,
  ),
  operation(
    'leg-long',
    'Break the side, leg long',
    'Leg off ahead of the last lumbar vertebra, the sirloin with it: a long ham for the dry cure.',
    6,
    linesOf(hipless),
    onRequest,
  ),
  operation(
    'shoulder-at-rib-5-leg-long',
    'Break the side, shoulder and leg long',
    'Shoulder off between ribs 4 and 5, leg off ahead of the last lumbar vertebra.',
    6,
    linesOf(both),
    onRequest,
  ),
]);
