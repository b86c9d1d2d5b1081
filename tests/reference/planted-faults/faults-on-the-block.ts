import { type Bar, type Manner, type Primal, shapeSide, usableUmOf } from '@flitchbook/carcass';
import {
  inDay,
  inEachPiece,
  inEachRun,
  inEachSide,
  inPlan,
  type PiecePlace,
  type Planned,
  type PlantedFault,
  type RunPlace,
  speciesOf,
} from './planted.ts';

/** Moves a piece and all after it along the run, what is free kept in step. @returns false where there is no room */
function shift({ run, index }: PiecePlace, um: number): boolean {
  if (run.freeUm < um) return false;
  for (const piece of run.pieces.slice(index)) {
    piece.fromUm += um;
    piece.toUm += um;
  }
  run.freeUm -= um;
  return true;
}

const before = ({ run, index }: PiecePlace) => run.pieces[index - 1];

/** Pieces: where they lie and how large they are. */
const onBars: readonly PlantedFault[] = [
  {
    says: 'two pieces overlap by a twentieth of a millimetre',
    rule: 'P8',
    plant: inEachPiece((place) => before(place) !== undefined && shift(place, -50)),
  },
  {
    says: 'the kerf between two sawn pieces is forgotten',
    rule: 'P8',
    plant: inEachPiece((place) => {
      const kerfUm = place.piece.fromUm - (before(place)?.toUm ?? place.piece.fromUm);
      return kerfUm > 0 && shift(place, -kerfUm);
    }),
  },
  {
    says: 'a gap is left that nobody accounts for',
    rule: 'P8',
    plant: inEachPiece((place) => shift(place, 1000)),
  },
  {
    says: 'a piece begins before its run',
    rule: 'P8',
    plant: inEachPiece((place) => place.index === 0 && place.piece.fromUm >= 1000 && shift(place, -1000)),
  },
  {
    says: 'a piece reaches past the end of its bar',
    rule: 'P8',
    plant: inEachPiece(({ run, piece, index }) => {
      if (index < run.pieces.length - 1) return false;
      piece.toUm += run.freeUm + 1;
      run.freeUm = 0;
      return true;
    }),
  },
  {
    says: 'one piece more than fits is laid after the last',
    rule: 'P8',
    plant: inEachPiece(({ run, piece, index }) => {
      const lengthUm = piece.toUm - piece.fromUm;
      if (index < run.pieces.length - 1 || run.freeUm >= lengthUm) return false;
      run.pieces.push({ ...piece, pieceId: 'one too many', fromUm: piece.toUm, toUm: piece.toUm + lengthUm });
      return true;
    }),
  },
  {
    says: 'a piece is thicker than asked, its neighbours moved along',
    rule: 'P9',
    plant: inEachPiece((place) => {
      if (place.piece.portion.by !== 'thickness') return false;
      const could = shift(place, 50);
      place.piece.fromUm -= 50;
      return could;
    }),
  },
  {
    says: 'a piece is heavier than the heaviest asked',
    rule: 'P9',
    plant: inEachPiece(({ piece }) => {
      if (piece.portion.by !== 'weight') return false;
      piece.massMg = piece.portion.toGrams * 1000 + 1000;
      return true;
    }),
  },
  {
    says: 'a piece is lighter than the lightest asked',
    rule: 'P9',
    plant: inEachPiece(({ piece }) => {
      if (piece.portion.by !== 'weight') return false;
      piece.massMg = piece.portion.fromGrams * 1000 - 1000;
      return true;
    }),
  },
  {
    says: 'a piece counted in ribs has one more than it spans',
    rule: 'P9',
    plant: inEachPiece(({ piece }) => {
      if (piece.portion.by !== 'ribs') return false;
      piece.portion.ribs += 1;
      return true;
    }),
  },
  {
    says: 'a piece counted in ribs begins between two bones',
    rule: 'P9',
    plant: inEachPiece((place) => place.piece.portion.by === 'ribs' && shift(place, 1000)),
  },
  {
    says: 'bone is sawn where there is no saw',
    rule: 'P9',
    plant: inDay(({ day, plan }) => {
      const sawn = plan.sides.some(({ animalId, bars }) =>
        bars.some(({ bar, runs }) =>
          runs.some(({ stock, pieces }) => {
            const part = speciesOf(day, animalId).parts[bar] as Bar;
            const manner = part.zones.flatMap(({ manners }) => manners).find((each) => each.stock === stock);
            return manner?.tool === 'saw' && pieces.some(({ portion }) => portion.by === 'thickness');
          }),
        ),
      );
      return sawn ? [{ tools: { ...day.tools, saw: false } }] : [];
    }),
  },
  {
    says: 'a piece is of a cut that its stock does not become',
    rule: 'P10',
    plant: inEachPiece(({ side, run, piece }, { day }) => {
      const other = Object.values(speciesOf(day, side.animalId).cuts).find(
        ({ sources }) =>
          sources.some(({ from }) => from === 'stock') && !sources.some(({ id }) => id === run.stock),
      );
      if (other) piece.cut = other.id;
      return other !== undefined;
    }),
  },
  {
    says: 'what is free of a run is longer than what the pieces leave',
    rule: 'P15',
    plant: inEachRun(({ run }) => {
      run.freeUm += 50;
      return true;
    }),
  },
];

/**
 * Leaves a stretch that gives a rack of ribs one rib too few, and cuts the others in another manner. Lengths follow, so
 * that nothing is wrong but the rack.
 */
function shortenRack({ side, bar, run }: RunPlace, { day }: Planned): boolean {
  const facts = day.animals.flatMap(({ sides }) => sides).find(({ sideId }) => sideId === side.sideId);
  const [stretch] = run.stretches;
  const stretches = bar.runs.flatMap((each) => each.stretches).filter((each) => each.zone === stretch?.zone);
  if (!facts || !stretch || stretches.length > 1) return false;
  const zone = shapeSide(speciesOf(day, side.animalId), facts)
    .bars.get(bar.bar)
    ?.zones.find((each) => each.zone.id === stretch.zone);
  const manner = zone?.zone.manners.find(({ id }) => id === stretch.manner);
  const least = manner?.releases.find(({ to, stationsMin }) => to === 'item' && stationsMin)?.stationsMin;
  const other = zone?.zone.manners.find(({ id, joins }) => id !== stretch.manner && !joins);
  if (!zone?.zone.maySplit || !manner || !other || !least || stretch.toStation < least) return false;
  const station = stretch.toStation - (least - 1);
  const usable = (of: Manner, fromStation: number, toStation: number): number =>
    usableUmOf({ zone, manner: of, fromStation, toStation });
  const boneUm = usable(other, 0, station);
  const bone = {
    stock: other.stock,
    stretches: [{ ...stretch, manner: other.id, toStation: station }],
    fromUm: run.fromUm,
    toUm: run.fromUm + station * zone.pitchUm,
    usableUm: boneUm,
    pieces: [],
    freeUm: boneUm,
    freeMg: 0,
  };
  stretch.fromStation = station;
  run.fromUm = bone.toUm;
  run.usableUm += usable(manner, station, stretch.toStation) - usable(manner, 0, stretch.toStation);
  bar.runs.splice(bar.runs.indexOf(run), 0, bone);
  return true;
}

/** Zones, runs and the ribs in them. */
const onZones: readonly PlantedFault[] = [
  {
    says: 'a stretch is called by the name of another zone',
    rule: 'P6',
    plant: inEachRun(({ side, bar, run }, { day }) => {
      const { zones } = speciesOf(day, side.animalId).parts[bar.bar] as Bar;
      const [stretch] = run.stretches;
      const other = zones.find(({ id }) => id !== stretch?.zone);
      if (stretch && other) stretch.zone = other.id;
      return other !== undefined;
    }),
  },
  {
    says: 'a stretch ends a station short of its zone',
    rule: 'P6',
    plant: inEachRun(({ run }) => {
      const last = run.stretches.at(-1);
      if (last) last.toStation -= 1;
      return true;
    }),
  },
  {
    says: 'a zone is cut in a manner it does not have',
    rule: 'P6',
    plant: inEachRun(({ run }) => {
      const [stretch] = run.stretches;
      if (stretch) stretch.manner = 'torn';
      return true;
    }),
  },
  {
    says: 'a run is said to be of another stock',
    rule: 'P7',
    plant: inEachRun(({ side, run }, { day }) => {
      const other = Object.keys(speciesOf(day, side.animalId).stocks).find((stock) => stock !== run.stock);
      if (other) run.stock = other;
      return other !== undefined;
    }),
  },
  {
    says: 'a run is longer than its stations',
    rule: 'P7',
    plant: inEachRun(({ run }) => {
      run.usableUm += 25_400;
      run.freeUm += 25_400;
      return true;
    }),
  },
  {
    says: 'a rack of ribs is taken from one rib fewer than it needs',
    rule: 'P11',
    plant: inEachRun(shortenRack),
  },
];

/** Parts, what they are broken down by and what they give. */
const onParts: readonly PlantedFault[] = [
  {
    says: 'nothing says how a part is broken down',
    rule: 'P2',
    plant: (good) =>
      [0, 1, 2, 3].flatMap((nth) =>
        inEachSide((side) => {
          const part = Object.keys(side.operations)[nth];
          if (part) delete side.operations[part];
          return part !== undefined;
        })(good),
      ),
  },
  {
    says: 'a part is broken down that the cuts above it do not give',
    rule: 'P2',
    plant: inEachSide((side, { day }) => {
      const { parts } = speciesOf(day, side.animalId);
      const absent = Object.values(parts).find(
        (part): part is Primal => part.kind === 'primal' && side.operations[part.id] === undefined,
      );
      const operation = absent?.operations[0]?.id;
      if (absent && operation) side.operations[absent.id] = operation;
      return operation !== undefined;
    }),
  },
  {
    says: 'a part is broken down in a way that needs what was taken off at slaughter',
    rule: 'P3',
    plant: (good) =>
      (['skin-on', 'head', 'feet', 'organs'] as const).flatMap((fact) =>
        inDay(({ day, plan }) => {
          const needed = plan.sides.some(({ animalId, operations }) =>
            Object.entries(operations).some(([part, chosen]) =>
              (speciesOf(day, animalId).parts[part] as Primal).operations
                .find(({ id }) => id === chosen)
                ?.needs?.includes(fact),
            ),
          );
          const animals = day.animals.map((animal) => ({
            ...animal,
            sides: animal.sides.map((side) => ({
              ...side,
              facts: side.facts.filter((each) => each !== fact),
            })),
          }));
          return needed ? [{ animals }] : [];
        })(good),
      ),
  },
  {
    says: 'a part that was condemned is broken down',
    rule: 'P4',
    plant: inDay(({ day, plan }) =>
      plan.sides.flatMap(({ sideId, operations }) =>
        Object.keys(operations)
          .slice(1)
          .map((part) => ({
            animals: day.animals.map((animal) => ({
              ...animal,
              sides: animal.sides.map((side) =>
                side.sideId === sideId ? { ...side, lostParts: [part] } : side,
              ),
            })),
          })),
      ),
    ),
  },
  {
    says: 'a bar is cut twice',
    rule: 'P5',
    plant: inEachRun(({ side, bar }) => side.bars.push(bar) > 0),
  },
  {
    says: 'a bar is not cut at all',
    rule: 'P5',
    plant: inEachSide((side) => side.bars.pop() !== undefined),
  },
  {
    says: 'a part leaves a side twice',
    rule: 'P11',
    plant: inEachSide((side) => {
      const [item] = side.items;
      if (item) side.items.push({ ...item, pieceId: 'again', massMg: 0 });
      return item !== undefined;
    }),
  },
  {
    says: 'a side gives what its cuts do not',
    rule: 'P11',
    plant: inEachSide((side, { day }) => {
      const [, ...parts] = Object.keys(side.operations);
      const absent = Object.keys(speciesOf(day, side.animalId).items).find(
        (item) => !side.items.some((each) => each.item === item),
      );
      const [from] = parts;
      if (absent && from)
        side.items.push({ pieceId: 'conjured', item: absent, from, massMg: 0, owner: null });
      return absent !== undefined && from !== undefined;
    }),
  },
  {
    says: 'a head or a liver leaves an animal twice',
    rule: 'P12',
    plant: inPlan((copy) => {
      const [single] = copy.singles;
      if (single) copy.singles.push({ ...single, pieceId: 'again' });
      return single !== undefined;
    }),
  },
  {
    says: 'a single piece of an animal vanishes',
    rule: 'P12',
    plant: inPlan((copy) => copy.singles.pop() !== undefined),
  },
  {
    says: 'a single piece that was condemned is given away',
    rule: 'P12',
    plant: inDay(({ day, plan }) =>
      plan.singles.map(({ animalId, item }) => ({
        animals: day.animals.map((animal) =>
          animal.animalId === animalId ? { ...animal, lostItems: [item] } : animal,
        ),
      })),
    ),
  },
];

export const faultsOnTheBlock: readonly PlantedFault[] = [...onBars, ...onZones, ...onParts];
