import { appendAudit, createPerson, type Person, type Role } from '@flitchbook/db';
import { done, type Outcome } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { authorise } from '../roles.ts';
import { transact } from '../transact.ts';

export interface NewPerson {
  readonly email: string;
  readonly name: string;
  readonly role: Role;
  readonly password: string;
}

/** Lets somebody sign in. The password is hashed before the transaction begins. */
export async function addPerson(ctx: Ctx, input: NewPerson): Promise<Outcome<Person>> {
  const refusal = authorise(ctx, 'people.add');
  if (refusal) return refusal;
  const { shopId, personId: by } = ctx.actor;
  const { email, name, role } = input;
  const personId = ctx.ids.newId();
  const passwordHash = await ctx.passwords.hash(input.password);
  const person = { shopId, personId, email, name, role };
  return transact(ctx.db, async (tx) => {
    await createPerson(tx, { ...person, passwordHash });
    await appendAudit(tx, { shopId, personId: by, action: 'person.add', subject: personId, facts: { role } });
    return done(person);
  });
}
