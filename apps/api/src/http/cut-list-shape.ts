import { z } from '@hono/zod-openapi';

const whole = z.int().min(0);

const piece = z.strictObject({
  pieceId: z.string(),
  name: z.string(),
  size: z.string(),
  massMg: whole,
  owner: z.string().nullable().meta({ description: 'null: nobody yet, for the counter.' }),
  fromUm: whole.optional(),
  toUm: whole.optional(),
});

const step = z
  .strictObject({
    sideId: z.string().nullable(),
    order: z.int().min(1),
    part: z.string(),
    action: z.string(),
    detail: z.string(),
    pieces: z.array(piece),
    to: z.string(),
  })
  .meta({ id: 'CutStep', description: 'One thing to do, in its turn.' });

const side = z.strictObject({
  sideId: z.string(),
  hand: z.enum(['left', 'right']),
  massMg: whole,
  sharedBy: z.string().nullable(),
  minutes: z.number(),
  steps: z.array(step),
});

const animal = z.strictObject({
  animalId: z.string(),
  name: z.string(),
  sides: z.array(side),
  // A union: the generator writes a nullable component as all of two things that exclude each other.
  singles: z.union([step, z.null()]),
});

export const cutListShape = z
  .strictObject({
    dayId: z.string(),
    date: z.iso.date(),
    stale: z.boolean().meta({ description: 'The day has changed since it was planned.' }),
    animals: z.array(animal),
  })
  .meta({ id: 'CutList', description: 'The work of the day in the order of the bench.' });
