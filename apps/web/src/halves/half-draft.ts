import {
  type CutSheet,
  type CuttingStyle,
  leftWhole,
  type Portion,
  type QuestionShown,
  type Species,
  sheetOfStyle,
} from '@flitchbook/carcass';
import type { HalfAsked } from '@flitchbook/contracts';

/** What somebody has chosen so far. It is kept on the device, and goes on where it stopped. */
export interface HalfDraft {
  readonly size: 'half' | 'whole';
  /** the style that it began with */
  readonly style: string;
  readonly left: CutSheet;
  /** null: both sides alike */
  readonly right: CutSheet | null;
  readonly leaves: readonly string[];
  readonly sharedWith: string;
  readonly note: string;
}

type Storing = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>;

const place = (dayId: string): string => `flitchbook.half.${dayId}`;

const isTable = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const isTexts = (value: unknown): boolean =>
  isTable(value) && Object.values(value).every((entry) => typeof entry === 'string');
const isPortion = (value: unknown): value is Portion => isTable(value) && typeof value['by'] === 'string';
const isSheet = (value: unknown): value is CutSheet =>
  isTable(value) &&
  isTexts(value['operations']) &&
  isTexts(value['manners']) &&
  isTable(value['portions']) &&
  Object.values(value['portions']).every(isPortion);

function isDraft(value: unknown): value is HalfDraft {
  if (!isTable(value)) return false;
  const texts = ['style', 'sharedWith', 'note'].every((name) => typeof value[name] === 'string');
  const isSize = value['size'] === 'half' || value['size'] === 'whole';
  const leaves = value['leaves'];
  const isRight = value['right'] === null || isSheet(value['right']);
  return (
    texts &&
    isSize &&
    isSheet(value['left']) &&
    isRight &&
    Array.isArray(leaves) &&
    leaves.every((id) => typeof id === 'string')
  );
}

/** What was kept for a day; null where nothing was, or nothing that can be read. */
export function keptDraft(storing: Storing | undefined, dayId: string): HalfDraft | null {
  try {
    const value: unknown = JSON.parse(storing?.getItem(place(dayId)) ?? 'null');
    return isDraft(value) ? value : null;
  } catch {
    return null;
  }
}

/** Keeps a draft, or forgets it. Storage may be full or forbidden: then nothing is kept, and nothing else happens. */
export function keepDraft(storing: Storing | undefined, dayId: string, draft: HalfDraft | null): void {
  try {
    if (draft === null) storing?.removeItem(place(dayId));
    else storing?.setItem(place(dayId), JSON.stringify(draft));
  } catch {
    // Nothing is kept then.
  }
}

/** What the service is asked. */
export function askedOf({ size, left, right, leaves, sharedWith }: HalfDraft): HalfAsked {
  const second = sharedWith.trim();
  return {
    size,
    instructions: {
      ...left,
      ...(size === 'whole' && right ? { right } : {}),
      ...(leaves.length > 0 ? { leaves } : {}),
      ...(second === '' ? {} : { sharedWith: second }),
    },
  };
}

/** A draft in a style; how much, with whom and what was noted stay. */
export function freshDraft(species: Species, style: CuttingStyle, before: HalfDraft | null): HalfDraft {
  const { size = 'half', sharedWith = '', note = '' } = before ?? {};
  const left = sheetOfStyle(species, style);
  return {
    size,
    style: style.id,
    left,
    right: null,
    leaves: style.declines,
    sharedWith,
    note,
  };
}

/** The draft with one question answered, for the side that is being asked about. */
export function answered(
  draft: HalfDraft,
  hand: 'left' | 'right',
  { about, id, answers }: QuestionShown,
  answerId: string,
): HalfDraft {
  const isRight = hand === 'right' && draft.right !== null;
  const sheet = isRight ? (draft.right as CutSheet) : draft.left;
  const { [id]: _, ...others } = sheet[about];
  const portion = answers.find((each) => each.id === answerId)?.portion;
  const value = about === 'portions' ? portion : answerId;
  const isNone = value === undefined || answerId === leftWhole;
  const next = { ...sheet, [about]: isNone ? others : { ...others, [id]: value } } as CutSheet;
  return isRight ? { ...draft, right: next } : { ...draft, left: next };
}
