import type { Tx } from '../database.ts';
import type { AnimalRecord, NewAnimal, TouchedDay } from './shapes.ts';

export async function addAnimal(_tx: Tx, day: TouchedDay, animal: NewAnimal): Promise<void> {
  throw new Error('not yet');
}

/** Replaces what is known of an animal. Its sides stay the same ones. */
export async function updateAnimal(_tx: Tx, day: TouchedDay, change: { readonly animal: NewAnimal; readonly version: number }): Promise<'updated' | 'stale' | 'unknown'> {
  throw new Error('not yet');
}

export async function listAnimals(_tx: Tx, shopId: string, dayId: string): Promise<readonly AnimalRecord[]> {
  throw new Error('not yet');
}

export async function findAnimal(_tx: Tx, shopId: string, animalId: string): Promise<AnimalRecord | undefined> {
  throw new Error('not yet');
}
