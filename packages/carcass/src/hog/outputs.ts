import type { Output } from '../species.ts';

const outputTo =
  (to: Output['to']) =>
  (id: string, parts: number, source = 'nppc-split'): Output => ({ to, id, parts, source });

/** Outputs of an operation in pounds of the reference side; without a source of their own they split a published line. */
export const part = outputTo('part');
export const item = outputTo('item');
export const bulk = outputTo('bulk');
