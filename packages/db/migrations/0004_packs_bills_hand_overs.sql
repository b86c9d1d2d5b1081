-- Why: from the block to the customer: packs and their labels, bills and payments, pick-ups and hand-overs, closed animals.
-- Locks: ACCESS EXCLUSIVE on animals and counters for a scan of each; the rest are new tables. Written for Postgres 15.
-- Undo: drop the tables, triggers and functions below, the column animals.legal_mode, and the counters of packs and bills.
ALTER TABLE "animals" ADD COLUMN "legal_mode" text DEFAULT 'for-sale' NOT NULL;
--> statement-breakpoint
ALTER TABLE "animals" ADD CONSTRAINT "animals_one_mode" UNIQUE("shop_id","animal_id","legal_mode");
--> statement-breakpoint
ALTER TABLE "animals" ADD CONSTRAINT "animals_legal_mode_known" CHECK ("animals"."legal_mode" in ('for-sale', 'for-owner'));
--> statement-breakpoint
CREATE TABLE "bill_lines" (
	"shop_id" uuid NOT NULL,
	"bill_id" uuid NOT NULL,
	"place" integer NOT NULL,
	"kind" text NOT NULL,
	"name" text NOT NULL,
	"about" text NOT NULL,
	"pack_id" uuid,
	"count" integer NOT NULL,
	"weight_text" text,
	"weight_unit" text,
	"price_minor" integer,
	"price_per" text,
	"amount_minor" integer NOT NULL,
	"tax_class" text NOT NULL,
	CONSTRAINT "bill_lines_one_per_place" PRIMARY KEY("shop_id","bill_id","place"),
	CONSTRAINT "bill_lines_pack_once" UNIQUE("shop_id","pack_id"),
	CONSTRAINT "bill_lines_place_counts" CHECK ("bill_lines"."place" >= 0),
	CONSTRAINT "bill_lines_kind_known" CHECK ("bill_lines"."kind" in ('pack', 'hanging', 'fee', 'allowance')),
	CONSTRAINT "bill_lines_pack_named" CHECK (("bill_lines"."kind" = 'pack') = ("bill_lines"."pack_id" is not null)),
	CONSTRAINT "bill_lines_count_counts" CHECK ("bill_lines"."count" >= 0),
	CONSTRAINT "bill_lines_only_allowance_negative" CHECK ("bill_lines"."amount_minor" >= 0 or "bill_lines"."kind" = 'allowance'),
	CONSTRAINT "bill_lines_weight_whole" CHECK (("bill_lines"."weight_text" is null) = ("bill_lines"."weight_unit" is null)),
	CONSTRAINT "bill_lines_price_whole" CHECK (("bill_lines"."price_minor" is null) = ("bill_lines"."price_per" is null))
);
--> statement-breakpoint
CREATE TABLE "bills" (
	"shop_id" uuid NOT NULL,
	"bill_id" uuid NOT NULL,
	"order_id" uuid NOT NULL,
	"number" integer NOT NULL,
	"issued_on" date NOT NULL,
	"net_minor" integer NOT NULL,
	"tax_minor" integer NOT NULL,
	"total_minor" integer NOT NULL,
	"taxes" jsonb NOT NULL,
	"deposit_minor" integer NOT NULL,
	"settled_at" timestamp with time zone DEFAULT now() NOT NULL,
	"settled_by" uuid,
	CONSTRAINT "bills_one_per_id" PRIMARY KEY("shop_id","bill_id"),
	CONSTRAINT "bills_one_per_order" UNIQUE("shop_id","order_id"),
	CONSTRAINT "bills_one_per_number" UNIQUE("shop_id","number"),
	CONSTRAINT "bills_number_counts" CHECK ("bills"."number" >= 1),
	CONSTRAINT "bills_total_adds_up" CHECK ("bills"."total_minor" = "bills"."net_minor" + "bills"."tax_minor"),
	CONSTRAINT "bills_total_not_negative" CHECK ("bills"."net_minor" >= 0 and "bills"."tax_minor" >= 0),
	CONSTRAINT "bills_deposit_not_negative" CHECK ("bills"."deposit_minor" >= 0),
	CONSTRAINT "bills_taxes_shape" CHECK (jsonb_typeof("bills"."taxes") = 'array')
);
--> statement-breakpoint
CREATE TABLE "animal_closings" (
	"shop_id" uuid NOT NULL,
	"animal_id" uuid NOT NULL,
	"hanging_grams" integer NOT NULL,
	"apart_grams" integer NOT NULL,
	"packed_grams" integer NOT NULL,
	"named_grams" integer NOT NULL,
	"rest_grams" integer NOT NULL,
	"outs" jsonb NOT NULL,
	"flag" text NOT NULL,
	"note" text NOT NULL,
	"minutes" integer NOT NULL,
	"animal_minor" integer NOT NULL,
	"closed_at" timestamp with time zone DEFAULT now() NOT NULL,
	"closed_by" uuid,
	CONSTRAINT "animal_closings_once" PRIMARY KEY("shop_id","animal_id"),
	CONSTRAINT "animal_closings_balance" CHECK ("animal_closings"."hanging_grams" + "animal_closings"."apart_grams" = "animal_closings"."packed_grams" + "animal_closings"."named_grams" + "animal_closings"."rest_grams"),
	CONSTRAINT "animal_closings_not_negative" CHECK (least("animal_closings"."hanging_grams", "animal_closings"."apart_grams", "animal_closings"."packed_grams", "animal_closings"."named_grams") >= 0),
	CONSTRAINT "animal_closings_work_not_negative" CHECK ("animal_closings"."minutes" >= 0 and "animal_closings"."animal_minor" >= 0),
	CONSTRAINT "animal_closings_flag_known" CHECK ("animal_closings"."flag" in ('none', 'rest-too-large', 'more-out-than-in')),
	CONSTRAINT "animal_closings_flag_explained" CHECK ("animal_closings"."flag" = 'none' or length(trim("animal_closings"."note")) > 0),
	CONSTRAINT "animal_closings_outs_shape" CHECK (jsonb_typeof("animal_closings"."outs") = 'array')
);
--> statement-breakpoint
CREATE TABLE "calendar_feeds" (
	"shop_id" uuid NOT NULL,
	"token_hash" text NOT NULL,
	"name" text NOT NULL,
	"made_at" timestamp with time zone DEFAULT now() NOT NULL,
	"made_by" uuid,
	"revoked_at" timestamp with time zone,
	CONSTRAINT "calendar_feeds_one_per_token" PRIMARY KEY("shop_id","token_hash"),
	CONSTRAINT "calendar_feeds_token_hashed" CHECK ("calendar_feeds"."token_hash" ~ '^[0-9a-f]{64}$'),
	CONSTRAINT "calendar_feeds_name_present" CHECK (length(trim("calendar_feeds"."name")) between 1 and 200)
);
--> statement-breakpoint
CREATE TABLE "hand_over_packs" (
	"shop_id" uuid NOT NULL,
	"pack_id" uuid NOT NULL,
	"hand_over_id" uuid NOT NULL,
	"sold_minor" integer,
	CONSTRAINT "hand_over_packs_once" PRIMARY KEY("shop_id","pack_id"),
	CONSTRAINT "hand_over_packs_sold_not_negative" CHECK ("hand_over_packs"."sold_minor" >= 0)
);
--> statement-breakpoint
CREATE TABLE "hand_overs" (
	"shop_id" uuid NOT NULL,
	"hand_over_id" uuid NOT NULL,
	"order_id" uuid,
	"taken_by" text NOT NULL,
	"proof" text NOT NULL,
	"note" text NOT NULL,
	"at" timestamp with time zone DEFAULT now() NOT NULL,
	"given_by" uuid,
	CONSTRAINT "hand_overs_one_per_id" PRIMARY KEY("shop_id","hand_over_id"),
	CONSTRAINT "hand_overs_taken_by_present" CHECK (length(trim("hand_overs"."taken_by")) between 1 and 200),
	CONSTRAINT "hand_overs_proof_known" CHECK ("hand_overs"."proof" in ('signature', 'code', 'known')),
	CONSTRAINT "hand_overs_note_length" CHECK (length("hand_overs"."note") <= 2000)
);
--> statement-breakpoint
CREATE TABLE "payments" (
	"shop_id" uuid NOT NULL,
	"payment_id" uuid NOT NULL,
	"order_id" uuid,
	"hand_over_id" uuid,
	"kind" text NOT NULL,
	"method" text NOT NULL,
	"amount_minor" integer NOT NULL,
	"note" text NOT NULL,
	"at" timestamp with time zone DEFAULT now() NOT NULL,
	"taken_by" uuid,
	CONSTRAINT "payments_one_per_id" PRIMARY KEY("shop_id","payment_id"),
	CONSTRAINT "payments_one_reason" CHECK (num_nonnulls("payments"."order_id", "payments"."hand_over_id") = 1),
	CONSTRAINT "payments_kind_known" CHECK ("payments"."kind" in ('deposit', 'payment', 'refund', 'credit')),
	CONSTRAINT "payments_method_known" CHECK ("payments"."method" in ('cash', 'card-terminal', 'transfer')),
	CONSTRAINT "payments_amount_positive" CHECK ("payments"."amount_minor" >= 1),
	CONSTRAINT "payments_note_length" CHECK (length("payments"."note") <= 2000)
);
--> statement-breakpoint
CREATE TABLE "pick_up_steps" (
	"shop_id" uuid NOT NULL,
	"order_id" uuid NOT NULL,
	"step" text NOT NULL,
	"at" timestamp with time zone DEFAULT now() NOT NULL,
	"done_by" uuid,
	CONSTRAINT "pick_up_steps_once" PRIMARY KEY("shop_id","order_id","step"),
	CONSTRAINT "pick_up_steps_known" CHECK ("pick_up_steps"."step" in ('remind', 'freeze', 'release'))
);
--> statement-breakpoint
CREATE TABLE "pick_ups" (
	"shop_id" uuid NOT NULL,
	"order_id" uuid NOT NULL,
	"date" date NOT NULL,
	"from_time" text NOT NULL,
	"to_time" text NOT NULL,
	"starts_at" timestamp with time zone NOT NULL,
	"ends_at" timestamp with time zone NOT NULL,
	"place" text NOT NULL,
	"version" integer DEFAULT 1 NOT NULL,
	"changed_at" timestamp with time zone DEFAULT now() NOT NULL,
	CONSTRAINT "pick_ups_one_per_order" PRIMARY KEY("shop_id","order_id"),
	CONSTRAINT "pick_ups_clock_times" CHECK ("pick_ups"."from_time" ~ '^[0-2][0-9]:[0-5][0-9]$' and "pick_ups"."to_time" ~ '^[0-2][0-9]:[0-5][0-9]$'),
	CONSTRAINT "pick_ups_span_finite" CHECK (isfinite("pick_ups"."starts_at") and isfinite("pick_ups"."ends_at") and "pick_ups"."ends_at" > "pick_ups"."starts_at"),
	CONSTRAINT "pick_ups_place_length" CHECK (length("pick_ups"."place") <= 200)
);
--> statement-breakpoint
CREATE TABLE "book_settings" (
	"shop_id" uuid NOT NULL,
	"settings" jsonb NOT NULL,
	"version" integer DEFAULT 1 NOT NULL,
	CONSTRAINT "book_settings_one_per_shop" PRIMARY KEY("shop_id"),
	CONSTRAINT "book_settings_shape" CHECK (jsonb_typeof("book_settings"."settings") = 'object'),
	CONSTRAINT "book_settings_version_counts" CHECK ("book_settings"."version" >= 1)
);
--> statement-breakpoint
CREATE TABLE "label_run_packs" (
	"shop_id" uuid NOT NULL,
	"run_id" uuid NOT NULL,
	"place" integer NOT NULL,
	"pack_id" uuid NOT NULL,
	"printed_at" timestamp with time zone,
	CONSTRAINT "label_run_packs_one_per_place" PRIMARY KEY("shop_id","run_id","place"),
	CONSTRAINT "label_run_packs_once" UNIQUE("shop_id","run_id","pack_id"),
	CONSTRAINT "label_run_packs_place_counts" CHECK ("label_run_packs"."place" >= 0)
);
--> statement-breakpoint
CREATE TABLE "label_runs" (
	"shop_id" uuid NOT NULL,
	"run_id" uuid NOT NULL,
	"started_at" timestamp with time zone DEFAULT now() NOT NULL,
	"started_by" uuid,
	CONSTRAINT "label_runs_one_per_id" PRIMARY KEY("shop_id","run_id")
);
--> statement-breakpoint
CREATE TABLE "pack_pieces" (
	"shop_id" uuid NOT NULL,
	"day_id" uuid NOT NULL,
	"piece_id" text NOT NULL,
	"pack_id" uuid NOT NULL,
	CONSTRAINT "pack_pieces_packed_once" PRIMARY KEY("shop_id","day_id","piece_id")
);
--> statement-breakpoint
CREATE TABLE "packs" (
	"shop_id" uuid NOT NULL,
	"pack_id" uuid NOT NULL,
	"serial" integer NOT NULL,
	"day_id" uuid NOT NULL,
	"animal_id" uuid NOT NULL,
	"legal_mode" text NOT NULL,
	"side_id" uuid,
	"lot" text NOT NULL,
	"foreseen" text NOT NULL,
	"thing" text NOT NULL,
	"what" text NOT NULL,
	"name" text NOT NULL,
	"pieces" integer NOT NULL,
	"order_id" uuid,
	"line_id" uuid,
	"share_id" uuid,
	"gross_text" text NOT NULL,
	"tare_text" text NOT NULL,
	"tare_unit" text NOT NULL,
	"net_text" text NOT NULL,
	"unit" text NOT NULL,
	"net_grams" integer NOT NULL,
	"expected_mg" bigint NOT NULL,
	"price_minor" integer,
	"price_per" text,
	"amount_minor" integer,
	"tax_class" text NOT NULL,
	"frozen" boolean NOT NULL,
	"packed_on" date NOT NULL,
	"best_before" date,
	"packed_at" timestamp with time zone DEFAULT now() NOT NULL,
	"packed_by" uuid,
	"undone_at" timestamp with time zone,
	CONSTRAINT "packs_one_per_id" PRIMARY KEY("shop_id","pack_id"),
	CONSTRAINT "packs_one_per_serial" UNIQUE("shop_id","serial"),
	CONSTRAINT "packs_serial_counts" CHECK ("packs"."serial" >= 1),
	CONSTRAINT "packs_owner_only" CHECK ("packs"."legal_mode" = 'for-sale' or ("packs"."order_id" is not null and "packs"."price_minor" is null)),
	CONSTRAINT "packs_one_owner" CHECK (num_nonnulls("packs"."line_id", "packs"."share_id") = case when "packs"."order_id" is null then 0 else 1 end),
	CONSTRAINT "packs_thing_known" CHECK ("packs"."thing" in ('cut', 'item', 'stock', 'bulk')),
	CONSTRAINT "packs_name_present" CHECK (length(trim("packs"."name")) between 1 and 200),
	CONSTRAINT "packs_lot_shape" CHECK ("packs"."lot" ~ '^[A-Za-z0-9./_-]{1,20}$'),
	CONSTRAINT "packs_pieces_within" CHECK ("packs"."pieces" between 0 and 10000),
	CONSTRAINT "packs_gross_read" CHECK ("packs"."gross_text" ~ '^[0-9]{1,7}(\.[0-9]{1,6})?$'),
	CONSTRAINT "packs_tare_read" CHECK ("packs"."tare_text" ~ '^[0-9]{1,7}(\.[0-9]{1,6})?$'),
	CONSTRAINT "packs_net_read" CHECK ("packs"."net_text" ~ '^[0-9]{1,7}(\.[0-9]{1,6})?$'),
	CONSTRAINT "packs_units_known" CHECK ("packs"."unit" in ('kg', 'g', 'lb', 'oz') and "packs"."tare_unit" in ('kg', 'g', 'lb', 'oz')),
	CONSTRAINT "packs_net_positive" CHECK ("packs"."net_grams" between 1 and 2000000),
	CONSTRAINT "packs_net_not_above_gross" CHECK ("packs"."net_text"::numeric <= "packs"."gross_text"::numeric),
	CONSTRAINT "packs_expected_not_negative" CHECK ("packs"."expected_mg" >= 0),
	CONSTRAINT "packs_price_whole" CHECK (num_nulls("packs"."price_minor", "packs"."price_per", "packs"."amount_minor") in (0, 3)),
	CONSTRAINT "packs_price_not_negative" CHECK ("packs"."price_minor" >= 0 and "packs"."amount_minor" >= 0),
	CONSTRAINT "packs_price_per_known" CHECK ("packs"."price_per" in ('kg', 'lb')),
	CONSTRAINT "packs_dates_in_order" CHECK ("packs"."best_before" >= "packs"."packed_on")
);
--> statement-breakpoint
ALTER TABLE "counters" DROP CONSTRAINT "counters_kind_known";
--> statement-breakpoint
ALTER TABLE "bill_lines" ADD CONSTRAINT "bill_lines_bill_known" FOREIGN KEY ("shop_id","bill_id") REFERENCES "public"."bills"("shop_id","bill_id") ON DELETE no action ON UPDATE no action;
--> statement-breakpoint
ALTER TABLE "bill_lines" ADD CONSTRAINT "bill_lines_pack_known" FOREIGN KEY ("shop_id","pack_id") REFERENCES "public"."packs"("shop_id","pack_id") ON DELETE no action ON UPDATE no action;
--> statement-breakpoint
ALTER TABLE "bills" ADD CONSTRAINT "bills_order_known" FOREIGN KEY ("shop_id","order_id") REFERENCES "public"."orders"("shop_id","order_id") ON DELETE no action ON UPDATE no action;
--> statement-breakpoint
ALTER TABLE "animal_closings" ADD CONSTRAINT "animal_closings_animal_known" FOREIGN KEY ("shop_id","animal_id") REFERENCES "public"."animals"("shop_id","animal_id") ON DELETE no action ON UPDATE no action;
--> statement-breakpoint
ALTER TABLE "calendar_feeds" ADD CONSTRAINT "calendar_feeds_maker_known" FOREIGN KEY ("shop_id","made_by") REFERENCES "public"."people"("shop_id","person_id") ON DELETE no action ON UPDATE no action;
--> statement-breakpoint
ALTER TABLE "hand_over_packs" ADD CONSTRAINT "hand_over_packs_pack_known" FOREIGN KEY ("shop_id","pack_id") REFERENCES "public"."packs"("shop_id","pack_id") ON DELETE no action ON UPDATE no action;
--> statement-breakpoint
ALTER TABLE "hand_over_packs" ADD CONSTRAINT "hand_over_packs_hand_over_known" FOREIGN KEY ("shop_id","hand_over_id") REFERENCES "public"."hand_overs"("shop_id","hand_over_id") ON DELETE no action ON UPDATE no action;
--> statement-breakpoint
ALTER TABLE "hand_overs" ADD CONSTRAINT "hand_overs_shop_known" FOREIGN KEY ("shop_id") REFERENCES "public"."shops"("shop_id") ON DELETE no action ON UPDATE no action;
--> statement-breakpoint
ALTER TABLE "hand_overs" ADD CONSTRAINT "hand_overs_order_known" FOREIGN KEY ("shop_id","order_id") REFERENCES "public"."orders"("shop_id","order_id") ON DELETE no action ON UPDATE no action;
--> statement-breakpoint
ALTER TABLE "payments" ADD CONSTRAINT "payments_order_known" FOREIGN KEY ("shop_id","order_id") REFERENCES "public"."orders"("shop_id","order_id") ON DELETE no action ON UPDATE no action;
--> statement-breakpoint
ALTER TABLE "payments" ADD CONSTRAINT "payments_hand_over_known" FOREIGN KEY ("shop_id","hand_over_id") REFERENCES "public"."hand_overs"("shop_id","hand_over_id") ON DELETE no action ON UPDATE no action;
--> statement-breakpoint
ALTER TABLE "pick_up_steps" ADD CONSTRAINT "pick_up_steps_pick_up_known" FOREIGN KEY ("shop_id","order_id") REFERENCES "public"."pick_ups"("shop_id","order_id") ON DELETE no action ON UPDATE no action;
--> statement-breakpoint
ALTER TABLE "pick_ups" ADD CONSTRAINT "pick_ups_order_known" FOREIGN KEY ("shop_id","order_id") REFERENCES "public"."orders"("shop_id","order_id") ON DELETE no action ON UPDATE no action;
--> statement-breakpoint
ALTER TABLE "book_settings" ADD CONSTRAINT "book_settings_shop_known" FOREIGN KEY ("shop_id") REFERENCES "public"."shops"("shop_id") ON DELETE no action ON UPDATE no action;
--> statement-breakpoint
ALTER TABLE "label_run_packs" ADD CONSTRAINT "label_run_packs_run_known" FOREIGN KEY ("shop_id","run_id") REFERENCES "public"."label_runs"("shop_id","run_id") ON DELETE no action ON UPDATE no action;
--> statement-breakpoint
ALTER TABLE "label_run_packs" ADD CONSTRAINT "label_run_packs_pack_known" FOREIGN KEY ("shop_id","pack_id") REFERENCES "public"."packs"("shop_id","pack_id") ON DELETE no action ON UPDATE no action;
--> statement-breakpoint
ALTER TABLE "label_runs" ADD CONSTRAINT "label_runs_shop_known" FOREIGN KEY ("shop_id") REFERENCES "public"."shops"("shop_id") ON DELETE no action ON UPDATE no action;
--> statement-breakpoint
ALTER TABLE "pack_pieces" ADD CONSTRAINT "pack_pieces_pack_known" FOREIGN KEY ("shop_id","pack_id") REFERENCES "public"."packs"("shop_id","pack_id") ON DELETE no action ON UPDATE no action;
--> statement-breakpoint
ALTER TABLE "packs" ADD CONSTRAINT "packs_day_known" FOREIGN KEY ("shop_id","day_id") REFERENCES "public"."cutting_days"("shop_id","day_id") ON DELETE no action ON UPDATE no action;
--> statement-breakpoint
ALTER TABLE "packs" ADD CONSTRAINT "packs_animal_known" FOREIGN KEY ("shop_id","animal_id","legal_mode") REFERENCES "public"."animals"("shop_id","animal_id","legal_mode") ON DELETE no action ON UPDATE no action;
--> statement-breakpoint
ALTER TABLE "packs" ADD CONSTRAINT "packs_side_known" FOREIGN KEY ("shop_id","side_id") REFERENCES "public"."sides"("shop_id","side_id") ON DELETE no action ON UPDATE no action;
--> statement-breakpoint
ALTER TABLE "packs" ADD CONSTRAINT "packs_order_known" FOREIGN KEY ("shop_id","order_id") REFERENCES "public"."orders"("shop_id","order_id") ON DELETE no action ON UPDATE no action;
--> statement-breakpoint
ALTER TABLE "packs" ADD CONSTRAINT "packs_line_known" FOREIGN KEY ("shop_id","line_id") REFERENCES "public"."order_lines"("shop_id","line_id") ON DELETE no action ON UPDATE no action;
--> statement-breakpoint
ALTER TABLE "packs" ADD CONSTRAINT "packs_share_known" FOREIGN KEY ("shop_id","share_id") REFERENCES "public"."carcass_shares"("shop_id","share_id") ON DELETE no action ON UPDATE no action;
--> statement-breakpoint
ALTER TABLE "packs" ADD CONSTRAINT "packs_packer_known" FOREIGN KEY ("shop_id","packed_by") REFERENCES "public"."people"("shop_id","person_id") ON DELETE no action ON UPDATE no action;
--> statement-breakpoint
CREATE INDEX "bills_by_date" ON "bills" USING btree ("shop_id","issued_on");
--> statement-breakpoint
CREATE INDEX "hand_over_packs_of_hand_over" ON "hand_over_packs" USING btree ("shop_id","hand_over_id");
--> statement-breakpoint
CREATE INDEX "hand_overs_of_order" ON "hand_overs" USING btree ("shop_id","order_id");
--> statement-breakpoint
CREATE INDEX "payments_of_order" ON "payments" USING btree ("shop_id","order_id");
--> statement-breakpoint
CREATE INDEX "payments_by_time" ON "payments" USING btree ("shop_id","at");
--> statement-breakpoint
CREATE INDEX "pick_ups_by_time" ON "pick_ups" USING btree ("shop_id","starts_at");
--> statement-breakpoint
CREATE INDEX "pack_pieces_of_pack" ON "pack_pieces" USING btree ("shop_id","pack_id");
--> statement-breakpoint
CREATE INDEX "packs_of_day" ON "packs" USING btree ("shop_id","day_id");
--> statement-breakpoint
CREATE INDEX "packs_of_animal" ON "packs" USING btree ("shop_id","animal_id");
--> statement-breakpoint
CREATE INDEX "packs_of_order" ON "packs" USING btree ("shop_id","order_id");
--> statement-breakpoint
CREATE INDEX "packs_of_lot" ON "packs" USING btree ("shop_id","lot");
--> statement-breakpoint
ALTER TABLE "counters" ADD CONSTRAINT "counters_kind_known" CHECK ("counters"."counter" in ('order', 'ledger', 'pack', 'bill'));
--> statement-breakpoint
SELECT "wall_by_shop"(name::regclass, kept) FROM (VALUES
  ('book_settings', false), ('packs', false), ('pack_pieces', false), ('label_runs', false), ('label_run_packs', false),
  ('bills', true), ('bill_lines', true), ('payments', true), ('hand_overs', true), ('hand_over_packs', true),
  ('pick_ups', false), ('pick_up_steps', true), ('animal_closings', true), ('calendar_feeds', false)
) AS t(name, kept);
--> statement-breakpoint
CREATE TRIGGER "bills_append_only" BEFORE UPDATE OR DELETE OR TRUNCATE ON "bills"
  FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
--> statement-breakpoint
CREATE TRIGGER "bill_lines_append_only" BEFORE UPDATE OR DELETE OR TRUNCATE ON "bill_lines"
  FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
--> statement-breakpoint
CREATE TRIGGER "payments_append_only" BEFORE UPDATE OR DELETE OR TRUNCATE ON "payments"
  FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
--> statement-breakpoint
CREATE TRIGGER "animal_closings_append_only" BEFORE UPDATE OR DELETE OR TRUNCATE ON "animal_closings"
  FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
--> statement-breakpoint
-- A bill is the sum of its lines when its transaction ends; a line without its bill, or a second lot of lines, fails too.
CREATE FUNCTION "hold_bill_sum"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF (SELECT b."net_minor" FROM "bills" b WHERE b."shop_id" = NEW."shop_id" AND b."bill_id" = NEW."bill_id")
    <> (SELECT coalesce(sum(l."amount_minor"), 0) FROM "bill_lines" l WHERE l."shop_id" = NEW."shop_id" AND l."bill_id" = NEW."bill_id") THEN
    RAISE EXCEPTION 'the lines of a bill do not add up to it'
      USING ERRCODE = 'check_violation', TABLE = 'bills', CONSTRAINT = 'bills_lines_add_up';
  END IF;
  RETURN NULL;
END
$$;
--> statement-breakpoint
CREATE CONSTRAINT TRIGGER "bills_lines_add_up" AFTER INSERT ON "bills"
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION "hold_bill_sum"();
--> statement-breakpoint
CREATE CONSTRAINT TRIGGER "bill_lines_add_up" AFTER INSERT ON "bill_lines"
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION "hold_bill_sum"();
--> statement-breakpoint
-- The packs of a closed animal stand as they are: its balance counts them.
CREATE FUNCTION "hold_closed_animal"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF EXISTS (SELECT FROM "animal_closings" c WHERE c."shop_id" = NEW."shop_id" AND c."animal_id" = NEW."animal_id") THEN
    RAISE EXCEPTION 'the animal is closed'
      USING ERRCODE = 'check_violation', TABLE = 'packs', CONSTRAINT = 'packs_animal_open';
  END IF;
  RETURN NEW;
END
$$;
--> statement-breakpoint
CREATE TRIGGER "packs_animal_open" BEFORE INSERT OR UPDATE OF "net_grams", "animal_id", "undone_at" ON "packs"
  FOR EACH ROW EXECUTE FUNCTION "hold_closed_animal"();
