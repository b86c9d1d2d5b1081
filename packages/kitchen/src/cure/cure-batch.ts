import type { Bag, CureRequest } from './cure-request.ts';
import type { CureAnswer } from './reckon-cure.ts';

/** What was done, kept as it was entered and as it was judged on that day. Never changed: a correction is another record. */
export interface CureBatch {
  readonly batchId: string;
  /** of the animals whose meat is in it */
  readonly animalIds: readonly string[];
  /** number on the bag */
  readonly cureLot: string;
  readonly bag: Bag;
  readonly request: CureRequest;
  readonly answer: CureAnswer;
  readonly by: string;
  readonly at: string;
}

/**
 * @throws RangeError when the answer was refused, or does not tell what was weighed in, by whom and of which bag
 */
export function cureBatch(
  request: CureRequest,
  answer: CureAnswer,
  record: Pick<CureBatch, 'batchId' | 'animalIds' | 'cureLot' | 'by' | 'at'>,
): CureBatch {
  if (answer.outcome === 'refused' || answer.cureMg === null)
    throw new RangeError(`cure is above a limit and is not recorded as used: ${answer.says.join(' ')}`);
  for (const field of ['batchId', 'cureLot', 'by', 'at'] as const)
    if (record[field].trim() === '') throw new RangeError(`${field} must not be empty`);
  if (record.animalIds.length === 0)
    throw new RangeError('animalIds must name the animals whose meat is in it');
  return { ...record, bag: request.bag, request, answer };
}
