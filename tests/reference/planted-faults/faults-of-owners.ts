import type { Bar, Portion, Primal } from '@flitchbook/carcass';
import { acceptable, type CarcassShare, type DemandLine, type Lock, wantsBothSides } from '@flitchbook/plan';
import { give } from '../../../packages/plan/src/test-days/busy-day.ts';
import {
  inDay,
  inEachOwned,
  inEachPiece,
  inEachRun,
  inEachSide,
  type Planned,
  type PlantedFault,
  speciesOf,
} from './planted.ts';

const askOf = ({ day }: Planned, lineId: string): DemandLine | undefined =>
  day.lines.find((line) => line.lineId === lineId);

/** Items and stocks that a line may be filled from. */
const sourcesOf = (good: Planned, line: DemandLine): readonly string[] =>
  acceptable(line)
    .flatMap(({ cut }) => good.day.species[line.speciesId]?.cuts[cut]?.sources ?? [])
    .map(({ id }) => id);

/** Every day in which one line that has pieces asks something else of them. */
const askingElse = (other: (line: DemandLine, good: Planned) => Partial<DemandLine> | undefined) =>
  inDay((good) =>
    good.plan.lines.flatMap(({ lineId, pieceIds }) => {
      const line = askOf(good, lineId);
      const change = line && pieceIds.length > 0 ? other(line, good) : undefined;
      return change
        ? [{ lines: good.day.lines.map((each) => (each === line ? { ...line, ...change } : each)) }]
        : [];
    }),
  );

/** Sides that a line has pieces of; singles belong to none. */
const sidesOfLine = ({ plan }: Planned, lineId: string) =>
  plan.sides.filter(({ items, bars }) =>
    [...items, ...bars.flatMap(({ runs }) => runs.flatMap(({ pieces }) => pieces))].some(
      ({ owner }) => owner && 'lineId' in owner && owner.lineId === lineId,
    ),
  );

const ofLines: readonly PlantedFault[] = [
  {
    says: 'a piece is given to a line that asks for something else',
    rule: 'P17',
    plant: inEachOwned((piece, good, copy) => {
      const { pieceId } = piece;
      const stock = copy.sides
        .flatMap(({ bars }) => bars.flatMap(({ runs }) => runs))
        .find(({ pieces }) => pieces.some((each) => each.pieceId === pieceId))?.stock;
      const from = 'item' in piece ? String(piece.item) : stock;
      const other = good.day.lines.find(
        (line) => 'pieces' in line.ask && !sourcesOf(good, line).includes(from ?? ''),
      );
      if (other) give(copy, piece, { lineId: other.lineId });
      return other !== undefined;
    }),
  },
  {
    says: 'a piece of the right cut is given to a line that wants it in another size',
    rule: 'P17',
    plant: inEachPiece(({ piece }, good, copy) => {
      const other = good.day.lines.find(
        (line) =>
          line.cut === piece.cut &&
          acceptable(line).every(({ portion }) => JSON.stringify(portion) !== JSON.stringify(piece.portion)),
      );
      if (other) give(copy, piece, { lineId: other.lineId });
      return other !== undefined;
    }),
  },
  {
    says: 'a piece is given to a line that the day does not have',
    rule: 'P17',
    plant: inEachOwned((piece) => {
      piece.owner = { lineId: 'nobody' };
      return true;
    }),
  },
  {
    says: 'a piece goes to the counter and the line still counts it',
    rule: 'P19',
    plant: inEachOwned((piece) => {
      const was = piece.owner;
      piece.owner = null;
      return was !== null && 'lineId' in was;
    }),
  },
  {
    says: 'a line gets more than it asks for',
    rule: 'P19',
    plant: askingElse(({ ask }) =>
      'pieces' in ask ? { ask: { pieces: ask.pieces - ask.pieces } } : undefined,
    ),
  },
  {
    says: 'a line that wants one animal has pieces of two',
    rule: 'P18',
    plant: askingElse(({ lineId }, good) => {
      const animals = new Set(sidesOfLine(good, lineId).map(({ animalId }) => animalId));
      return animals.size > 1 ? { sameAnimal: true } : undefined;
    }),
  },
  {
    says: 'a line that wants a certain animal has pieces of another',
    rule: 'P18',
    plant: askingElse(() => ({ onlyAnimal: 'another' })),
  },
  {
    says: 'a line that wants a certain hand has pieces of the other',
    rule: 'P18',
    plant: askingElse(({ lineId }, good) => {
      const [side] = sidesOfLine(good, lineId);
      const hand = good.day.animals
        .flatMap(({ sides }) => sides)
        .find(({ sideId }) => sideId === side?.sideId)?.hand;
      return hand ? { onlyHand: hand === 'left' ? 'right' : 'left' } : undefined;
    }),
  },
  {
    says: 'lines take more loose meat than there is',
    rule: 'P20',
    plant: ({ day, plan }) =>
      plan.lines
        .filter(({ bulkGrams }) => bulkGrams > 0)
        .map(({ lineId }) => {
          const all = Math.ceil(plan.sides.reduce((sum, { massMg }) => sum + massMg, 0) / 1000);
          const ask = { grams: all };
          return {
            day: {
              ...day,
              lines: day.lines.map((line) => (line.lineId === lineId ? { ...line, ask } : line)),
            },
            plan: {
              ...plan,
              lines: plan.lines.map((fill) =>
                fill.lineId === lineId
                  ? { ...fill, asked: all, filled: all, bulkGrams: all, shortfall: null }
                  : fill,
              ),
            },
          };
        }),
  },
  {
    says: 'a crown has a rack of one side and not its fellow',
    rule: 'P26',
    plant: inEachOwned((piece, good, copy) => {
      const line = piece.owner && 'lineId' in piece.owner ? askOf(good, piece.owner.lineId) : undefined;
      if (!line || !wantsBothSides(good.day, line)) return false;
      give(copy, piece, null);
      return true;
    }),
  },
];

/** Days in which the owner of a side that was cut for a share asks for something else. */
const instructingElse = (
  others: (
    share: CarcassShare,
    side: Planned['plan']['sides'][number],
    good: Planned,
  ) => readonly Partial<CarcassShare['instructions']>[],
) =>
  inDay((good) =>
    good.plan.sides.flatMap((side) => {
      const share = good.day.shares.find(({ shareId }) => shareId === side.shareId);
      return share
        ? others(share, side, good).map((more) => ({
            shares: good.day.shares.map((each) =>
              each === share ? { ...share, instructions: { ...share.instructions, ...more } } : each,
            ),
          }))
        : [];
    }),
  );

/** Another way for each part of a side that has several. */
const otherOperations = ({ day }: Planned, side: Planned['plan']['sides'][number]) =>
  Object.entries(side.operations).flatMap(([part, chosen]) => {
    const { operations } = speciesOf(day, side.animalId).parts[part] as Primal;
    const other = operations.find(({ id }) => id !== chosen);
    return other ? [{ part, operation: other.id }] : [];
  });

const otherManners = ({ day }: Planned, side: Planned['plan']['sides'][number]) =>
  side.bars.flatMap(({ bar, runs }) =>
    runs.flatMap(({ stretches }) =>
      stretches.flatMap((stretch) => {
        const { zones } = speciesOf(day, side.animalId).parts[bar] as Bar;
        const other = zones
          .find(({ id }) => id === stretch.zone)
          ?.manners.find(({ id }) => id !== stretch.manner);
        return other ? [{ zone: stretch.zone, manner: other.id }] : [];
      }),
    ),
  );

const halfInch: Portion = { by: 'thickness', um: 12_700 };

const ofShares: readonly PlantedFault[] = [
  {
    says: 'a share has lost its side',
    rule: 'P21',
    plant: inEachSide((side) => {
      const had = side.shareId !== null;
      side.shareId = null;
      return had;
    }),
  },
  {
    says: 'a half has the fellow of its side as well',
    rule: 'P21',
    plant: inEachSide((side, { day }, copy) => {
      const share = copy.shares.find(({ sideIds }) => sideIds.includes(side.sideId));
      const other = copy.sides.find(
        ({ shareId, animalId }) => shareId === null && animalId === side.animalId,
      );
      const isHalf = day.shares.find(({ shareId }) => shareId === share?.shareId)?.size === 'half';
      if (!share || !other || !isHalf) return false;
      other.shareId = share.shareId;
      share.sideIds.push(other.sideId);
      return true;
    }),
  },
  {
    says: 'a share lists a side that is not cut for it',
    rule: 'P21',
    plant: inEachSide((side, _, copy) => {
      const [share] = copy.shares;
      if (!share || side.shareId !== null) return false;
      share.sideIds = [side.sideId];
      return true;
    }),
  },
  {
    says: 'a piece of a share’s side goes to the counter',
    rule: 'P22',
    plant: inEachOwned((piece) => {
      const isOfShare = piece.owner !== null && 'shareId' in piece.owner;
      piece.owner = null;
      return isOfShare;
    }),
  },
  {
    says: 'a share takes a piece of a side that is not its own',
    rule: 'P22',
    plant: inEachOwned((piece, { day }, copy) => {
      const [share] = day.shares;
      if (!share || (piece.owner && 'shareId' in piece.owner)) return false;
      give(copy, piece, { shareId: share.shareId });
      return true;
    }),
  },
  {
    says: 'a part of a share’s side is not broken down as its owner said',
    rule: 'P23',
    plant: instructingElse(({ instructions }, side, good) =>
      otherOperations(good, side).map(({ part, operation }) => ({
        operations: { ...instructions.operations, [part]: operation },
      })),
    ),
  },
  {
    says: 'a zone of a share’s side is not cut as its owner said',
    rule: 'P23',
    plant: instructingElse(({ instructions }, side, good) =>
      otherManners(good, side).map(({ zone, manner }) => ({
        manners: { ...instructions.manners, [zone]: manner },
      })),
    ),
  },
  {
    says: 'chops of a share are not as thick as its owner said',
    rule: 'P23',
    plant: instructingElse(({ instructions }, side) =>
      side.bars
        .flatMap(({ runs }) => runs)
        .filter(({ pieces }) => pieces.length > 0)
        .map(({ stock }) => ({ portions: { ...instructions.portions, [stock]: halfInch } })),
    ),
  },
  {
    says: 'a stock of a share stays whole where its owner wants chops',
    rule: 'P23',
    plant: inEachRun(({ side, run }) => {
      if (side.shareId === null || run.pieces.length === 0) return false;
      run.pieces = [];
      run.freeUm = run.usableUm;
      return true;
    }),
  },
];

/** Days in which the butcher has settled another choice than the plan made. */
const locking = (locks: (side: Planned['plan']['sides'][number], good: Planned) => readonly Lock[]) =>
  inDay((good) =>
    good.plan.sides.flatMap((side) =>
      locks(side, good).map((lock) => ({ locks: [...good.day.locks, lock] })),
    ),
  );

const ofLocks: readonly PlantedFault[] = [
  {
    says: 'the way to break down a part is locked and another is taken',
    rule: 'P24',
    plant: locking((side, good) =>
      otherOperations(good, side).map(({ part, operation }) => ({
        lock: 'operation',
        sideId: side.sideId,
        part,
        operation,
      })),
    ),
  },
  {
    says: 'the manner of a zone is locked and another is taken',
    rule: 'P24',
    plant: locking((side, good) =>
      otherManners(good, side).map(({ zone, manner }) => ({
        lock: 'manner',
        sideId: side.sideId,
        zone,
        manner,
      })),
    ),
  },
  {
    says: 'a choice is locked for a part that the plan does away with',
    rule: 'P24',
    plant: locking((side, { day }) => {
      const absent = Object.values(speciesOf(day, side.animalId).parts).find(
        (part): part is Primal => part.kind === 'primal' && side.operations[part.id] === undefined,
      );
      const operation = absent?.operations[0]?.id;
      return absent && operation
        ? [{ lock: 'operation', sideId: side.sideId, part: absent.id, operation }]
        : [];
    }),
  },
];

export const faultsOfOwners: readonly PlantedFault[] = [...ofLines, ...ofShares, ...ofLocks];
