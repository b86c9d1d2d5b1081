import type { Tx } from '../database.ts';
import type { Farm, NewPerson, NewSession, Person, Shop } from './shapes.ts';

export async function createShop(_tx: Tx, shop: Shop): Promise<void> {
  throw new Error('not yet');
}

export async function listShops(_tx: Tx): Promise<readonly Shop[]> {
  throw new Error('not yet');
}

export async function findShop(_tx: Tx, shopId: string): Promise<Shop | undefined> {
  throw new Error('not yet');
}

export async function createPerson(_tx: Tx, person: NewPerson): Promise<void> {
  throw new Error('not yet');
}

export async function findSignIn(_tx: Tx, shopId: string, email: string): Promise<{ readonly person: Person; readonly passwordHash: string } | undefined> {
  throw new Error('not yet');
}

export async function createSession(_tx: Tx, session: NewSession): Promise<void> {
  throw new Error('not yet');
}

/** By the database's clock; an expired session is not found. */
export async function findSession(_tx: Tx, shopId: string, tokenHash: string): Promise<{ readonly person: Person; readonly shop: Shop } | undefined> {
  throw new Error('not yet');
}

export async function endSession(_tx: Tx, shopId: string, tokenHash: string): Promise<boolean> {
  throw new Error('not yet');
}

export async function createFarm(_tx: Tx, farm: Farm): Promise<void> {
  throw new Error('not yet');
}

export async function listFarms(_tx: Tx, shopId: string): Promise<readonly Farm[]> {
  throw new Error('not yet');
}
