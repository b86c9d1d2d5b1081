import { OpenAPIHono } from '@hono/zod-openapi';
import type { HttpEnv } from './http-env.ts';
import type { OpenApiDocument } from './open-api-shape.ts';
import { adviceRoutes } from './routes/advice.ts';
import { animalRoutes } from './routes/animals.ts';
import { billRoutes } from './routes/bills.ts';
import { boardRoutes } from './routes/boards.ts';
import { bookSettingsRoutes } from './routes/book-settings.ts';
import { closingRoutes } from './routes/closings.ts';
import { counterRoutes } from './routes/counter.ts';
import { customerRoutes } from './routes/customers.ts';
import { cutListRoutes } from './routes/cut-lists.tsx';
import { dayRoutes } from './routes/days.ts';
import { eventRoutes } from './routes/events.ts';
import { exportRoutes } from './routes/exports.ts';
import { frontRoutes } from './routes/front.ts';
import { halfRoutes } from './routes/halves.ts';
import { handOverRoutes } from './routes/hand-overs.ts';
import { healthRoutes } from './routes/health.ts';
import { kitchenRoutes } from './routes/kitchen.ts';
import { labelRoutes } from './routes/labels.tsx';
import { orderRoutes } from './routes/orders.ts';
import { packRoutes } from './routes/packs.ts';
import { receiptRoutes } from './routes/receipts.tsx';
import { reservationRoutes } from './routes/reservations.ts';
import { sessionRoutes } from './routes/session.ts';

/** Every described route, chained, so that a typed client knows them all. */
export const apiRoutes = new OpenAPIHono<HttpEnv>()
  .route('/', sessionRoutes)
  .route('/', dayRoutes)
  .route('/', boardRoutes)
  .route('/', adviceRoutes)
  .route('/', animalRoutes)
  .route('/', orderRoutes)
  .route('/', reservationRoutes)
  .route('/', halfRoutes)
  .route('/', customerRoutes)
  .route('/', frontRoutes)
  .route('/', eventRoutes)
  .route('/', packRoutes)
  .route('/', billRoutes)
  .route('/', handOverRoutes)
  .route('/', counterRoutes)
  .route('/', closingRoutes)
  .route('/', exportRoutes)
  .route('/', labelRoutes)
  .route('/', bookSettingsRoutes)
  .route('/', kitchenRoutes)
  .route('/', receiptRoutes)
  .route('/', cutListRoutes)
  .route('/', healthRoutes);

const description = `A shop's cutting days: animals, orders, the plan that lays one onto the other, and the cut list for the bench.
Lengths are whole micrometres, masses whole milligrams or grams, money whole minor units; what a scale showed is kept as it was read.
Sign in first (POST /api/session); the session is a cookie. Every request that changes something comes from the shop's own pages, or from a program that sends no Origin.
POST requests that create or take need an Idempotency-Key: the same key with the same request gets the same answer, for 30 days. Edits need If-Match with the version that was read.`;

/** The generator writes a pattern with its flags, "^...$/u"; JSON Schema knows the bare pattern only. */
const barePatterns = (key: string, value: unknown): unknown =>
  key === 'pattern' && typeof value === 'string' ? value.replace(/\/[a-z]+$/, '') : value;

let made: OpenApiDocument | undefined;

/** OpenAPI 3.1, from the shapes that validate. */
export function openApiDocument(): OpenApiDocument {
  if (made) return made;
  const document = apiRoutes.getOpenAPI31Document({
    openapi: '3.1.0',
    info: { title: 'Flitchbook', version: '0.1.0', description },
  });
  made = JSON.parse(JSON.stringify(document, barePatterns)) as OpenApiDocument;
  return made;
}
