-- Why: batches of the kitchen with what they took of which packs, and owners who agreed to pool their trim.
-- Locks: ACCESS EXCLUSIVE on packs and hand_over_packs for an instant, for the triggers. Written for Postgres 15.
-- Undo: drop the triggers, functions and tables.
CREATE TABLE "kitchen_batches" (
	"shop_id" uuid NOT NULL,
	"batch_id" uuid NOT NULL,
	"kind" text NOT NULL,
	"name" text NOT NULL,
	"made_on" date NOT NULL,
	"record" jsonb NOT NULL,
	"made_by" uuid,
	"made_at" timestamp with time zone DEFAULT now() NOT NULL,
	CONSTRAINT "kitchen_batches_one_per_id" PRIMARY KEY("shop_id","batch_id"),
	CONSTRAINT "kitchen_batches_kind_known" CHECK ("kitchen_batches"."kind" in ('sausage', 'cure', 'lard')),
	CONSTRAINT "kitchen_batches_name_present" CHECK (length(trim("kitchen_batches"."name")) between 1 and 200),
	CONSTRAINT "kitchen_batches_record_shape" CHECK (jsonb_typeof("kitchen_batches"."record") = 'object')
);
--> statement-breakpoint
CREATE TABLE "kitchen_draws" (
	"shop_id" uuid NOT NULL,
	"batch_id" uuid NOT NULL,
	"pack_id" uuid NOT NULL,
	"grams" integer NOT NULL,
	CONSTRAINT "kitchen_draws_once" PRIMARY KEY("shop_id","batch_id","pack_id"),
	CONSTRAINT "kitchen_draws_positive" CHECK ("kitchen_draws"."grams" > 0)
);
--> statement-breakpoint
CREATE TABLE "pool_consents" (
	"shop_id" uuid NOT NULL,
	"order_id" uuid NOT NULL,
	"said_at" timestamp with time zone DEFAULT now() NOT NULL,
	"said_by" uuid,
	CONSTRAINT "pool_consents_one_per_order" PRIMARY KEY("shop_id","order_id")
);
--> statement-breakpoint
ALTER TABLE "kitchen_batches" ADD CONSTRAINT "kitchen_batches_maker_known" FOREIGN KEY ("shop_id","made_by") REFERENCES "public"."people"("shop_id","person_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "kitchen_draws" ADD CONSTRAINT "kitchen_draws_batch_known" FOREIGN KEY ("shop_id","batch_id") REFERENCES "public"."kitchen_batches"("shop_id","batch_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "kitchen_draws" ADD CONSTRAINT "kitchen_draws_pack_known" FOREIGN KEY ("shop_id","pack_id") REFERENCES "public"."packs"("shop_id","pack_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "pool_consents" ADD CONSTRAINT "pool_consents_order_known" FOREIGN KEY ("shop_id","order_id") REFERENCES "public"."orders"("shop_id","order_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "pool_consents" ADD CONSTRAINT "pool_consents_person_known" FOREIGN KEY ("shop_id","said_by") REFERENCES "public"."people"("shop_id","person_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
CREATE INDEX "kitchen_batches_by_day" ON "kitchen_batches" USING btree ("shop_id","made_on");--> statement-breakpoint
CREATE INDEX "kitchen_draws_of_pack" ON "kitchen_draws" USING btree ("shop_id","pack_id");
--> statement-breakpoint
SELECT "wall_by_shop"('kitchen_batches', true), "wall_by_shop"('kitchen_draws', true), "wall_by_shop"('pool_consents');
--> statement-breakpoint
-- A pack gives no more than it weighs. The pack is locked first, so that two batches never count the same grams.
CREATE FUNCTION "hold_kitchen_draw"() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  "here" record;
BEGIN
  SELECT p."net_grams", p."undone_at" INTO "here" FROM "packs" p
    WHERE p."shop_id" = NEW."shop_id" AND p."pack_id" = NEW."pack_id" FOR UPDATE;
  IF "here"."undone_at" IS NOT NULL
    OR EXISTS (SELECT FROM "hand_over_packs" h WHERE h."shop_id" = NEW."shop_id" AND h."pack_id" = NEW."pack_id") THEN
    RAISE EXCEPTION 'the pack is not in the house any more'
      USING ERRCODE = 'check_violation', TABLE = 'kitchen_draws', CONSTRAINT = 'kitchen_draws_pack_here';
  END IF;
  IF NEW."grams" + (SELECT coalesce(sum(d."grams"), 0) FROM "kitchen_draws" d
      WHERE d."shop_id" = NEW."shop_id" AND d."pack_id" = NEW."pack_id") > "here"."net_grams" THEN
    RAISE EXCEPTION 'the pack does not hold so much'
      USING ERRCODE = 'check_violation', TABLE = 'kitchen_draws', CONSTRAINT = 'kitchen_draws_within_pack';
  END IF;
  RETURN NEW;
END
$$;
--> statement-breakpoint
CREATE TRIGGER "kitchen_draws_within_pack" BEFORE INSERT ON "kitchen_draws"
  FOR EACH ROW EXECUTE FUNCTION "hold_kitchen_draw"();
--> statement-breakpoint
-- What went into a batch is in no bag any more: it is neither handed over nor weighed again.
CREATE FUNCTION "hold_drawn_pack"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  PERFORM FROM "packs" p WHERE p."shop_id" = NEW."shop_id" AND p."pack_id" = NEW."pack_id" FOR UPDATE;
  IF EXISTS (SELECT FROM "kitchen_draws" d WHERE d."shop_id" = NEW."shop_id" AND d."pack_id" = NEW."pack_id") THEN
    RAISE EXCEPTION 'the pack went into a batch'
      USING ERRCODE = 'check_violation', TABLE = TG_TABLE_NAME, CONSTRAINT = TG_TABLE_NAME || '_not_in_batch';
  END IF;
  RETURN NEW;
END
$$;
--> statement-breakpoint
CREATE TRIGGER "hand_over_packs_not_in_batch" BEFORE INSERT ON "hand_over_packs"
  FOR EACH ROW EXECUTE FUNCTION "hold_drawn_pack"();
--> statement-breakpoint
CREATE TRIGGER "packs_not_in_batch" BEFORE UPDATE OF "undone_at" ON "packs"
  FOR EACH ROW EXECUTE FUNCTION "hold_drawn_pack"();
