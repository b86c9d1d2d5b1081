import { inEachLine, inEachPiece, inEachSide, inPlan, ownedIn, type PlantedFault } from './planted.ts';

const masses: readonly PlantedFault[] = [
  {
    says: 'a length is no whole number',
    rule: 'P0',
    plant: inEachPiece(({ piece }) => {
      piece.toUm += 0.5;
      return true;
    }),
  },
  {
    says: 'a gram of each bulk is lost',
    rule: 'P13',
    plant: inEachSide((side) => {
      for (const bulk of Object.keys(side.bulkMg)) side.bulkMg[bulk] = (side.bulkMg[bulk] ?? 0) - 1000;
      return true;
    }),
  },
  {
    says: 'a milligram of an item is lost',
    rule: 'P13',
    plant: inEachSide((side) => {
      const [item] = side.items;
      if (item) item.massMg -= 1;
      return item !== undefined;
    }),
  },
  {
    says: 'a gram of one bulk is booked as another',
    rule: 'P14',
    plant: inEachSide((side) => {
      const [one, other] = Object.keys(side.bulkMg);
      if (one === undefined || other === undefined) return false;
      side.bulkMg[one] = (side.bulkMg[one] ?? 0) - 1000;
      side.bulkMg[other] = (side.bulkMg[other] ?? 0) + 1000;
      return true;
    }),
  },
  {
    says: 'a gram of a piece is booked on the stretch left free',
    rule: 'P14',
    plant: inEachPiece(({ piece, run }) => {
      piece.massMg -= 1000;
      run.freeMg += 1000;
      return true;
    }),
  },
  {
    says: 'a single piece has gained a gram',
    rule: 'P14',
    plant: inPlan((copy) => {
      for (const single of copy.singles) single.massMg += 1000;
      return copy.singles.length > 0;
    }),
  },
  {
    says: 'a side weighs a kilogram more than it hung',
    rule: 'P1',
    plant: inEachSide((side) => {
      side.massMg += 1_000_000;
      return true;
    }),
  },
  {
    says: 'a side is booked on another animal',
    rule: 'P1',
    plant: inEachSide((side, { day }) => {
      const other = day.animals.find(({ animalId }) => animalId !== side.animalId);
      if (other) side.animalId = other.animalId;
      return other !== undefined;
    }),
  },
  {
    says: 'a side is planned twice',
    rule: 'P1',
    plant: inEachSide((side, _, copy) => copy.sides.push(side) > 0),
  },
  { says: 'a side is left out', rule: 'P1', plant: inPlan((copy) => copy.sides.pop() !== undefined) },
  {
    says: 'the plan is of another day',
    rule: 'P1',
    plant: inPlan((copy) => {
      copy.dayId = 'another day';
      return true;
    }),
  },
  {
    says: 'no time is counted',
    rule: 'P25',
    plant: inEachSide((side) => {
      side.minutes = 0;
      return true;
    }),
  },
  {
    says: 'an hour too much is counted',
    rule: 'P25',
    plant: inEachSide((side) => {
      side.minutes += 60;
      return true;
    }),
  },
  {
    says: 'two pieces have one id',
    rule: 'P16',
    plant: inPlan((copy) => {
      const [first, second] = ownedIn(copy);
      if (first && second) second.pieceId = first.pieceId;
      return true;
    }),
  },
];

const accounts: readonly PlantedFault[] = [
  {
    says: 'a line is counted twice',
    rule: 'P19',
    plant: inEachLine((fill, _, copy) => copy.lines.push(fill) > 0),
  },
  {
    says: 'a line is left out',
    rule: 'P19',
    plant: inPlan((copy) => copy.lines.pop() !== undefined),
  },
  {
    says: 'a line is said to be filled with one more',
    rule: 'P19',
    plant: inEachLine((fill) => {
      fill.filled += 1;
      return true;
    }),
  },
  {
    says: 'a line is said to ask for less than it does',
    rule: 'P19',
    plant: inEachLine((fill) => {
      fill.asked -= 1;
      return true;
    }),
  },
  {
    says: 'a line does not list a piece that is for it',
    rule: 'P19',
    plant: inEachLine((fill) => fill.pieceIds.pop() !== undefined),
  },
  {
    says: 'a line lists a piece twice',
    rule: 'P19',
    plant: inEachLine((fill) => {
      const [first] = fill.pieceIds;
      if (first !== undefined) fill.pieceIds.push(first);
      return first !== undefined;
    }),
  },
  {
    says: 'a line lists a piece that is for somebody else',
    rule: 'P19',
    plant: inEachLine((fill, _, copy) => {
      const other = ownedIn(copy).find(
        ({ owner }) => owner && 'lineId' in owner && owner.lineId !== fill.lineId,
      );
      if (other) fill.pieceIds.push(other.pieceId);
      return other !== undefined;
    }),
  },
  {
    says: 'a line is short and gives no reason',
    rule: 'P19',
    plant: inEachLine((fill) => {
      const had = fill.shortfall !== null;
      fill.shortfall = null;
      return had;
    }),
  },
  {
    says: 'a line is filled and gives a reason for being short',
    rule: 'P19',
    plant: inEachLine((fill, _, copy) => {
      const reason = copy.lines.find(({ shortfall }) => shortfall)?.shortfall;
      if (!reason || fill.shortfall) return false;
      fill.shortfall = reason;
      return true;
    }),
  },
  {
    says: 'a line blames one that the day does not have',
    rule: 'P19',
    plant: inEachLine((fill) => {
      fill.shortfall?.withLines.push('nobody');
      return fill.shortfall !== null;
    }),
  },
];

const worth: readonly PlantedFault[] = [
  ...(['promised', 'wished', 'rest'] as const).flatMap((goal): PlantedFault[] => [
    {
      says: `the plan is said to be worth more than it is: ${goal}`,
      rule: 'P27',
      plant: inPlan(({ proof }) => {
        if (!proof) return false;
        proof.goals[goal] += 1;
        proof.bound[goal] += 1;
        return true;
      }),
    },
    {
      says: `the bound lies below what was reached: ${goal}`,
      rule: 'P27',
      plant: inPlan(({ proof }) => {
        if (proof) proof.bound[goal] = proof.goals[goal] - 1;
        return proof !== null;
      }),
    },
  ]),
  {
    says: 'the gap is said to be smaller than it is',
    rule: 'P27',
    plant: inPlan(({ proof }) => {
      if (!proof || proof.gap === 0) return false;
      proof.gap /= 2;
      return true;
    }),
  },
];

export const faultsInTheBooks: readonly PlantedFault[] = [...masses, ...accounts, ...worth];
