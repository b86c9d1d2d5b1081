import { type CureLimit, type CureRules, cureMethods, type Jurisdiction } from './cure-rules.ts';
import { unitedStates } from './us-cure-rules.ts';

const checkedOn = '2026-11-25';

type Figure = Pick<CureLimit, 'ppm' | 'source' | 'standing'> & Partial<CureLimit>;

const nitrite = (figure: Figure): CureLimit => ({
  methods: cureMethods,
  basis: 'ingoing',
  kind: 'at-most',
  of: 'nitrite',
  checkedOn,
  ...figure,
});

const euText = 'Regulation (EC) 1333/2008 as changed by Regulation (EU) 2023/2108, from 9 October 2025';
const ion = (ppm: number, food: string, standing: CureLimit['standing'] = 'quoted'): CureLimit =>
  nitrite({ ppm: { 'nitrite-ion': ppm }, source: `${euText}, food category ${food}`, standing });

const europeanUnion: Jurisdiction = {
  id: 'eu',
  name: 'European Union',
  says: 'Limits on nitrite added, stated as the ion. Residual limits over the shelf life come on top: enter them from the text.',
  classes: [
    {
      id: 'not-heat-treated',
      name: 'Not heat-treated',
      says: 'Raw cured meat.',
      limits: [ion(80, '08.3.1')],
    },
    { id: 'heat-treated', name: 'Heat-treated', says: 'Cooked cured meat.', limits: [ion(80, '08.3.2')] },
    {
      id: 'sterilised',
      name: 'Sterilised',
      says: 'Canned, Fo above 3.',
      limits: [ion(55, '08.3.2, sterilised')],
    },
    {
      id: 'traditional',
      name: 'Traditional named cures',
      says: 'Products the text names one by one, at about 100 to 105. The lowest stands here.',
      limits: [ion(100, '08.3.4', 'second-hand')],
    },
  ],
};

const unitedKingdom: Jurisdiction = {
  id: 'uk',
  name: 'United Kingdom',
  says: 'The older law. Ask whether it has been replaced.',
  classes: [
    {
      id: 'meat-products',
      name: 'Meat products',
      says: 'All that have no figure of their own.',
      limits: [
        nitrite({ ppm: { 'sodium-nitrite': 150 }, source: 'SI 2007/1778, schedule 1', standing: 'quoted' }),
      ],
    },
    {
      id: 'dry-cured-bacon',
      name: 'Dry-cured or Wiltshire bacon',
      says: 'Judged by what is left in the meat.',
      limits: [
        nitrite({
          basis: 'residual',
          ppm: { 'sodium-nitrite': 175 },
          source: 'SI 2007/1778, schedule 1',
          standing: 'quoted',
        }),
      ],
    },
    {
      id: 'dry-cured-ham',
      name: 'Dry-cured ham',
      says: 'Judged by what is left in the meat.',
      limits: [
        nitrite({
          basis: 'residual',
          ppm: { 'sodium-nitrite': 100 },
          source: 'SI 2007/1778, schedule 1',
          standing: 'quoted',
        }),
      ],
    },
  ],
};

const canada: Jurisdiction = {
  id: 'ca',
  name: 'Canada',
  says: 'Limits on what goes in.',
  classes: [
    {
      id: 'cured-meat',
      name: 'Cured meat',
      says: 'All but bacon.',
      limits: [
        nitrite({
          ppm: { 'sodium-nitrite': 200 },
          source: 'Canadian dry mix table, 2017, as quoted',
          standing: 'second-hand',
        }),
      ],
    },
    {
      id: 'bacon',
      name: 'Bacon',
      says: 'Side bacon by any method.',
      limits: [
        nitrite({
          ppm: { 'sodium-nitrite': 120 },
          source: 'Canadian dry mix table, 2017, as quoted',
          standing: 'second-hand',
        }),
      ],
    },
  ],
};

const brazil: Jurisdiction = {
  id: 'br',
  name: 'Brazil',
  says: 'Nitrite and nitrate together, in the finished meat.',
  classes: [
    {
      id: 'cured-meat',
      name: 'Cured meat',
      says: 'All cured meat.',
      limits: [
        nitrite({
          basis: 'residual',
          of: 'nitrite-and-nitrate',
          ppm: { 'sodium-nitrite': 150 },
          source: 'RDC 272/2019, as quoted',
          standing: 'second-hand',
        }),
      ],
    },
  ],
};

const australiaNewZealand: Jurisdiction = {
  id: 'au-nz',
  name: 'Australia and New Zealand',
  says: 'From memory: look it up before it is used.',
  classes: [
    {
      id: 'cured-meat',
      name: 'Cured meat',
      says: 'All cured meat.',
      limits: [
        nitrite({
          ppm: { 'sodium-nitrite': 125 },
          source: 'Food Standards Code, Standard 1.3.1',
          standing: 'memory',
        }),
      ],
    },
  ],
};

/** Limits collected from published texts. A shop keeps its own copy, corrected by its local code. */
export const usualCureRules: CureRules = {
  jurisdictions: [unitedStates, europeanUnion, unitedKingdom, canada, brazil, australiaNewZealand],
};
