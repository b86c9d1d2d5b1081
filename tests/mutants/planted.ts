// biome-ignore-all lint/suspicious/noTemplateCurlyInString: these are texts of programs.
/** A mistake that somebody could make in the service of promises, and the tests that have to see it. */
export interface Mutant {
  /** what goes wrong, in a few words; printed */
  readonly name: string;
  /** from the root */
  readonly file: string;
  /** stands in the file once */
  readonly find: string;
  readonly put: string;
  readonly suites: readonly string[];
}

const model = 'tests/concurrency/promise-model.test.ts';
const lastUnit = 'tests/concurrency/last-unit.test.ts';
const isolation = 'tests/security/isolation.test.ts';
const reservations = 'apps/api/src/services/reservations/reservations.test.ts';
const once = 'apps/api/src/http/once.test.ts';
const doors = 'apps/api/src/http/doors.test.ts';
const routes = 'apps/api/src/http/routes.test.ts';
const block = 'apps/api/src/services/from-block-to-customer.test.ts';
const rows = 'packages/db/src/row-rules.db.test.ts';
const planRows = 'packages/db/src/plan-rules.db.test.ts';
const queries = 'packages/db/src/queries.db.test.ts';
const serverRows = 'packages/db/src/server.db.test.ts';
const walls = 'packages/db/src/shop-walls.db.test.ts';

const ordersSql = 'packages/db/src/queries/orders.ts';
const daysSql = 'packages/db/src/queries/days.ts';
const plansSql = 'packages/db/src/queries/plans.ts';
const keysSql = 'packages/db/src/queries/idempotency.ts';
const reserving = 'apps/api/src/services/reservations';

const conditions: readonly Mutant[] = [
  {
    name: 'a hold that is over can still be reserved',
    file: ordersSql,
    find: "return and(eq(orders.state, 'held'), sql`${orders.heldUntil} > now()`);",
    put: "return eq(orders.state, 'held');",
    suites: [model, reservations],
  },
  {
    name: 'every hold counts as over',
    file: ordersSql,
    find: 'sql`${orders.heldUntil} <= now()`,\n      ),\n    )\n    .orderBy(',
    put: 'sql`${orders.heldUntil} is not null`,\n      ),\n    )\n    .orderBy(',
    suites: [model, reservations],
  },
  {
    name: 'what is reserved can be released like a hold',
    file: ordersSql,
    find: "return inArray(orders.state, ['held', 'queued']);",
    put: "return inArray(orders.state, ['held', 'queued', 'standing']);",
    suites: [model],
  },
  {
    name: 'a passage leaves the version of the order as it was',
    file: ordersSql,
    find: 'version: sql`${orders.version} + 1` })',
    put: 'version: sql`${orders.version}` })',
    suites: [model],
  },
  {
    name: 'an order is cancelled whatever version was read',
    file: ordersSql,
    find: "and(thisOrder, eq(orders.version, version), eq(orders.state, 'standing'))",
    put: "and(thisOrder, eq(orders.state, 'standing'))",
    suites: [model],
  },
  {
    name: 'a customer in the queue is served by the plan already',
    file: ordersSql,
    find: "state === 'standing' || state === 'held';",
    put: "state === 'standing' || state === 'held' || state === 'queued';",
    suites: [model],
  },
  {
    name: 'the day is changed whatever version was read',
    file: daysSql,
    find: 'ifVersion === undefined ? undefined : eq(cuttingDays.version, ifVersion),',
    put: 'undefined,',
    suites: [model, lastUnit, routes],
  },
  {
    name: 'a closed day takes orders',
    file: daysSql,
    find: "evenClosed ? undefined : eq(cuttingDays.state, 'open'),",
    put: 'undefined,',
    suites: [model, routes, queries],
  },
  {
    name: 'the last call for customers is not heard',
    file: daysSql,
    find: 'sql`coalesce(${cuttingDays.customersUntil} > now(), true)`',
    put: 'sql`true`',
    suites: [model, reservations],
  },
  {
    name: 'a plan is stored whatever version it was made for',
    file: plansSql,
    find: 'eq(cuttingDays.version, madeFor),',
    put: 'undefined,',
    suites: [serverRows],
  },
];

const claims: readonly Mutant[] = [
  {
    name: 'a hold is written on a day that has changed since',
    file: `${reserving}/hold.ts`,
    find: 'const touched = await touch(tx, { shopId, dayId, ifVersion: version });',
    put: 'const touched = await touch(tx, { shopId, dayId });\n      void version;',
    suites: [lastUnit, model],
  },
  {
    name: 'a hold is taken without its plan',
    file: `${reserving}/hold.ts`,
    find: '  await storeWith(tx, ctx, day, decision.plan);\n',
    put: '  await keepPlan(tx, day);\n',
    suites: [model],
  },
  {
    name: 'any plan will do, also one that leaves the claim short',
    file: `${reserving}/decide.ts`,
    find: 'if (isAllServed(answer.value)) {',
    put: 'if (answer.value.lines.length > 0) {',
    suites: [model, reservations],
  },
  {
    name: 'what others were promised is not kept when the day is planned anew',
    file: `${reserving}/claim-day.ts`,
    find: "  if (assured.lineIds.has(line.lineId)) return line;\n  if (line.rank === 'wished') return undefined;",
    put: "  if (assured.lineIds.has(line.lineId) || line.rank === 'wished') return undefined;",
    suites: [model, reservations],
  },
  {
    name: 'caps are looked at for each order, not for the sum',
    file: `${reserving}/shop-rules.ts`,
    find: 'const all = [...own, order];',
    put: 'const all = [...own.slice(own.length), order];',
    suites: [model],
  },
  {
    name: 'a deposit is rounded down',
    file: `${reserving}/shop-rules.ts`,
    find: '(expected * depositPercent + 50) / 100',
    put: '(expected * depositPercent) / 100',
    suites: [reservations],
  },
  {
    name: 'the latest in the queue goes first',
    file: `${reserving}/promote.ts`,
    find: "orders.filter(({ state }) => state === 'queued'))",
    put: "orders.filter(({ state }) => state === 'queued').toReversed())",
    suites: [model, reservations],
  },
  {
    name: 'room that is given back does not reach the queue',
    file: `${reserving}/release.ts`,
    find: '  await ctx.promises.turns.inTurn(dayId, () => promoteQueue(ctx, dayId));\n',
    put: '  void promoteQueue;\n',
    suites: [model, reservations],
  },
  {
    name: 'a promotion stores no plan',
    file: `${reserving}/promote.ts`,
    find: '    await storeWith(tx, ctx, touched.value, plan);\n',
    put: '    void [storeWith, plan];\n',
    suites: [model, reservations],
  },
  {
    name: 'who was overtaken is not written down',
    file: `${reserving}/promote.ts`,
    find: '    overtakes.push(order.number);\n',
    put: '',
    suites: [model, reservations],
  },
  {
    name: 'an order of another customer is answered',
    file: `${reserving}/own-order.ts`,
    find: "(role !== 'customer' || order.personId === personId)",
    put: "(role !== 'customer' || personId !== null)",
    suites: [model, isolation],
  },
];

const records: readonly Mutant[] = [
  {
    name: 'the ledger is forgotten',
    file: `${reserving}/commit.ts`,
    find: '  await appendLedger(tx, { shopId, kind, dayId, orderId, personId, facts });\n',
    put: '  void [appendLedger, kind, dayId];\n',
    suites: [model],
  },
  {
    name: 'the audit is forgotten',
    file: `${reserving}/commit.ts`,
    find: '  await appendAudit(tx, { shopId, personId, action, subject: orderId, facts });\n',
    put: '  void [appendAudit, action];\n',
    suites: [model],
  },
  {
    name: 'a departure is written down twice',
    file: `${reserving}/let-go.ts`,
    find: '    await note(tx, ctx, { dayId, orderId, kind, action, facts: { number } });\n',
    put: '    for (const _ of [1, 2]) await note(tx, ctx, { dayId, orderId, kind, action, facts: { number } });\n',
    suites: [model],
  },
  {
    name: 'nobody is told of a reservation',
    file: `${reserving}/reserve.ts`,
    find: "  await tellOwner(tx, ctx, 'order.reserved', reserved);\n",
    put: '  void tellOwner;\n',
    suites: [model],
  },
  {
    name: 'the answer to a key is not kept',
    file: 'apps/api/src/services/once.ts',
    find: '      await finishIdempotent(tx, request, { status: key.status, body: outcome.value });\n',
    put: '      void finishIdempotent;\n',
    suites: [once],
  },
  {
    name: 'a key serves another request too',
    file: keysSql,
    find: "  if (done.fingerprint !== fingerprint) return { state: 'reused' };\n",
    put: '  void fingerprint;\n',
    suites: [once, model],
  },
  {
    name: 'the lock of a key outlives its transaction',
    file: keysSql,
    find: 'pg_try_advisory_xact_lock(',
    put: 'pg_try_advisory_lock(',
    suites: [once, model],
  },
  {
    name: 'a key is everybody’s',
    file: 'apps/api/src/services/once.ts',
    find: "const principal = actor.personId ?? 'service';",
    put: "const principal = 'service';",
    suites: [once],
  },
  {
    name: 'a refusal keeps what was written before it',
    file: 'apps/api/src/services/transact.ts',
    find: '      if (!outcome.ok) throw new Undone(outcome);\n',
    put: '      if (!outcome.ok && outcome.type === undefined) throw new Undone(outcome);\n',
    suites: [routes, model],
  },
];

const guards: readonly Mutant[] = [
  {
    name: 'pieces of a bar may overlap',
    file: 'packages/db/migrations/0001_guards.sql',
    find: '"bar" WITH =, "span" WITH &&)',
    put: '"bar" WITH =, "piece_id" WITH =, "span" WITH &&)',
    suites: [planRows],
  },
  {
    name: 'the ledger may be rewritten',
    file: 'packages/db/migrations/0001_guards.sql',
    find: 'CREATE TRIGGER "ledger_append_only" BEFORE UPDATE OR DELETE OR TRUNCATE ON "ledger"',
    put: 'CREATE TRIGGER "ledger_append_only" BEFORE TRUNCATE ON "ledger"',
    suites: [rows, walls],
  },
  {
    name: 'the wall between shops does not bind the owner of the tables',
    file: 'packages/db/migrations/0002_shop_walls.sql',
    find: "  EXECUTE format('ALTER TABLE %s FORCE ROW LEVEL SECURITY', walled);\n",
    put: '',
    suites: [walls],
  },
  {
    name: 'rows of every shop are seen',
    file: 'packages/db/migrations/0002_shop_walls.sql',
    find: 'USING ("shop_id" = (SELECT "unit_shop"()))',
    put: 'USING (true)',
    suites: [walls],
  },
  {
    name: 'rows are written into another shop',
    file: 'packages/db/migrations/0002_shop_walls.sql',
    find: 'WITH CHECK ("shop_id" = (SELECT "unit_shop"()))',
    put: 'WITH CHECK (true)',
    suites: [walls],
  },
  {
    name: 'a line may ask for pieces and grams at once',
    file: 'packages/db/migrations/0000_first_tables.sql',
    find: 'CHECK (num_nonnulls("order_lines"."ask_pieces", "order_lines"."ask_grams") = 1)',
    put: 'CHECK (num_nonnulls("order_lines"."ask_pieces", "order_lines"."ask_grams") >= 1)',
    suites: [rows],
  },
  {
    name: 'a piece may be packed twice',
    file: 'packages/db/migrations/0004_packs_bills_hand_overs.sql',
    find: 'CONSTRAINT "pack_pieces_packed_once" PRIMARY KEY("shop_id","day_id","piece_id")',
    put: 'CONSTRAINT "pack_pieces_packed_once" PRIMARY KEY("shop_id","day_id","piece_id","pack_id")',
    suites: [rows],
  },
  {
    name: 'a bill need not add up',
    file: 'packages/db/migrations/0004_packs_bills_hand_overs.sql',
    find: 'CHECK ("bills"."total_minor" = "bills"."net_minor" + "bills"."tax_minor")',
    put: 'CHECK ("bills"."total_minor" >= "bills"."net_minor")',
    suites: [rows],
  },
  {
    name: 'a session never ends',
    file: 'packages/db/src/queries/shops.ts',
    find: 'eq(sessions.tokenHash, tokenHash), gt(sessions.expiresAt, sql`now()`)),',
    put: 'eq(sessions.tokenHash, tokenHash)),',
    suites: [queries, doors],
  },
  {
    name: 'changes are taken from other sites',
    file: 'apps/api/src/http/guard-origin.ts',
    find: "if (site !== undefined && site !== 'same-origin' && site !== 'none') {",
    put: "if (site === 'never') {",
    suites: [doors, routes],
  },
  {
    name: 'a pack on a settled bill can be opened again',
    file: 'apps/api/src/services/packs/undo.ts',
    find: 'if (pack.orderId !== null && (await findBill(tx, shopId, pack.orderId)))',
    put: 'if (pack.orderId === packId && (await findBill(tx, shopId, pack.orderId)))',
    suites: [block],
  },
];

export const mutants: readonly Mutant[] = [...conditions, ...claims, ...records, ...guards];
