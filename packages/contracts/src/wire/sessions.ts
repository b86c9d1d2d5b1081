import { z } from 'zod';
import { anyId, storedId } from './parts.ts';

export const shopShape = z.strictObject({
  shopId: storedId,
  name: z.string(),
  currency: z.string().regex(/^[A-Z]{3}$/, 'must be three capitals, as ISO 4217 has them: "USD"'),
  timeZone: z.string().min(1).max(100),
  weightUnit: z.enum(['lb', 'kg']),
  lengthUnit: z.enum(['in', 'mm']),
});
export type ShopOnWire = z.infer<typeof shopShape>;

export const roleShape = z.enum(['customer', 'counter', 'butcher', 'owner']);
export type Role = z.infer<typeof roleShape>;

/** POST /api/session */
export const signInShape = z.strictObject({
  email: z.string().min(3).max(254),
  password: z.string().min(1).max(200),
});
export type SignIn = z.infer<typeof signInShape>;

/** GET and POST /api/session */
export const sessionShape = z.strictObject({
  person: z.strictObject({ personId: anyId, name: z.string(), role: roleShape }),
  shop: shopShape,
});
export type Session = z.infer<typeof sessionShape>;

/** GET /api/demo-sign-ins: who can sign in to the invented shop. */
export const demoSignInsShape = z.strictObject({
  signIns: z.array(
    z.strictObject({ name: z.string(), role: roleShape, email: z.string(), password: z.string() }),
  ),
});
export type DemoSignIns = z.infer<typeof demoSignInsShape>;
