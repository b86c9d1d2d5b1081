/** @jsxImportSource hono/jsx */
import { createRoute, OpenAPIHono, z } from '@hono/zod-openapi';
import { ReceiptPage } from '../../print/receipt-page.tsx';
import { receiptPdf } from '../../print/receipt-pdf.ts';
import { readReceipt } from '../../services/bills/receipt.ts';
import { forVerb } from '../gate.ts';
import { htmlPage } from '../html-page.ts';
import type { HttpEnv } from '../http-env.ts';
import { orProblem } from '../problem.ts';
import { refuseShape } from '../refuse-shape.ts';
import { gated, orderParam, refusing } from '../route-parts.ts';

const tags = ['bills'];
const unread = refusing(...gated, 'request.not-found', 'order.unknown', 'bill.missing');
const file = (type: string, description: string) => ({
  200: { description, content: { [type]: { schema: z.string() } } },
});

const page = createRoute({
  method: 'get',
  path: '/api/orders/{orderId}/receipt.html',
  operationId: 'receipts.page',
  summary: 'The settled bill and the money that moved, to read or print.',
  tags,
  ...forVerb('receipts.read'),
  request: { params: orderParam },
  responses: { ...file('text/html', 'The page.'), ...unread },
});

const pdf = createRoute({
  method: 'get',
  path: '/api/orders/{orderId}/receipt.pdf',
  operationId: 'receipts.pdf',
  summary: 'The same as a PDF.',
  tags,
  ...forVerb('receipts.read'),
  request: { params: orderParam },
  responses: { ...file('application/pdf', 'The receipt.'), ...unread },
});

export const receiptRoutes = new OpenAPIHono<HttpEnv>({ defaultHook: refuseShape })
  .openapi(page, async (c) => {
    const receipt = orProblem(await readReceipt(c.get('ctx'), c.req.valid('param').orderId));
    return (await htmlPage(c, <ReceiptPage {...receipt} />)) as never;
  })
  .openapi(pdf, async (c) => {
    const ctx = c.get('ctx');
    const bytes = await receiptPdf(
      orProblem(await readReceipt(ctx, c.req.valid('param').orderId)),
      ctx.clock(),
    );
    return c.body(new Uint8Array(bytes).buffer, 200, { 'Content-Type': 'application/pdf' }) as never;
  });
