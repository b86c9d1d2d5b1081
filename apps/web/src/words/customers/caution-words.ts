import type { Catalogue } from './language.ts';

const english = {
  title: 'So that it does you good',
  lines: [
    {
      says: 'Chops, steaks and roasts: 145 °F (63 °C) in the middle, then let them rest 3 minutes. Ground pork and organs: 160 °F (71 °C). Use a thermometer; colour tells nothing.',
      source:
        'United States Department of Agriculture, announcement of 2011 and its cooking chart, seen in reprints',
    },
    {
      says: 'Keep it at 40 °F (4 °C) or colder, also on the way home: bring a cool box. Cook or freeze chops and roasts within 3 to 5 days, ground pork and organs within 1 to 2.',
      source: 'FoodSafety.gov, cold storage chart, seen in reprints',
    },
    {
      says: 'A fresh belly for bacon is raw meat like the rest: put it into the cure within 3 to 5 days of the packing date, or freeze it. Bacon is not ready to eat: cook it.',
      source: 'FoodSafety.gov, cold storage chart (fresh pork), seen in reprints',
    },
  ],
  defers: 'Figures for the United States. Local rules and the inspector come first.',
};

const spanish: typeof english = {
  title: 'Para que le siente bien',
  lines: [
    {
      says: 'Chuletas, filetes y asados: 63 °C (145 °F) en el centro y luego 3 minutos de reposo. Carne picada y vísceras: 71 °C (160 °F). Use un termómetro; el color no dice nada.',
      source:
        'Departamento de Agricultura de los Estados Unidos, anuncio de 2011 y su tabla de cocción, vistos en copias',
    },
    {
      says: 'Guárdelo a 4 °C (40 °F) o menos, también de camino a casa: lleve una nevera. Cocine o congele chuletas y asados en 3 a 5 días; la carne picada y las vísceras, en 1 a 2.',
      source: 'FoodSafety.gov, tabla de conservación en frío, vista en copias',
    },
    {
      says: 'La panceta fresca es carne cruda como las demás: métala en la cura en los 3 a 5 días desde la fecha de envasado, o congélela. El bacon no está listo para comer: cocínelo.',
      source: 'FoodSafety.gov, tabla de conservación en frío (cerdo fresco), vista en copias',
    },
  ],
  defers: 'Cifras para los Estados Unidos. Primero están las normas de su lugar y la inspección.',
};

export const cautionWords: Catalogue<typeof english> = { english, spanish };
