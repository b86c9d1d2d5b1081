import {
  type CutSheet,
  previewShare,
  type QuestionShown,
  type SharePreview,
  type YieldModel,
  yieldModelOf,
} from '@flitchbook/carcass';
import type { HalfPreviewOnWire } from '@flitchbook/contracts';
import { computed, signal } from '@preact/signals';
import type { Problem } from '../wire/client.ts';
import type { CustomersClient } from '../wire/customers-client.ts';
import { answered, askedOf, freshDraft, type HalfDraft, keepDraft, keptDraft } from './half-draft.ts';

type Basis = 'looking' | 'no-network' | { readonly problem: Problem } | HalfPreviewOnWire;

interface HalfDoor {
  readonly client: CustomersClient;
  readonly dayId: string;
  readonly storing: Storage | undefined;
}

const nothing: CutSheet = { operations: {}, manners: {}, portions: {} };

/** A half as it is being put together. What a choice gives is reckoned here, at once, from what the day has. */
export function createHalfStore({ client, dayId, storing }: HalfDoor) {
  const basis = signal<Basis>('looking');
  const draft = signal<HalfDraft | null>(null);
  const isResumed = signal(false);
  const hand = signal<'left' | 'right'>('left');

  const model = computed<YieldModel | null>(() => {
    const day = basis.value;
    return typeof day === 'object' && 'speciesId' in day ? (yieldModelOf(day.speciesId) ?? null) : null;
  });

  const seen = computed<SharePreview | null>(() => {
    const day = basis.value;
    if (!model.value || !draft.value || typeof day !== 'object' || !('side' in day)) return null;
    const { size, instructions } = askedOf(draft.value);
    return previewShare(model.value, day.side, instructions, { tools: day.tools, size });
  });

  /** The side that is being asked about. */
  const shown = computed(() => {
    const sides = seen.value?.sides ?? [];
    return sides.find((side) => side.hand === hand.value) ?? sides[0] ?? null;
  });

  function put(next: HalfDraft): void {
    draft.value = next;
    keepDraft(storing, dayId, next);
  }

  function startWith(styleId: string): void {
    const species = model.value?.species;
    const style = model.value?.takeHome.styles.find(({ id }) => id === styleId);
    if (!species || !style) return;
    hand.value = 'left';
    put(freshDraft(species, style, draft.value));
  }

  async function look(): Promise<void> {
    basis.value = 'looking';
    const kept = keptDraft(storing, dayId);
    const answer = await client.previewHalf(dayId, { size: kept?.size ?? 'half', instructions: nothing });
    if (!answer.ok) {
      basis.value = answer.why === 'refused' ? { problem: answer.problem } : 'no-network';
      return;
    }
    basis.value = answer.value;
    isResumed.value = kept !== null;
    const [, usual = model.value?.takeHome.styles[0]] = model.value?.takeHome.styles ?? [];
    if (kept) draft.value = kept;
    else if (usual) startWith(usual.id);
  }

  /** Prices and deposits of the other size. */
  async function setSize(size: HalfDraft['size']): Promise<void> {
    hand.value = 'left';
    change(size === 'half' ? { size, right: null } : { size });
    const answer = await client.previewHalf(dayId, { size, instructions: nothing });
    if (answer.ok && draft.value?.size === size) basis.value = answer.value;
  }

  function change(part: Partial<HalfDraft>): void {
    if (draft.value) put({ ...draft.value, ...part });
  }

  function answer(question: QuestionShown, answerId: string): void {
    if (draft.value) put(answered(draft.value, hand.value, question, answerId));
  }

  function setApart(apart: boolean): void {
    hand.value = 'left';
    change({ right: apart ? (draft.value?.left ?? null) : null });
  }

  function setLeft(id: string, stays: boolean): void {
    const others = (draft.value?.leaves ?? []).filter((each) => each !== id);
    change({ leaves: stays ? [...others, id] : others });
  }

  return {
    basis,
    draft,
    isResumed,
    hand,
    model,
    seen,
    shown,
    look,
    startWith,
    change,
    setSize,
    answer,
    setApart,
    setLeft,
    forget: () => keepDraft(storing, dayId, null),
  };
}

export type HalfStore = ReturnType<typeof createHalfStore>;
