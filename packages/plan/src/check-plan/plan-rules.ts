/**
 * What every stored or printed plan keeps. The numbers are those of docs/invariants.md; the database and the tests use them too.
 * The check knows nothing of how a plan was found: it recomputes from the day and the species data.
 */
export const planRules = {
  P0: 'A plan has every field it should, with whole numbers for lengths and masses.',
  P1: 'A plan is for its day: every side of the day stands in it once, with its animal and its mass, and no other side.',
  P2: 'Each primal that a side has is broken down by exactly one operation; a part that is not there by none.',
  P3: 'An operation that needs a slaughter fact (skin on, head, feet, organs, unsplit) stands only where the side has it.',
  P4: 'A lost part is set aside whole: it is neither broken down nor cut.',
  P5: 'Each bar that a side has is cut once; a bar that is not there is not cut.',
  P6: 'Stretches cover each zone of a bar from its first station to its last, in order, in a manner the zone allows: one, or two where the zone may be parted.',
  P7: 'Runs are what the stretches make: neighbours of one joining stock are one run, and a joining stock stands in one run of a bar.',
  P8: 'Pieces lie end to end inside the usable length of their run, from the head end, with the kerf after each sawn piece; none overlap.',
  P9: 'A piece has the size that was asked: thickness exactly, ribs between whole stations, weight between its limits; without a saw, bone is parted between stations only.',
  P10: 'A piece laid on a bar is of a cut that its stock may become, portioned as that cut may be.',
  P11: 'A side gives exactly the items its operations and manners give, each once; a rack of ribs only from enough stations.',
  P12: 'An animal gives each of its single pieces once, unless it is lost or a slaughter fact is missing.',
  P13: 'Items, pieces, free stretches and bulk of a side add up to its mass to the milligram.',
  P14: 'Each mass is the share that the species data gives, within 20 mg; saw dust is in the loss, lost parts in what is set aside.',
  P15: 'What is free of a run is its usable length less what the pieces take up.',
  P16: 'No two pieces of a plan have one id.',
  P17: 'A piece is for a line that asks for it: the cut, or a substitute it accepts, in that portion, of that species.',
  P18: 'A line that wants one animal, a certain animal or a certain side gets nothing else.',
  P19: 'Every line stands in the plan once, lists exactly the pieces that are for it, gets no more than it asks, and has a reason exactly when it gets less.',
  P20: 'Bulk taken by lines is no more than the sides without a share give of that kind.',
  P21: 'A share has one side, or both sides of one animal, of the species and animal it asks for, or none and a reason; a side has at most one share.',
  P22: 'Everything of a share’s side is for the share, and nothing else is; a whole animal brings its single pieces.',
  P23: 'A share’s instructions are followed: operations, manners, and each stock it names cut into as many portions as fit.',
  P24: 'Locked choices stand.',
  P25: 'Minutes are those of the operations and manners chosen.',
  P26: 'A cut made from both sides gets as many pieces from the left as from the right side of each animal.',
  P27: 'A plan is worth what it says: its goals are what its pieces come to, no bound lies below its goal, and the gap is the distance between them.',
} as const;

export type PlanRule = keyof typeof planRules;

/** One broken rule, with the place in the plan and a sentence. */
export interface PlanFault {
  readonly rule: PlanRule;
  /** path in the plan, ids where they help: `sides[L1].bars[loin-out].runs[0]` */
  readonly at: string;
  readonly says: string;
}

/** Notes a fault. */
export type Note = (rule: PlanRule, at: string, says: string) => void;

/** Rounding that a mass may carry, milligrams. */
export const massSlackMg = 20;
