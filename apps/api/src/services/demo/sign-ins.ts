import type { Role } from '@flitchbook/db';

/** Somebody of the invented shop, and how to sign in as them. */
export interface DemoSignIn {
  readonly name: string;
  readonly role: Role;
  readonly email: string;
  readonly password: string;
}

/** The people of the invented shop, all with the one password that was made for this installation. */
export const demoSignIns = (password: string): readonly DemoSignIn[] => [
  { name: 'Ines Quarrie', role: 'owner', email: 'owner@flitch.example', password },
  { name: 'Tobias Fenn', role: 'butcher', email: 'butcher@flitch.example', password },
  { name: 'Maud Sayer', role: 'counter', email: 'counter@flitch.example', password },
  { name: 'Odile Brandt', role: 'customer', email: 'customer@flitch.example', password },
];
