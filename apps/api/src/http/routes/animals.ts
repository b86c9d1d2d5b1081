import { animalEditShape, animalShape, animalsShape, newAnimalShape } from '@flitchbook/contracts';
import { createRoute, OpenAPIHono } from '@hono/zod-openapi';
import { bookAnimal } from '../../services/animals/book.ts';
import { correctAnimal } from '../../services/animals/correct.ts';
import { listDayAnimals } from '../../services/animals/list.ts';
import {
  answerOnce,
  idempotencyHeader,
  ifMatchHeader,
  ifVersion,
  onceKey,
  versionETag,
} from '../edit-headers.ts';
import { forVerb } from '../gate.ts';
import type { HttpEnv } from '../http-env.ts';
import { orProblem } from '../problem.ts';
import { refuseShape } from '../refuse-shape.ts';
import {
  animalParam,
  dayParam,
  gated,
  jsonAnswer,
  jsonBody,
  refusing,
  replayHeader,
  taggedAnswer,
  withBody,
  withKey,
  withVersion,
} from '../route-parts.ts';

const path = '/api/days/{dayId}/animals';
const tags = ['animals'];
const animal = animalShape.meta({ id: 'Animal' });

const list = createRoute({
  method: 'get',
  path,
  operationId: 'animals.list',
  summary: 'The animals of a day with their sides.',
  tags,
  ...forVerb('animals.list'),
  request: { params: dayParam },
  responses: {
    200: jsonAnswer(animalsShape.meta({ id: 'Animals' }), 'The animals, as they were booked.'),
    ...refusing(...gated, 'request.not-found', 'day.unknown'),
  },
});

const book = createRoute({
  method: 'post',
  path,
  operationId: 'animals.book',
  summary: 'Books an animal. The day is planned again afterwards.',
  tags,
  ...forVerb('animals.book'),
  request: {
    params: dayParam,
    headers: idempotencyHeader,
    body: jsonBody(newAnimalShape.meta({ id: 'NewAnimal' })),
  },
  responses: {
    201: { ...taggedAnswer(animal, 'The animal.'), headers: replayHeader },
    ...refusing(
      ...gated,
      ...withBody,
      ...withKey,
      'request.not-found',
      'day.unknown',
      'animal.already-booked',
      'animal.invalid',
    ),
  },
});

const correct = createRoute({
  method: 'patch',
  path: '/api/animals/{animalId}',
  operationId: 'animals.correct',
  summary:
    'Puts right what is known of an animal: only what is sent changes. The day is planned again afterwards.',
  tags,
  ...forVerb('animals.correct'),
  request: {
    params: animalParam,
    headers: ifMatchHeader,
    body: jsonBody(animalEditShape.meta({ id: 'AnimalEdit' })),
  },
  responses: {
    200: taggedAnswer(animal, 'The animal as it is now.'),
    ...refusing(
      ...gated,
      ...withBody,
      ...withVersion,
      'request.not-found',
      'animal.unknown',
      'animal.invalid',
    ),
  },
});

export const animalRoutes = new OpenAPIHono<HttpEnv>({ defaultHook: refuseShape })
  .openapi(list, async (c) =>
    c.json({ animals: orProblem(await listDayAnimals(c.get('ctx'), c.req.valid('param').dayId)) }, 200),
  )
  .openapi(book, async (c) => {
    const { dayId } = c.req.valid('param');
    const input = c.req.valid('json');
    const key = onceKey(c, `POST ${path}`, { dayId, body: input }, 201);
    const booked = answerOnce(c, orProblem(await bookAnimal(c.get('ctx'), dayId, input, key)));
    c.header('ETag', versionETag(booked.version));
    return c.json(booked, 201);
  })
  .openapi(correct, async (c) => {
    const { animalId } = c.req.valid('param');
    const edit = c.req.valid('json');
    const corrected = orProblem(
      await correctAnimal(c.get('ctx'), { animalId, ifVersion: ifVersion(c), edit }),
    );
    c.header('ETag', versionETag(corrected.version));
    return c.json(corrected, 200);
  });
